import type { Reception } from '../../engine/reception/path/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import type { Hertz, Seconds } from '../../engine/units/quantities.ts';
import { createWaves, type PointId, wavesOfSet } from '../explain/index.ts';
import { writeUpText } from '../words/index.ts';

/** A wave as it is carried along: even samples over the whole span, as shares of the largest. */
export interface CarriedWave {
  readonly span: Seconds;
  readonly carrier: Hertz;
  readonly rows: readonly {
    readonly title: string;
    /** Of the largest sample, in V; of the programme a share. */
    readonly largest: number;
    /** −32767 to 32767. */
    readonly samples: Int16Array;
  }[];
}

/** Two cycles of the usual tone of 1 kHz, where there are samples enough for it. */
const SPAN: Seconds = 2e-3;
/** So that a cycle of the carrier still looks round. */
const PER_CYCLE = 12;
const MOST_SAMPLES = 60_000;
const POINTS: readonly PointId[] = ['tuned', 'detector', 'phones'];

/**
 * The waves of a station in a set, from the whole tone down to single cycles of the carrier.
 * @returns undefined for a station that gives no wave
 */
export function carriedWave(set: SetDescription, reception: Reception, index: number): CarriedWave | undefined {
  const spec = wavesOfSet(set, reception, index);
  if (!spec) return undefined;
  const waves = createWaves(spec);
  waves.make(POINTS, false);
  const span = Math.min(SPAN, MOST_SAMPLES / (PER_CYCLE * spec.carrier));
  const count = Math.min(MOST_SAMPLES, Math.ceil(span * spec.carrier * PER_CYCLE));
  const rows = POINTS.map((point) => {
    const values = Float64Array.from({ length: count }, (_, i) => waves.at(point, (span * i) / count));
    const largest = values.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
    const samples = Int16Array.from(values, (x) => (largest > 0 ? Math.round((32767 * x) / largest) : 0));
    return { title: writeUpText.wavePoint[point as 'tuned' | 'detector' | 'phones'], largest, samples };
  });
  return { span, carrier: spec.carrier, rows };
}
