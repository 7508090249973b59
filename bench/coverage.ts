import { coverageOf, type Outcome, simulatedBenches } from '../test/support/simulated-benches.ts';
import { simulatedInstruments } from '../test/support/simulated-instruments.ts';
import type { Figure } from './bench.ts';

const BENCHES = 4000;
const DECAYS = 400;

const simulated = simulatedBenches(2026);
const instruments = simulatedInstruments(2027);
const kinds = ['resonance', 'dial', 'detector', 'width', 'decay'] as const;

const figureOf = (kind: string, benches: number, measure: () => Outcome): Figure => ({
  name: `90 % ranges of the fit "${kind}" that hold the truth`,
  unit: '%',
  measure() {
    const shares = coverageOf(measure, benches);
    console.log(kind, [...shares].map(([name, share]) => `${name} ${(100 * share).toFixed(1)} %`).join(', '));
    return 100 * Math.min(...shares.values());
  },
  goal: { atLeast: 88, atMost: 92 },
});

/** The least share of 90 % ranges that held the truth, among the figures of each fit, over so many simulated benches. */
export const measurements: Figure[] = [
  ...kinds.map((kind) => figureOf(kind, kind === 'decay' ? DECAYS : BENCHES, () => simulated.measured[kind]())),
  ...Object.entries(instruments).map(([kind, measure]) => figureOf(kind, BENCHES, measure)),
];
