import { parseQuantity } from '../src/engine/units/parse.ts';
import type { Measurement } from './bench.ts';

const WRITTEN = ['63 mm', '2 1/2 in', '0.365 m', '8"'];

let sum = 0;

export const measurements: Measurement[] = [
  {
    name: 'reading a length as a builder writes it',
    unit: 'length',
    run() {
      for (const written of WRITTEN) {
        const read = parseQuantity(written, 'length');
        if (!read.ok) throw new Error(`${written} was not understood`);
        sum += read.value;
      }
      return WRITTEN.length;
    },
    against: 'reading the number alone',
    goal: { atLeastPerSecond: 50_000 },
  },
  {
    name: 'reading the number alone',
    unit: 'length',
    run() {
      for (const written of WRITTEN) sum += Number.parseFloat(written);
      return WRITTEN.length;
    },
  },
];

/** So that the sums are of use to somebody. */
export const total = () => sum;
