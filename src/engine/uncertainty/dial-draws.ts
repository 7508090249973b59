import { together } from '../built/changed-parts.ts';
import { changedCircuit, type SetCircuit } from '../built/set-circuit.ts';
import { stretched } from '../parts/capacitor/stretched.ts';
import { tunedAt, tuningCurve } from '../reception/dial/dial.ts';
import { type Receiver, receiver } from '../reception/path/receive-station.ts';
import type { Hertz, Ratio } from '../units/quantities.ts';
import { attempt } from './attempt.ts';
import { deviatesOf } from './deviates-of.ts';
import { DRAWS } from './draws.ts';
import { addResponse } from './figure-response.ts';
import type { SetInput } from './input.ts';
import { changesFor, setInputs } from './inputs.ts';
import { NINETY, valueAtDeviate } from './spread.ts';

/** Where along the scale the draws are followed, open to meshed: closer where little capacitance is left and strays count most. */
const KNOTS: readonly Ratio[] = [0, 0.05, 0.12, 0.25, 0.5, 1];

/** The dial in every set drawn, as natural logarithms of ratios to the set with every input in its middle. */
export interface DialDraws {
  /** Of the frequency peaked at each knot, loaded Q there, and the tuning capacitance. */
  readonly frequency: readonly Float64Array[];
  readonly loadedQ: readonly Float64Array[];
  readonly capacitance: readonly Float64Array[];
  /** Where on the scale a frequency is peaked, by the place that it has in the middle; beyond the ends at the end. */
  readonly positions: (frequency: Hertz, position: Ratio) => Float64Array;
  /** In which draws the dial reaches a frequency. */
  readonly reaches: (frequency: Hertz) => (draw: number) => boolean;
  /** Ends of the scale in the middle. */
  readonly lowest: Hertz;
  readonly highest: Hertz;
}

const known = new WeakMap<SetCircuit, DialDraws>();

/** Once for each circuit: which stations are tuned in where is asked of all of them. */
export function dialDraws(circuit: SetCircuit): DialDraws {
  let draws = known.get(circuit);
  if (!draws) known.set(circuit, (draws = drawDial(circuit)));
  return draws;
}

/** What is tuned in at each knot, and how sharply. */
interface AtKnots {
  readonly frequency: readonly number[];
  readonly loadedQ: readonly number[];
}

/** Whether an input moves what is tuned in somewhere on the scale by more than a shift of the detector's load does. */
const tunes = ({ id, moves }: SetInput): boolean =>
  moves === 'dial' || id.endsWith('inductance') || id === 'aerial capacitance';

function drawDial(circuit: SetCircuit): DialDraws {
  const inputs = setInputs(circuit);
  const usual = changesFor(inputs, () => 0);
  const curveOf = (set: Receiver) => {
    const curve = tuningCurve(set);
    const { lowest, highest } = curve;
    return { curve, at: KNOTS.map((p) => (p === 0 ? highest : p === 1 ? lowest : curve.frequencyAt(p))) };
  };
  const middle = receiver(circuit);
  const { curve, at } = curveOf(middle);
  const peaks = at.map((f) => tunedAt(middle, f));
  const base: AtKnots = { frequency: at.map(Math.log), loadedQ: peaks.map(({ loadedQ }) => Math.log(loadedQ)) };
  const changed = (input: SetInput, deviate: number): AtKnots | undefined =>
    attempt(() => {
      const changes = input.changes!(valueAtDeviate(input.spread, deviate));
      const set = receiver(changedCircuit(circuit, together(usual, changes)));
      if (!tunes(input))
        return {
          frequency: base.frequency,
          loadedQ: peaks.map((peak) => Math.log(tunedAt(set, peak.frequency, peak).loadedQ)),
        };
      const { at } = curveOf(set);
      return { frequency: at.map(Math.log), loadedQ: at.map((f) => Math.log(tunedAt(set, f).loadedQ)) };
    });

  const frequency = KNOTS.map(() => new Float64Array(DRAWS));
  const loadedQ = KNOTS.map(() => new Float64Array(DRAWS));
  for (const input of inputs) {
    if (!input.changes || input.id === 'effective height' || input.id === 'load impedance') continue;
    const [low, high] = [changed(input, -NINETY), changed(input, NINETY)];
    const deviates = deviatesOf(input);
    const add = (to: readonly Float64Array[], of: (s: AtKnots) => readonly number[]): void => {
      for (const [j, draws] of to.entries()) {
        const off = (s: AtKnots | undefined) => (s ? of(s)[j] - of(base)[j] : Number.NaN);
        addResponse(draws, deviates, off(low), off(high));
      }
    };
    if (tunes(input)) add(frequency, (s) => s.frequency);
    add(loadedQ, (s) => s.loadedQ);
  }
  const { lowest, highest } = curve;
  const [first, last] = [frequency[0], frequency[KNOTS.length - 1]];
  return {
    frequency,
    loadedQ,
    capacitance: capacitanceDraws(circuit, inputs),
    lowest,
    highest,
    reaches: (f) => {
      const [toTop, toBottom] = [Math.log(f / highest), Math.log(f / lowest)];
      return (k) => toTop <= first[k] && toBottom >= last[k];
    },
    positions: (f, position) => {
      const from = Math.log(f);
      const middle = curve.positionForLog(from);
      const places = new Float64Array(DRAWS);
      for (let k = 0; k < DRAWS; k++) {
        // What a draw peaks here the middle peaks somewhat off; the shift is that of the place it comes to.
        let at = position;
        for (let i = 0; i < 3; i++) {
          const shift = alongScale(at, (knot) => frequency[knot][k]);
          at = Math.min(1, Math.max(0, position + curve.positionForLog(from - shift) - middle));
        }
        places[k] = at;
      }
      return places;
    },
  };
}

/** A figure that is known at the knots, at a place of the scale: straight between them. */
export function alongScale(position: Ratio, figureAt: (knot: number) => number): number {
  let i = 1;
  while (i < KNOTS.length - 1 && KNOTS[i] < position - 1e-9) i++;
  const share = (position - KNOTS[i - 1]) / (KNOTS[i] - KNOTS[i - 1]);
  const before = figureAt(i - 1);
  return before + share * (figureAt(i) - before);
}

function capacitanceDraws({ tuning }: SetCircuit, inputs: readonly SetInput[]): readonly Float64Array[] {
  const factorsOf = (id: SetInput['id']): Float64Array => {
    const input = inputs.find((one) => one.id === id);
    return input ? deviatesOf(input).map((u) => valueAtDeviate(input.spread, u)) : new Float64Array(DRAWS).fill(1);
  };
  const [minimum, maximum] = [factorsOf('capacitor minimum'), factorsOf('capacitor maximum')];
  const of = KNOTS.map(tuning.capacitanceAt);
  const draws = KNOTS.map(() => new Float64Array(DRAWS));
  for (let k = 0; k < DRAWS; k++) {
    const { capacitanceAt } = stretched(tuning, { minimum: minimum[k], maximum: maximum[k] });
    for (const [j, position] of KNOTS.entries()) draws[j][k] = Math.log(capacitanceAt(position) / of[j]);
  }
  return draws;
}
