import type { LoopAerial } from '../../../engine/built/loop-parts.ts';
import { setCircuit } from '../../../engine/built/set-circuit.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import { isLoop, type LoopDescription } from '../../../engine/kinds/loops.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { drawAerial } from '../../drawings/aerial/aerial.ts';
import type { Tap } from '../../drawings/coil/drawn.ts';
import { coilFigures, loopSheetWords as texts, wireToCutText } from '../../words/index.ts';
import { fewestPages } from '../paper/fewest-pages.ts';
import { Flow, type StepGroup } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';
import { dialText } from './dial-text.ts';
import { frameRows, frameSteps } from './loop-frame.ts';
import { rodRows, rodSteps } from './loop-rod.ts';
import { resistanceOnMeter } from './resistance-on-meter.ts';
import { TAIL, TAP_LOOP, tally, wireToCut } from './winding.ts';

/** What is told of each kind of loop. */
interface Making {
  readonly file: string;
  readonly rows: string[][];
  readonly steps: readonly StepGroup[];
}

const LOOP_MAKING: ByKind<LoopDescription, Making, [readonly Tap[]]> = {
  frame: (frame, taps) => ({ file: 'coil-frame', rows: frameRows(frame, taps), steps: frameSteps(frame, taps) }),
  'ferrite rod': (rod, taps) => ({ file: 'coil-rod', rows: rodRows(rod), steps: rodSteps(rod, taps) }),
};

/** By hand a loop's inductance comes out within this share. Common practice, no source. */
const BY_HAND = 0.05;

/**
 * A frame or rod, which is aerial and coil at once: how it is built, and what it should be.
 * @throws RangeError for a set with another aerial.
 */
export function loopSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const { aerial } = set;
  const { loop } = setCircuit(set);
  if (!isLoop(aerial) || !loop) throw new RangeError('a loop sheet is for a set with a frame or ferrite rod');
  const taps = loopTaps(set, loop.turns);
  const { file, rows, steps } = byKind(LOOP_MAKING, aerial, taps);
  const cut = wireToCutText({
    cut: loopWire(set),
    wound: loop.wireLength,
    tail: TAIL,
    tap: taps.length > 0 ? TAP_LOOP : undefined,
  });
  return fewestPages((layout) => {
    const flow = new Flow({ id: 'coil', title: texts.titles[aerial.kind], file, set: set.name, paper, layout });
    flow.table(
      [
        { title: texts.columns.what, share: 1.2 },
        { title: texts.columns.aerial, share: 5 },
      ],
      [...rows, [texts.rows.wireToCut, cut]],
    );
    const high = 86 * layout.tight;
    flow.figure(drawAerial(aerial, set.earth, { width: Math.min(flow.width, 150), height: high }), {
      height: high + 2,
    });
    flow.heading(texts.headings.winding, flow.firstStepHeight(steps));
    flow.steps(steps);
    tally(flow, loop.turns, taps);
    checks(flow, aerial, loop, taps, reception, set);
    return flow.finish();
  });
}

function checks(
  flow: Flow,
  { kind }: LoopDescription,
  loop: Pick<LoopAerial, 'inductance' | 'dcResistance'>,
  taps: readonly Tap[],
  { dial, best, stations }: Reception,
  set: SetDescription,
): void {
  flow.heading(texts.headings.checks);
  const { inductance } = loop;
  const [low, high] = [inductance * (1 - BY_HAND), inductance * (1 + BY_HAND)];
  flow.table(
    [
      { title: texts.columns.figure, share: 2 },
      { title: texts.columns.expected, share: 6 },
    ],
    [
      [texts.rows.inductance, texts.inductance({ value: inductance, low, high })],
      [texts.rows.resistance, coilFigures.resistance(resistanceOnMeter(loop.dcResistance))],
      [texts.rows.range, texts.range(dial.lowest, dial.highest)],
    ],
  );
  const station = best.map((i) => stations[i]).find((s) => s?.dial);
  const inSet = station && {
    station: station.name,
    frequency: station.frequency,
    reading: dialText(set, station),
  };
  flow.list(
    [texts.count, taps.length > 0 ? texts.ohmsTapped : texts.ohms, ...(inSet ? [texts.inSet[kind](inSet)] : [])],
    'box',
  );
}

/** Wire to cut for a frame or rod, m: its turns, ends and tap, and three in a hundred for the hand; 0 where there is none. */
export function loopWire(set: SetDescription): number {
  const { loop } = setCircuit(set);
  return loop ? wireToCut(loop, loopTaps(set, loop.turns).length) : 0;
}

function loopTaps({ arrangement }: SetDescription, turns: number): Tap[] {
  if (arrangement.kind !== 'frame' && arrangement.kind !== 'ferrite rod') return [];
  const { detectorTap: turn } = arrangement;
  return turn !== undefined && turn < turns ? [{ name: 'detector', turn }] : [];
}
