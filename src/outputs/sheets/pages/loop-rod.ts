import { wireOf } from '../../../engine/kinds/coils/wire-of.ts';
import type { LoopDescription } from '../../../engine/kinds/loops.ts';
import { overallDiameter } from '../../../engine/parts/wire/wire.ts';
import { coilFromEnd } from '../../drawings/aerial/loop.ts';
import type { Tap } from '../../drawings/coil/drawn.ts';
import { bareEnd, rodInPlace, rodStart, sleeveOnRod, tapMade } from '../../drawings/winding/index.ts';
import { loopSheetWords, rodText, rodStepWords as steps, wireWithNotes } from '../../words/index.ts';
import type { StepGroup } from '../paper/flow.ts';
import { TAIL } from './winding.ts';

type Rod = Extract<LoopDescription, { kind: 'ferrite rod' }>;

/** Of the ends of the wire, m. */
const BARE = 0.01;
/** A sleeve thinner than this, m, is one turn of thin paper. */
const THIN = 5e-5;
/** Of a sleeve beyond its winding at either end, where there is room, m. */
const SPARE = 0.01;
/** A gap between turns wider than this, m, is wound with a thread. */
const THREADED = 1e-4;

const overall = ({ wire }: Rod): number => overallDiameter(wireOf(wire));
/** From turn to turn, and what of it lies between two of them, m. */
const spacingOf = ({ winding, turns }: Rod): number => winding / turns;
const gapOf = (rod: Rod): number => spacingOf(rod) - overall(rod);

/** What the coil is wound on: the rod itself and paper, so thick that the wire lies where it was calculated, m. */
function sleeveOf(rod: Rod): { width: number; outside: number; wall: number } {
  const outside = (rod.coilDiameter ?? rod.diameter + 0.001) - overall(rod);
  const spare = Math.min(SPARE, coilFromEnd(rod) - rod.winding / 2);
  return { outside, wall: (outside - rod.diameter) / 2, width: rod.winding + 2 * spare };
}

function turnsOf(rod: Rod): string {
  const figures = { turns: rod.turns, winding: rod.winding, spacing: spacingOf(rod) };
  const gap = gapOf(rod);
  if (gap > 3e-5) return rodText.spacedTurns({ ...figures, gap });
  return gap > -5e-5 ? rodText.closeTurns(figures) : rodText.piledTurns(figures);
}

function placeOf(rod: Rod): string {
  const fromEnd = coilFromEnd(rod);
  return rod.position === 0
    ? rodText.inMiddle({ fromEnd })
    : rodText.offMiddle({ fromEnd, fromMiddle: Math.abs(rod.length / 2 - fromEnd) });
}

/** What the coil of a rod is made of. */
export function rodRows(rod: Rod): string[][] {
  const { rows } = loopSheetWords;
  const sleeve = sleeveOf(rod);
  return [
    [rows.rod, rodText.rod(rod)],
    [rows.sleeve, sleeve.wall >= THIN ? rodText.sleeve(sleeve) : rodText.thinSleeve(sleeve)],
    [rows.wire, wireWithNotes(rod.wire)],
    [rows.turns, turnsOf(rod)],
    [rows.place, placeOf(rod)],
  ];
}

function windStep(rod: Rod): readonly string[] {
  const gap = gapOf(rod);
  if (gap > THREADED) return steps.windWithThread;
  return gap > 3e-5 ? steps.windSpaced : steps.windClose;
}

/** How the coil of a rod is made, step by step. */
export function rodSteps(rod: Rod, taps: readonly Tap[]): readonly StepGroup[] {
  const fromEnd = coilFromEnd(rod);
  const gap = gapOf(rod);
  return [
    { lines: steps.sleeve, picture: sleeveOnRod() },
    {
      lines: [...steps.start({ winding: rod.winding, tail: TAIL }), ...windStep(rod)],
      picture: rodStart(TAIL, gap > THREADED ? gap : undefined),
    },
    ...taps.map((tap): StepGroup => ({ lines: [steps.tap(tap)], picture: tapMade([tap.turn]) })),
    {
      lines: [...(taps.length > 0 ? steps.endTapped(TAIL) : steps.end(TAIL))],
      picture: bareEnd(BARE),
    },
    {
      lines: [...steps.hold, ...(rod.position === 0 ? steps.slideToMiddle(fromEnd) : steps.slide(fromEnd))],
      picture: rodInPlace(fromEnd, rod.position === 0),
    },
  ];
}
