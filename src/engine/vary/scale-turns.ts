import type { CoilDescription } from '../kinds/coils/coil-schema.ts';
import type { SetDescription } from '../set/description.ts';

/** One change to a description, as a person would write it. */
export interface Change {
  readonly path: readonly (string | number)[];
  readonly value: unknown;
}

const half = (turns: number): number => (turns < 20 ? Math.max(1, Math.round(2 * turns) / 2) : Math.round(turns));

/** Every winding of the set with this many times its turns, taps along with them. */
export function scaleTurns(set: SetDescription, by: number): Change[] {
  const changes: Change[] = set.coils.flatMap((coil, i) => coilChanges(coil, ['coils', i], by));
  const { aerial, arrangement } = set;
  if (aerial.kind === 'frame')
    changes.push({ path: ['aerial', 'turns'], value: Math.min(400, half(aerial.turns * by)) });
  if (aerial.kind === 'ferrite rod') {
    changes.push({ path: ['aerial', 'turns'], value: half(aerial.turns * by) });
    // Wound as close as before; it must fit on the rod.
    changes.push({
      path: ['aerial', 'winding'],
      value: millimetres(Math.min(aerial.winding * by, 0.9 * aerial.length)),
    });
  }
  for (const key of ['aerialTap', 'detectorTap', 'fewest']) {
    const tap = (arrangement as Record<string, unknown>)[key];
    if (typeof tap === 'number') changes.push({ path: ['arrangement', key], value: half(tap * by) });
  }
  if (arrangement.kind === 'elements') {
    arrangement.elements.forEach((e, i) => {
      const path = ['arrangement', 'elements', i];
      if (e.kind === 'inductor') changes.push({ path: [...path, 'inductance'], value: e.inductance * by * by });
      if (e.kind === 'mutual') changes.push({ path: [...path, 'mutual'], value: e.mutual * by * by });
    });
  }
  return changes;
}

function coilChanges(coil: CoilDescription, path: readonly (string | number)[], by: number): Change[] {
  if (coil.shape === 'measured') {
    const inductance = `${Number((coil.inductance * by * by * 1e6).toPrecision(3))} µH`;
    return [
      { path: [...path, 'inductance'], value: inductance },
      { path: [...path, 'turns'], value: half(coil.turns * by) },
    ];
  }
  if (coil.shape !== 'multilayer') return [{ path: [...path, 'turns'], value: half(coil.turns * by) }];
  const turns = coil.turnsPerLayer * coil.layers * by;
  const layers = Math.max(1, Math.min(200, Math.round(coil.layers * Math.sqrt(by))));
  return [
    { path: [...path, 'layers'], value: layers },
    { path: [...path, 'turnsPerLayer'], value: Math.max(1, Math.round(turns / layers)) },
  ];
}

export const millimetres = (metres: number): string => `${Number((metres * 1e3).toPrecision(3))} mm`;
export const picofarads = (farads: number): string => `${Number((farads * 1e12).toPrecision(2))} pF`;
