import { wireOf } from '../../../engine/kinds/coils/wire-of.ts';
import type { LoopDescription } from '../../../engine/kinds/loops.ts';
import { overallDiameter } from '../../../engine/parts/wire/wire.ts';
import { type FrameParts, frameParts } from '../../drawings/aerial/frame-parts.ts';
import type { Tap } from '../../drawings/coil/drawn.ts';
import { lathsCrossed, oneTurnClamped, tapMade, turnsOnHoop, wiresInNotches } from '../../drawings/winding/index.ts';
import { frameText, frameWire, type Lath, loopSheetWords, frameStepWords as steps } from '../../words/index.ts';
import type { StepGroup } from '../paper/flow.ts';
import { TAIL } from './winding.ts';

type Frame = Extract<LoopDescription, { kind: 'frame' }>;

/** Of a comb or hoop: beyond its last turn at either end, and where it is screwed to a lath, m. Common practice, no source. */
const SHOULDER = 0.008;
const SCREWED = 0.02;
/** Frames wider than this, m, need stouter laths. Common practice, no source. */
const WIDE = 1.2;

/** How the turns lie and what holds them. */
type Build = 'square box' | 'square spiral' | 'hoop' | 'round spiral';
const buildOf = ({ outline, winding }: Frame): Build => {
  if (outline === 'square') return winding === 'spiral' ? 'square spiral' : 'square box';
  return winding === 'spiral' ? 'round spiral' : 'hoop';
};

const sectionOf = ({ side }: Frame): Lath => (side > WIDE ? 'stout' : 'light');

function notchesOf({ wire }: Frame, { wires, notch }: FrameParts) {
  const overall = overallDiameter(wireOf(wire));
  return { wires, notch, depth: Math.max(0.003, 1.5 * overall) };
}

const ACROSS: Record<Build, (side: number) => string> = {
  'square box': frameText.squareBox,
  'square spiral': frameText.squareSpiral,
  hoop: frameText.roundBox,
  'round spiral': frameText.roundSpiral,
};

function woodOf(frame: Frame, parts: FrameParts, build: Build): string[][] {
  const { rows } = loopSheetWords;
  const section = sectionOf(frame);
  const { lath: length, depth, reach, crosses } = parts;
  const notches = notchesOf(frame, parts);
  switch (build) {
    case 'hoop':
      return [
        [rows.hoop, frameText.hoop({ side: frame.side, width: depth + 2 * SHOULDER })],
        [rows.laths, frameText.hoopLaths({ count: 2 * crosses, section })],
      ];
    case 'square box':
      return [
        [rows.laths, frameText.laths({ count: 2 * crosses, length, section })],
        [rows.combs, frameText.combs({ length: depth + 2 * SHOULDER + SCREWED, section, ...notches })],
      ];
    case 'square spiral':
    case 'round spiral': {
      const count = build === 'round spiral' ? 4 * crosses : 2 * crosses;
      return [[rows.laths, frameText.notchedLaths({ count, length, section, reach, ...notches })]];
    }
  }
}

function turnsOf({ turns, pitch, winding }: Frame, { wires, depth }: FrameParts): string {
  const figures = { turns, pitch, depth };
  if (wires === 1) return frameText.oneTurn(figures);
  return winding === 'spiral' ? frameText.spiralTurns(figures) : frameText.boxTurns(figures);
}

/** What a frame is made of. */
export function frameRows(frame: Frame, taps: readonly Tap[]): string[][] {
  const parts = frameParts(frame);
  const build = buildOf(frame);
  const { rows } = loopSheetWords;
  return [
    [rows.frame, ACROSS[build](frame.side)],
    ...woodOf(frame, parts, build),
    [rows.stand, parts.crosses > 1 ? frameText.standOfTwo(parts) : frameText.stand(parts)],
    [rows.leads, taps.length > 0 ? frameText.leadsWithTap : frameText.leads],
    [rows.wire, build === 'hoop' ? frameWire.hoop(frame.wire) : frameWire.box(frame.wire)],
    [rows.turns, turnsOf(frame, parts)],
  ];
}

function crossStep(build: Build, crosses: number): readonly string[] {
  switch (build) {
    case 'round spiral':
      return steps.cross.spokes;
    case 'hoop':
      return crosses > 1 ? steps.twoCrosses.hoop : steps.cross.hoop;
    case 'square box':
    case 'square spiral':
      return crosses > 1 ? steps.twoCrosses.square : steps.cross.square;
  }
}

function wireHolders(build: Build, { pitch }: Frame, { wires, reach, crosses }: FrameParts): readonly string[] {
  switch (build) {
    case 'hoop':
      return wires > 1 ? steps.markHoop({ wires, pitch }) : steps.markOne;
    case 'square box':
      return crosses > 1 ? steps.combsOfTwo(reach) : steps.combs(reach);
    case 'square spiral':
    case 'round spiral':
      return steps.sawNotches;
  }
}

function mastStep({ winding }: Frame, { crosses, depth }: FrameParts): readonly string[] {
  if (winding === 'spiral') return steps.mast.spiral;
  if (depth === 0) return steps.mast.oneTurn;
  return crosses > 1 ? steps.mast.deepBox(depth) : steps.mast.box(depth);
}

const WIND: Record<Build, (tail: number) => readonly string[]> = {
  'square box': steps.wind.notches,
  'square spiral': steps.wind.spiral,
  hoop: steps.wind.marks,
  'round spiral': steps.wind.spiral,
};

/** Of the turns in their notches or on their marks; of a single one its ends. */
function turnsPicture(build: Build, { pitch }: Frame, { wires }: FrameParts): StepGroup['picture'] {
  if (wires < 2) return oneTurnClamped();
  if (build === 'hoop') return turnsOnHoop(wires, pitch);
  return wiresInNotches(build === 'square box' ? 'comb' : 'lath');
}

/** How a frame is made, step by step. */
export function frameSteps(frame: Frame, taps: readonly Tap[]): readonly StepGroup[] {
  const parts = frameParts(frame);
  const build = buildOf(frame);
  return [
    {
      lines: [...crossStep(build, parts.crosses), ...wireHolders(build, frame, parts), ...mastStep(frame, parts)],
      // Spokes lie over one another.
      picture: build === 'round spiral' ? undefined : lathsCrossed(build === 'hoop'),
    },
    { lines: (parts.wires < 2 ? steps.wind.once : WIND[build])(TAIL), picture: turnsPicture(build, frame, parts) },
    ...taps.map((tap): StepGroup => ({ lines: steps.tap(tap), picture: tapMade([tap.turn]) })),
    { lines: [...(taps.length > 0 ? steps.endTapped : steps.end), ...steps.leads, ...steps.stand] },
  ];
}
