import { coverageOf, simulatedBenches } from '../test/support/simulated-benches.ts';
import type { Figure } from './bench.ts';

const BENCHES = 4000;
const DECAYS = 400;

const kinds = ['resonance', 'dial', 'detector', 'width', 'decay'] as const;

/** The least share of 90 % ranges that held the truth, among the figures of each fit, over so many simulated benches. */
export const measurements: Figure[] = kinds.map((kind) => ({
  name: `90 % ranges of the fit "${kind}" that hold the truth`,
  unit: '%',
  measure() {
    const shares = coverageOf(simulatedBenches(2026).measured[kind], kind === 'decay' ? DECAYS : BENCHES);
    console.log(kind, [...shares].map(([name, share]) => `${name} ${(100 * share).toFixed(1)} %`).join(', '));
    return 100 * Math.min(...shares.values());
  },
  goal: { atLeast: 88, atMost: 92 },
}));
