import type { PartChanges } from '../built/changed-parts.ts';
import type { SetCircuit } from '../built/set-circuit.ts';
import { workingFrequency } from '../built/set-parts.ts';
import { isLoop } from '../kinds/loops.ts';
import { amountRange, USUAL_ERROR } from '../kinds/measured/usual-errors.ts';
import type { SetDescription } from '../set/description.ts';
import type { SetInput } from './input.ts';
import { shareSpread } from './measured-spread.ts';
import { between, COMMON_PRACTICE, type Spread, timesOrOver } from './spread.ts';

/** Loss and inductance of a frame or rod against the calculated, ×/÷: its sides are measured; the iron of a rod is of a kind. */
export const LOOP_FACTORS = { loss: 1.6, inductance: { frame: 1.04, rod: 1.12 } } as const;
const LOOP_LOSS = timesOrOver(LOOP_FACTORS.loss, COMMON_PRACTICE);
const FRAME_INDUCTANCE = timesOrOver(LOOP_FACTORS.inductance.frame, COMMON_PRACTICE);
const ROD_INDUCTANCE = timesOrOver(LOOP_FACTORS.inductance.rod, COMMON_PRACTICE);
const LOOP_CAPACITANCE = timesOrOver(1.6, COMMON_PRACTICE);

const AS_STATED = 'range stated with the coil (docs/physics/coils.md)';

/** A range of a few picofarads may reach nothing; a factor may not. */
const LEAST = 0.05;

/** About a figure, from the range that its part states; of a figure of nothing, none. */
export function asStated(value: number, [low, high]: readonly [number, number], source = AS_STATED): Spread {
  const [below, above] = [Math.max(LEAST, low / value), high / value];
  if (!(value > 0) || !Number.isFinite(below + above)) return timesOrOver(1, source);
  return between('factor', [Math.min(1, below), 1, Math.max(1, above)], source);
}

/** What is not known of the coils of a set, each by its own shape, wire and former, or of the loop it has for one. */
export function coilSpreads(circuit: SetCircuit): SetInput[] {
  const { set, coils } = circuit;
  const f = workingFrequency(set);
  const inputs = coils.flatMap(({ model }, i): SetInput[] => {
    const [low, high] = model.qRangeAt(f);
    const one = (figure: 'loss' | 'inductance', spread: Spread): SetInput => ({
      id: `coil ${i + 1} ${figure}`,
      settledBy: 'coil',
      spread,
      changes: (by) => ({ coils: { [i]: { [figure]: by } } }),
    });
    const q = model.qAt(f);
    return [
      one('loss', asStated(1 / q, [1 / high, 1 / low])),
      one('inductance', asStated(model.inductance, model.inductanceRange)),
    ];
  });
  return [...inputs, ...loopSpreads(circuit), ...selfCapacitanceSpread(circuit)];
}

function loopSpreads({ set: { aerial } }: SetCircuit): SetInput[] {
  if (!isLoop(aerial)) return [];
  const one = (figure: 'loss' | 'inductance', spread: Spread): SetInput => ({
    id: `loop ${figure}`,
    settledBy: 'coil',
    spread,
    changes: (by) => ({ loop: { [figure]: by } }),
  });
  const { q, inductance } = aerial.measured ?? {};
  const calculated = aerial.kind === 'frame' ? FRAME_INDUCTANCE : ROD_INDUCTANCE;
  return [
    one('loss', q ? shareSpread(q, USUAL_ERROR.q) : LOOP_LOSS),
    one('inductance', inductance ? shareSpread(inductance, USUAL_ERROR.inductance) : calculated),
  ];
}

function loopCapacitance({ aerial }: SetDescription, now: number): Spread {
  const measured = isLoop(aerial) ? aerial.measured?.selfCapacitance : undefined;
  return measured ? asStated(now, amountRange(measured, USUAL_ERROR.selfCapacitance)) : LOOP_CAPACITANCE;
}

/** One draw for all coils of a set: leads and a board that raise it are those of one builder. Stations are tuned in again. */
function selfCapacitanceSpread({ set, coils, loop }: SetCircuit): SetInput[] {
  const spreads = coils.map(({ model }) => asStated(model.selfCapacitance, model.selfCapacitanceRange));
  const ofLoop = loop && loopCapacitance(set, loop.selfCapacitance);
  if (ofLoop) spreads.push(ofLoop);
  if (spreads.length === 0) return [];
  const widest = spreads.reduce((a, b) => (b.high / b.low > a.high / a.low ? b : a));
  // Others by the same share of their own range.
  const shareOf = (spread: Spread, by: number): number =>
    by < 1
      ? spread.low ** (Math.log(by) / Math.log(widest.low))
      : by > 1
        ? spread.high ** (Math.log(by) / Math.log(widest.high))
        : 1;
  return [
    {
      id: 'self-capacitance',
      settledBy: 'coil',
      spread: widest,
      moves: 'dial',
      changes: (by): PartChanges => ({
        coils: Object.fromEntries(coils.map((_, i) => [i, { selfCapacitance: shareOf(spreads[i], by) }])),
        ...(ofLoop && { loop: { selfCapacitance: shareOf(ofLoop, by) } }),
      }),
    },
  ];
}
