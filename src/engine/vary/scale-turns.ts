import type { Edit } from '../kinds/adjustment.ts';
import type { CoilDescription } from '../kinds/coils/coil-schema.ts';
import { halfTurns } from '../kinds/turns-adjust.ts';
import type { SetDescription } from '../set/description.ts';
import { formatQuantity } from '../units/format.ts';

/** Every winding of the set with this many times its turns, taps along with them. */
export function scaleTurns(set: SetDescription, by: number): Edit[] {
  const edits: Edit[] = set.coils.flatMap((coil, i) => coilChanges(coil, ['coils', i], by));
  const { aerial, arrangement } = set;
  if (aerial.kind === 'frame')
    edits.push({ path: ['aerial', 'turns'], to: Math.min(400, halfTurns(aerial.turns * by)) });
  if (aerial.kind === 'ferrite rod') {
    edits.push({ path: ['aerial', 'turns'], to: halfTurns(aerial.turns * by) });
    // Wound as close as before; it must fit on the rod.
    edits.push({
      path: ['aerial', 'winding'],
      to: millimetres(Math.min(aerial.winding * by, 0.9 * aerial.length)),
    });
  }
  for (const key of ['aerialTap', 'detectorTap', 'fewest']) {
    const tap = (arrangement as Record<string, unknown>)[key];
    if (typeof tap === 'number') edits.push({ path: ['arrangement', key], to: halfTurns(tap * by) });
  }
  if (arrangement.kind === 'elements') {
    arrangement.elements.forEach((e, i) => {
      const path = ['arrangement', 'elements', i];
      if (e.kind === 'inductor') edits.push({ path: [...path, 'inductance'], to: e.inductance * by * by });
      if (e.kind === 'mutual') edits.push({ path: [...path, 'mutual'], to: e.mutual * by * by });
    });
  }
  return edits;
}

function coilChanges(coil: CoilDescription, path: readonly (string | number)[], by: number): Edit[] {
  if (coil.shape === 'measured') {
    const inductance = `${Number((coil.inductance * by * by * 1e6).toPrecision(3))} µH`;
    return [
      { path: [...path, 'inductance'], to: inductance },
      { path: [...path, 'turns'], to: halfTurns(coil.turns * by) },
    ];
  }
  if (coil.shape !== 'multilayer') return [{ path: [...path, 'turns'], to: halfTurns(coil.turns * by) }];
  const turns = coil.turnsPerLayer * coil.layers * by;
  const layers = Math.max(1, Math.min(200, Math.round(coil.layers * Math.sqrt(by))));
  return [
    { path: [...path, 'layers'], to: layers },
    { path: [...path, 'turnsPerLayer'], to: Math.max(1, Math.round(turns / layers)) },
  ];
}

const millimetres = (metres: number): string => formatQuantity(metres, 'length', 3);
