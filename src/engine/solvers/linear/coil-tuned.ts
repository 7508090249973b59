import type { Assembly } from '../../kinds/arrangements/assembly.ts';
import type { Port } from '../../network/port.ts';
import type { Hertz, Ratio } from '../../units/quantities.ts';
import { type LinearSolver, linearSolver } from './solve.ts';
import { asCarrier, type CarrierView, type FrequencyView, loaded, type TunedNetwork } from './views.ts';

/** Resolution of a slider or turning coil; each place needs a solver of its own. */
const FINEST = 4096;

/** A set that a coil tunes, by a slider or by turning it: one factorisation a frequency and place. */
export function coilTuned(assembly: Assembly): TunedNetwork {
  const ports: Port[] = [assembly.carrierPort, assembly.tunedPort];
  const solvers = new Map<number, LinearSolver>();
  const solverAt = (position: Ratio): LinearSolver => {
    const key = Math.round(position * FINEST) / FINEST;
    let solver = solvers.get(key);
    if (!solver) solvers.set(key, (solver = linearSolver(assembly.baseAt(key), ports)));
    return solver;
  };
  const viewAt = (frequency: Hertz): FrequencyView => {
    const at = (position: Ratio): CarrierView => asCarrier(solverAt(position).look(frequency));
    return {
      frequency,
      at,
      level: (g, position) => loaded(at(position), g),
      peak(g) {
        const steps = 32;
        let best = 0;
        let largest = -1;
        for (let i = 0; i <= steps; i++) {
          const size = loaded(at(i / steps), g);
          if (size > largest) [largest, best] = [size, i];
        }
        const position = climb(
          (p) => loaded(at(p), g),
          Math.max(0, best - 1) / steps,
          Math.min(steps, best + 1) / steps,
          0.2 / FINEST,
        );
        return { position, other: position, within: position > 1e-3 && position < 1 - 1e-3 };
      },
    };
  };
  // The same few frequencies are used at every position and for every station.
  const views = new Map<Hertz, FrequencyView>();
  return {
    at(frequency) {
      let view = views.get(frequency);
      if (!view) views.set(frequency, (view = viewAt(frequency)));
      return view;
    },
  };
}

/** Golden-section search for the top of a single hill. */
function climb(height: (x: number) => number, low: number, high: number, near = 1e-6): number {
  const g = (Math.sqrt(5) - 1) / 2;
  let a = low;
  let b = high;
  let c = b - g * (b - a);
  let d = a + g * (b - a);
  let fc = height(c);
  let fd = height(d);
  for (let i = 0; i < 40 && b - a > near; i++) {
    if (fc >= fd) {
      b = d;
      d = c;
      fd = fc;
      c = b - g * (b - a);
      fc = height(c);
    } else {
      a = c;
      c = d;
      fc = fd;
      d = a + g * (b - a);
      fd = height(d);
    }
  }
  // An end of the scale is a top too when the hill lies beyond it.
  const middle = (a + b) / 2;
  const candidates = [low, middle, high];
  return candidates.reduce((best, x) => (height(x) > height(best) ? x : best), middle);
}
