import type { Warning } from '../../facts/warning.ts';
import type { Circuit } from '../../network/elements.ts';
import type { Hertz, Ohms, Ratio, Seconds, Volts } from '../../units/quantities.ts';
import { type Tone, tonesOf } from './analysis.ts';
import type { Device } from './devices.ts';
import type { StationWave } from './sources.ts';
import { createTransient, type Probe } from './transient.ts';

/** Voltage of `node` over `over` (earth). */
export interface Where {
  readonly node: string;
  readonly over?: string;
}
export interface DetectionOptions {
  readonly devices: readonly Device[];
  readonly stations: readonly StationWave[];
  /** Where one listens. */
  readonly output: Where;
  /** Where the first detector takes its power. */
  readonly input: Where;
  /** Left out at the start. Default 5 ms. */
  readonly settle?: Seconds;
  /** Looked at. Default 60 ms. */
  readonly duration?: Seconds;
  readonly tones: readonly Hertz[];
}
export interface Detection {
  readonly directVoltage: Volts;
  /** At the output; phase of a cosine at the start of the run. */
  readonly tones: readonly Tone[];
  /** Twice and three times the first tone, over it; NaN without tones. */
  readonly secondHarmonic: Ratio;
  readonly thirdHarmonic: Ratio;
  /** Mean square of the input voltage over the mean power the detector takes from it. */
  readonly inputResistance: Ohms;
  readonly warnings: readonly Warning[];
}

/** Carrier cycles that can be looked at in one go. */
export const MOST_CYCLES = 20_000_000;

export interface TransientDetectionOptions extends DetectionOptions {
  /** Default 32. */
  readonly stepsPerCycle?: number;
  /** Called between chunks with the share done; returning false stops the run. */
  readonly progress?: (done: Ratio) => boolean;
}

/**
 * What comes out of a circuit's detector, from its waveforms cycle by cycle: values are means over one cycle of the
 * first station's carrier.
 * @param circuit elements with one detector
 * @param options stations (Hz, V), time to settle and to look at (s), steps per cycle
 * @returns direct voltage (V), audio (V) and distortion, input resistance (Ω)
 * @throws RangeError when there is nothing to run or too much; Error "stopped" when `progress` says so.
 */
export function detectByTransient(circuit: Circuit, options: TransientDetectionOptions): Detection {
  const { stations, output, input, settle = 5e-3, duration = 60e-3, stepsPerCycle = 32 } = options;
  const carrier = stations[0]?.frequency;
  if (!(carrier > 0)) throw new RangeError('detection needs a station with a frequency above 0 Hz');
  const skip = Math.round(settle * carrier);
  const cycles = Math.round(duration * carrier);
  if (!(skip >= 0 && cycles >= 2 && skip + cycles <= MOST_CYCLES)) {
    throw new RangeError(`settle and duration must hold from 2 to ${MOST_CYCLES} carrier cycles, not ${skip + cycles}`);
  }
  const probes: Probe[] = [
    { kind: 'voltage', ...output },
    { kind: 'square', ...input },
    { kind: 'power', ...input },
  ];
  const run = createTransient(circuit, {
    devices: options.devices,
    stations,
    stepsPerCycle,
    probes,
    every: stepsPerCycle,
    average: true,
  });
  const chunk = 2048;
  const out = probes.map(() => new Float64Array(chunk));
  const heard = new Float64Array(cycles);
  let square = 0;
  let power = 0;
  const total = skip + cycles;
  for (let done = 0; done < total; ) {
    const n = Math.min(chunk, total - done, done < skip ? skip - done : chunk);
    run.run(n * stepsPerCycle, out);
    if (done >= skip) {
      heard.set(out[0].subarray(0, n), done - skip);
      for (let i = 0; i < n; i++) {
        square += out[1][i];
        power += out[2][i];
      }
    }
    done += n;
    if (options.progress && !options.progress(done / total)) throw new Error('stopped');
  }
  return {
    ...harmonics(heard, 1 / carrier, options.tones, { start: run.frameTime(skip), mean: 1 / carrier }),
    inputResistance: square / power,
    warnings: run.warnings,
  };
}

/** Mean, tones and the first tone's harmonics of evenly spaced samples. */
export function harmonics(
  samples: Float64Array,
  interval: Seconds,
  tones: readonly Hertz[],
  window: { readonly start: Seconds; readonly mean: Seconds },
): Pick<Detection, 'directVoltage' | 'tones' | 'secondHarmonic' | 'thirdHarmonic'> {
  const over = tones.length > 0 ? [2 * tones[0], 3 * tones[0]].filter((f) => f < 0.5 / interval) : [];
  const all = tonesOf(samples, interval, [...tones, ...over], window);
  const first = all.tones[0]?.amplitude;
  const ratio = (k: number) => (all.tones[tones.length + k]?.amplitude ?? Number.NaN) / first;
  return {
    directVoltage: all.mean,
    tones: all.tones.slice(0, tones.length),
    secondHarmonic: ratio(0),
    thirdHarmonic: ratio(1),
  };
}
