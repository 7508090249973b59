import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { setCircuit } from '../src/engine/built/set-circuit.ts';
import type { Circuit, Element } from '../src/engine/network/elements.ts';
import { averaged } from '../src/engine/parts/detector/averaged.ts';
import type { Detector } from '../src/engine/parts/detector/detector.ts';
import { exponentialDetector } from '../src/engine/parts/detector/exponential.ts';
import { measuredDetector } from '../src/engine/parts/detector/measured.ts';
import { steadyDetector } from '../src/engine/parts/detector/steady.ts';
import { thermionicDetector } from '../src/engine/parts/detector/thermionic/thermionic.ts';
import { readValue } from '../src/engine/set/read.ts';
import { createListener } from '../src/engine/solvers/envelope/envelope.ts';
import { detectByEnvelope } from '../src/engine/solvers/envelope/tone-figures.ts';
import { linearSolver } from '../src/engine/solvers/linear/solve.ts';
import { createTransient } from '../src/engine/solvers/transient/transient.ts';
import { nodeWaves } from '../src/engine/waves/node-waves.ts';
import { wavePlaces } from '../src/engine/waves/wave-places.ts';
import { anyCircuit, NODES } from './support/any-circuit.ts';
import { arbitrarySet } from './support/arbitrary-set.ts';
import { element } from './support/element.ts';

const settings = (runs: number, seed: number) => ({
  numRuns: Number(process.env.RUNS ?? runs),
  seed: process.env.SEED ? Number(process.env.SEED) : seed,
});

const logs = (low: number, high: number) =>
  fc.double({ min: Math.log10(low), max: Math.log10(high), noNaN: true }).map((d) => 10 ** d);

/** A junction over many decades, a valve, a measured table. */
const anyDevice: fc.Arbitrary<Detector> = fc.oneof(
  fc
    .tuple(logs(1e-12, 1e-5), logs(0.8, 3), logs(1e-2, 1e4), logs(1e-10, 1e-4))
    .map(([saturationCurrent, ideality, seriesResistance, leakage]) =>
      exponentialDetector({ saturationCurrent, ideality, seriesResistance, leakage }),
    ),
  fc.integer({ min: 500, max: 1100 }).map((temperature) => thermionicDetector({ temperature })),
  fc.tuple(logs(1e-9, 1e-5), logs(0.02, 0.1)).map(([Is, s]) =>
    measuredDetector({
      points: [-0.4, -0.1, 0, 0.1, 0.2, 0.3].map((voltage) => ({ voltage, current: Is * Math.expm1(voltage / s) })),
    }),
  ),
);
const drive = fc.record({
  device: anyDevice,
  second: fc.option(anyDevice),
  emf: logs(1e-6, 1e1),
  frequency: logs(1.5e5, 3e6),
  beside: fc.integer({ min: -40, max: 40 }),
  bias: fc.option(fc.double({ min: -0.5, max: 0.8, noNaN: true })),
  output: fc.constantFrom(...NODES.slice(1)),
});

/** Reasons a circuit may be refused for; anything else is a fault. */
const REASONS =
  /short-circuited|decades|couplings of|there is no node|no "|is not there|repeated|floats|nothing is joined|not 0|must|circuit|cannot/i;

const answered = <T>(make: () => T): T | undefined => {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    expect(error.message).toMatch(REASONS);
    expect(error.message).not.toMatch(/NaN|undefined/);
    return undefined;
  }
};

/** With a bias cell in the detector's lead, and a second detector from its cathode on, where wanted. */
function dressed(circuit: Circuit, bias: number | null, pair: boolean): Circuit {
  const elements: Element[] = circuit.elements.flatMap((e): Element[] => {
    if (e.kind !== 'detector' || bias === null) return [e];
    return [
      element({ kind: 'cell', name: 'bias', from: e.from, to: 'biased', voltage: bias }),
      { ...e, from: 'biased' },
    ];
  });
  if (pair) {
    const d = circuit.elements.find((e) => e.kind === 'detector')!;
    elements.push(element({ kind: 'detector', name: 'second', from: d.to, to: d.to === 'e' ? 'd' : 'e' }));
  }
  return { elements };
}

describe('any circuit, any parts over six decades, any detector', () => {
  it('runs cycle by cycle to numbers, or is refused for a reason', () => {
    let ran = 0;
    fc.assert(
      fc.property(anyCircuit, drive, (bare, d) => {
        const circuit = dressed(bare, d.bias, d.second !== null);
        const out = answered(() => {
          const run = createTransient(circuit, {
            devices: d.second ? [d.device, d.second] : [d.device],
            stations: [
              { frequency: d.frequency, emf: d.emf, modulation: [{ frequency: 1000, depth: 0.8 }] },
              { frequency: d.frequency + 1e3 * d.beside, emf: d.emf },
            ],
            probes: [
              {
                kind: 'voltage',
                node: circuit.elements.some((e) => 'from' in e && (e.from === d.output || e.to === d.output))
                  ? d.output
                  : 'earth',
              },
              { kind: 'detector current' },
              { kind: 'detector voltage' },
            ],
          });
          const kept = [0, 1, 2].map(() => new Float64Array(640));
          run.run(640, kept);
          return kept;
        });
        if (!out) return;
        ran++;
        for (const values of out) expect(values.every(Number.isFinite)).toBe(true);
      }),
      settings(150, 7),
    );
    expect(ran).toBeGreaterThan(30);
  });

  it('is listened to in numbers by its envelopes, or is refused for a reason', () => {
    let ran = 0;
    fc.assert(
      fc.property(anyCircuit, drive, (bare, d) => {
        const circuit = dressed(bare, d.bias, false);
        const { from, to } = circuit.elements.find((e) => e.kind === 'detector')! as { from: string; to: string };
        const found = answered(() =>
          detectByEnvelope(circuit, {
            devices: [d.device],
            stations: [
              { frequency: d.frequency, emf: d.emf, modulation: [{ frequency: 1000, depth: 0.8 }] },
              { frequency: d.frequency + 1e3 * d.beside, emf: d.emf },
            ],
            output: { node: to },
            input: { node: from, over: to },
            settle: 0,
            duration: 1e-3,
            tones: [1000],
            harmonics: false,
          }),
        );
        if (!found) return;
        ran++;
        expect(Number.isFinite(found.directVoltage)).toBe(true);
        expect(Number.isFinite(found.tones[0].amplitude)).toBe(true);
      }),
      settings(18, 8),
    );
    expect(ran).toBeGreaterThan(10);
  });

  it('has a steady state in numbers', () => {
    fc.assert(
      fc.property(anyCircuit, drive, (bare, d) => {
        const { from, to } = bare.elements.find((e) => e.kind === 'detector')! as { from: string; to: string };
        const view = answered(() => {
          const solver = linearSolver(bare, [{ from, to }]);
          return { carrier: solver.look(d.frequency), direct: solver.look(0) };
        });
        if (!view) return;
        const z = view.carrier.z[0][0];
        const open = Math.hypot(view.carrier.open[0].re, view.carrier.open[0].im) * d.emf;
        if (!(open <= 1e4 && z.re >= 0 && z.re < 1e15 && Math.abs(z.im) < 1e15)) return;
        const steady = steadyDetector({
          averaged: averaged(d.device),
          openCircuit: open,
          sourceImpedance: z,
          dcResistance: Math.min(1e12, Math.max(0, view.direct.z[0][0].re)),
          bias: d.bias ?? 0,
        });
        for (const key of ['junctionVoltage', 'directVoltage', 'directCurrent', 'inputPower', 'outputPower'] as const)
          expect(Number.isFinite(steady[key]), key).toBe(true);
        expect(steady.inputResistance).toBeGreaterThan(0);
      }),
      settings(150, 9),
    );
  });
});

describe('any set the schema allows', () => {
  it('shows its waves at every point, and is listened to, in numbers', () => {
    let ran = 0;
    fc.assert(
      fc.property(arbitrarySet(0.1), (written) => {
        const read = readValue(JSON.parse(JSON.stringify(written)));
        if (!read.ok || read.set.place.stations.length === 0) return;
        const { set } = read;
        const circuit = setCircuit(set);
        const places = wavePlaces(circuit);
        const run = answered(() =>
          nodeWaves(set, { station: 0, places: places.map((p) => p.id), begin: 'coming on', duration: 3e-5 }),
        );
        if (run) {
          ran++;
          for (const wave of run.waves) expect(wave.samples.every(Number.isFinite), wave.id).toBe(true);
        }
        const { assembly, transducer, detector } = circuit;
        const [station] = set.place.stations;
        const heard = answered(() => {
          const listener = createListener(assembly.circuitAt(0.5), {
            device: detector,
            stations: [{ frequency: station.frequency, emf: 1e-2 }],
            pointer: station.frequency,
            rate: 192e3,
            decimation: 4,
            outputs: [{ kind: 'voltage', node: transducer.from, over: transducer.to }],
          });
          const out = new Float64Array(64);
          listener.process(64, [new Float64Array(64).fill(1)], [out]);
          return out;
        });
        if (heard) expect(heard.every(Number.isFinite)).toBe(true);
      }),
      settings(40, 10),
    );
    expect(ran).toBeGreaterThan(5);
  });
});
