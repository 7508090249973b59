import { setCircuit } from '../built/set-circuit.ts';
import { tuningCurve } from '../reception/dial/dial.ts';
import { receiver } from '../reception/path/receive-station.ts';
import type { SetDescription } from '../set/description.ts';
import type { Farads, Henries, Hertz, Ratio } from '../units/quantities.ts';

/** What a set covers and how sharply, and what its tuned circuit is made of. */
export interface BandFigures {
  readonly lowest: Hertz;
  readonly highest: Hertz;
  /** Highest over lowest. */
  readonly span: Ratio;
  /** The same with no aerial, earth or detector: what coil and capacitor alone would cover. */
  readonly spanAlone: Ratio;
  readonly inductance: Henries;
  /** All that tunes at the high end, and of it the capacitor's own least, strays, and what aerial and the rest bring. */
  readonly atHighEnd: {
    readonly whole: Farads;
    readonly capacitor: Farads;
    readonly strays: Farads;
    readonly aerial: Farads;
  };
  /** All that tunes at the low end. */
  readonly wholeAtLowEnd: Farads;
  readonly turns?: number;
  qAt(frequency: Hertz): number;
  bandwidthAt(frequency: Hertz): Hertz;
}

/** @throws RangeError for parts that cannot be built. */
export function bandFigures(set: SetDescription): BandFigures {
  const circuit = setCircuit(set);
  const curve = tuningCurve(receiver(circuit));
  const coil = circuit.tuningCoil;
  const L = coil?.inductance ?? Number.NaN;
  const own = coil?.selfCapacitance ?? 0;
  const { tuning } = circuit;
  const strays = set.tuning.stray + set.tuning.trimmer;
  const whole = (f: Hertz): Farads => 1 / ((2 * Math.PI * f) ** 2 * L);
  // A tapped aerial may act as an inductance, which takes away from what tunes: its share is then nothing.
  const high = Math.max(whole(curve.highest), tuning.min + own);
  return {
    lowest: curve.lowest,
    highest: curve.highest,
    span: curve.highest / curve.lowest,
    spanAlone: Math.sqrt((tuning.max + own) / (tuning.min + own)),
    inductance: L,
    atHighEnd: {
      whole: high,
      capacitor: Math.max(0, tuning.min - strays),
      strays: strays + own,
      aerial: Math.max(0, high - tuning.min - own),
    },
    wholeAtLowEnd: whole(curve.lowest),
    turns: coil?.turns,
    qAt: curve.qAt,
    bandwidthAt: (f) => f / curve.qAt(f),
  };
}
