import type { Circuit, Element } from '../src/engine/circuit/elements.ts';
import { createListener, type Listener } from '../src/engine/circuit/envelope.ts';
import type { Measurement } from './bench.ts';

const part = (kind: string, name: string, from: string, to: string, values: object) =>
  ({ kind, name, from, to, ...values }) as Element;

/** A tuned circuit on a wire, at 1 MHz with 87 pF, straight to phones of 2000 Ω. */
export const listeningCircuit = (tuning = 87e-12): Circuit => ({
  elements: [
    part('source', 'field', 'earth', 'sky', { emf: { re: 1, im: 0 } }),
    part('capacitor', 'aerial', 'sky', 'wire', { capacitance: 200e-12 }),
    part('resistor', 'earth', 'wire', 'lead', { resistance: 40 }),
    part('capacitor', 'coupling', 'lead', 'top', { capacitance: 30e-12 }),
    part('inductor', 'coil', 'top', 'earth', { inductance: 220e-6, resistance: 12 }),
    part('capacitor', 'tuning', 'top', 'earth', { capacitance: tuning }),
    part('detector', 'detector', 'top', 'out', {}),
    part('capacitor', 'by-pass', 'out', 'earth', { capacitance: 1e-9 }),
    part('resistor', 'phones', 'out', 'winding', { resistance: 2000 }),
    part('inductor', 'inductance', 'winding', 'earth', { inductance: 1.2, resistance: 0 }),
    part('resistor', 'iron', 'winding', 'earth', { resistance: 30e3 }),
  ],
});

/** Invented stations: over the whole of medium wave, or all on neighbouring channels around the pointer. */
const spread = Array.from({ length: 15 }, (_, k) => ({
  frequency: 531e3 + 72e3 * k,
  emf: [0.05, 0.004, 0.01, 0.002][k % 4],
}));
const crowded = spread.map((s, k) => ({ ...s, frequency: 1e6 + 9e3 * (k - 7) }));

const FRAMES = 128;

/** Seconds of sound made in a second: the best of five rounds of half a second of sound. */
export function timesRealTime(stations: typeof spread, harmonics: boolean, turning: boolean): number {
  const listener: Listener = createListener(listeningCircuit(), {
    device: { saturationCurrent: 1e-6, ideality: 1.1 },
    stations,
    pointer: 1e6,
    outputs: [{ kind: 'voltage', node: 'out' }],
    harmonics,
  });
  const out = [new Float32Array(FRAMES)];
  // Programmes of a second each, read round and round.
  const blocks = 375;
  const programmes = stations.map((_, k) =>
    Array.from({ length: blocks }, (_, b) =>
      Float32Array.from({ length: FRAMES }, (_, i) => 1 + 0.3 * Math.sin((b * FRAMES + i) * 0.01 * (1 + 0.1 * k))),
    ),
  );
  const envelopes = stations.map((_, k) => programmes[k][0]);
  let position = 0;
  const run = (count: number) => {
    const start = performance.now();
    for (let n = 0; n < count; n++) {
      const b = position++ % blocks;
      for (let k = 0; k < stations.length; k++) envelopes[k] = programmes[k][b];
      if (turning) {
        const pointer = 1e6 + 20e3 * Math.sin(position / 200);
        listener.retune(listener.network(listeningCircuit(87e-12 * (1e6 / pointer) ** 2), pointer), pointer);
      }
      listener.process(FRAMES, envelopes, out);
    }
    return (count * FRAMES) / listener.soundRate / ((performance.now() - start) / 1000);
  };
  run(blocks * 2);
  return Math.max(...Array.from({ length: 5 }, () => run(188)));
}

const goal = { atLeast: 8 };
const unit = 'times real time';
export const measurements: Measurement[] = [
  { name: 'listening, 15 stations over medium wave', unit, measure: () => timesRealTime(spread, false, false), goal },
  {
    name: 'listening, 15 stations on neighbouring channels',
    unit,
    measure: () => timesRealTime(crowded, false, false),
    goal,
  },
  { name: 'listening, the same allowing for harmonics', unit, measure: () => timesRealTime(crowded, true, false) },
  { name: 'listening while the dial turns', unit, measure: () => timesRealTime(spread, false, true) },
];
