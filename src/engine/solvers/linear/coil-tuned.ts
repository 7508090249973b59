import type { Assembly } from '../../kinds/arrangements/assembly.ts';
import type { Port } from '../../network/port.ts';
import { lazily } from '../../numerics/lazily.ts';
import type { Hertz, Ratio } from '../../units/quantities.ts';
import { linearSolver } from './solve.ts';
import { asCarrier, type CarrierView, type FrequencyView, loaded, type TunedNetwork } from './views.ts';

/** Places of a slider or turning coil; each needs a solver of its own. */
const FINEST = 4096;

/** A set that a coil tunes, by a slider or by turning it: one factorisation a frequency and place. */
export function coilTuned(assembly: Assembly): TunedNetwork {
  const ports: Port[] = [assembly.carrierPort, assembly.tunedPort];
  const solverAt = lazily((place: number) => linearSolver(assembly.baseAt(place / FINEST), ports));
  const viewAt = (frequency: Hertz): FrequencyView => {
    const viewFrom = lazily((place: number) => asCarrier(solverAt(place).look(frequency)));
    const at = (position: Ratio): CarrierView => viewFrom(Math.round(position * FINEST));
    return {
      frequency,
      at,
      level: (g, position) => loaded(at(position), g),
      levelsWith: () => false,
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
  return { at: lazily(viewAt) };
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
