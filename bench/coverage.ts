import { fitAnalyser } from '../src/engine/measure/analyser-fit.ts';
import { fitPeak } from '../src/engine/measure/peak-fit.ts';
import { sweepOf } from '../src/engine/measure/sweep.ts';
import { readNetwork } from '../src/engine/parts/aerial/touchstone.ts';
import { coverageOf, type Outcome, simulatedBenches } from '../test/support/simulated-benches.ts';
import { simulatedInstruments } from '../test/support/simulated-instruments.ts';
import { simulatedSweeps } from '../test/support/simulated-sweeps.ts';
import type { Figure } from './bench.ts';

const BENCHES = 4000;
const DECAYS = 400;

const SWEEPS = 400;

const sweeps = simulatedSweeps(2028);
const networkOf = (text: string) => {
  const read = readNetwork(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read;
};
const coilBench = (): Outcome => {
  const { L, C, q, text } = sweeps.coil();
  const { figures } = fitAnalyser('coil', sweepOf(networkOf(text), 'reflection'), { frequency: 1e6 });
  return [
    ['inductance', figures.inductance, L],
    ['selfCapacitance', figures.selfCapacitance, C],
    ['dissipation', figures.dissipation, 1 / q],
  ];
};
const peakBench = (): Outcome => {
  const { f0, q, text } = sweeps.peak();
  const fit = fitPeak(networkOf(text));
  return [
    ['resonance', fit.resonance, f0],
    ['q', fit.q, q],
  ];
};

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
  figureOf('analyser-coil', SWEEPS, coilBench),
  figureOf('analyser-peak', BENCHES, peakBench),
  ...Object.entries(instruments).map(([kind, measure]) => figureOf(kind, BENCHES, measure)),
];
