import type { Edit } from '../kinds/adjustment.ts';
import { aerialLead } from '../kinds/arrangements/aerial-lead.ts';
import { isUsedInPart } from '../kinds/arrangements/used-turns.ts';
import { type ByKind, byKind } from '../kinds/by-kind.ts';
import type { CoilDescription } from '../kinds/coils/coil-schema.ts';
import { isLoop, type LoopDescription } from '../kinds/loops.ts';
import { halfTurns } from '../kinds/turns-adjust.ts';
import { switchedOutCoils } from '../set/band-switch.ts';
import type { SetDescription } from '../set/description.ts';
import { formatQuantity } from '../units/format.ts';

/**
 * Every winding of the set with this many times its turns, taps along with them; wave traps stay on their stations, and
 * coils of other bands as they are. Of a coil that is in use in part, so many times those turns are in use.
 */
export function scaleTurns(set: SetDescription, by: number): Edit[] {
  const others = new Set([...aerialLead(set.arrangement).traps.map(({ coil }) => coil), ...switchedOutCoils(set)]);
  if (isUsedInPart(set.arrangement)) others.add(set.arrangement.coil);
  const edits: Edit[] = set.coils.flatMap((coil, i) =>
    others.has(coil.name) ? [] : coilChanges(coil, ['coils', i], by),
  );
  const { aerial, arrangement } = set;
  if (isLoop(aerial)) edits.push(...byKind(LOOP_EDITS, aerial, by));
  for (const key of ['aerialTap', 'detectorTap', 'usedTurns', 'fewest']) {
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

const LOOP_EDITS: ByKind<LoopDescription, Edit[], [number]> = {
  frame: ({ turns }, by) => [{ path: ['aerial', 'turns'], to: Math.min(400, halfTurns(turns * by)) }],
  'ferrite rod': ({ turns, winding, length }, by) => [
    { path: ['aerial', 'turns'], to: halfTurns(turns * by) },
    // Wound as close as before; it must fit on the rod.
    { path: ['aerial', 'winding'], to: millimetres(Math.min(winding * by, 0.9 * length)) },
  ],
};

const moreTurns = ({ turns }: { readonly turns: number }, by: number): Edit[] => [
  { path: ['turns'], to: halfTurns(turns * by) },
];

const COIL_EDITS: ByKind<CoilDescription, Edit[], [number]> = {
  solenoid: moreTurns,
  'bank-wound': moreTurns,
  multilayer: (coil, by) => {
    const turns = coil.turnsPerLayer * coil.layers * by;
    const layers = Math.max(1, Math.min(200, Math.round(coil.layers * Math.sqrt(by))));
    return [
      { path: ['layers'], to: layers },
      { path: ['turnsPerLayer'], to: Math.max(1, Math.round(turns / layers)) },
    ];
  },
  spiral: moreTurns,
  spider: moreTurns,
  basket: moreTurns,
  core: moreTurns,
  measured: (coil, by) => [
    { path: ['inductance'], to: `${Number((coil.inductance * by * by * 1e6).toPrecision(3))} µH` },
    ...moreTurns(coil, by),
  ],
};

const coilChanges = (coil: CoilDescription, path: Edit['path'], by: number): Edit[] =>
  byKind(COIL_EDITS, coil, by).map((edit) => ({ ...edit, path: [...path, ...edit.path] }));

const millimetres = (metres: number): string => formatQuantity(metres, 'length', 3);
