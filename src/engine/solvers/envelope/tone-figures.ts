import { ImpossibleValues } from '../../facts/impossible-values.ts';
import type { Circuit } from '../../network/elements.ts';
import type { Device } from '../transient/devices.ts';
import { type Detection, type DetectionOptions, harmonics } from '../transient/waveform-figures.ts';
import { createListener } from './envelope.ts';

export interface EnvelopeDetectionOptions extends DetectionOptions {
  /** Steps a second. Default 384000, or sixteen to the fastest beat if that is more. */
  readonly rate?: number;
  /** Allow for the carrier's harmonics on the circuit. Default true. */
  readonly harmonics?: boolean;
}

/** Stations this near to the first beat with it, Hz. */
const COHERENT = 250e3;

/** Seconds of signal that can be looked at in one go. */
export const LONGEST_SIGNAL = 30;

/**
 * As `detectByTransient`, from the envelopes: many times faster, and without the carrier's ripple. The first station's
 * frequency is the frame; stations more than 250 kHz from it only weigh on the detector (and not on `inputResistance`).
 * @param circuit elements with one detector
 * @param options stations (Hz, V), time to settle and to look at (s)
 * @returns direct voltage (V), audio (V) and distortion, input resistance (Ω)
 * @throws RangeError when there is nothing to run or too much.
 */
export function detectByEnvelope(circuit: Circuit, options: EnvelopeDetectionOptions): Detection {
  const { stations, output, input, settle = 5e-3, duration = 60e-3 } = options;
  const carrier = stations[0]?.frequency;
  if (!(carrier > 0)) throw new RangeError('detection needs a station with a frequency above 0 Hz');
  if (!(settle >= 0 && duration > 0 && settle + duration <= LONGEST_SIGNAL))
    throw new RangeError(`settle and duration must be ${LONGEST_SIGNAL} s or less together, not ${settle + duration}`);
  const beats = stations.map((s) => Math.abs(s.frequency - carrier)).filter((f) => f <= COHERENT);
  const rate = options.rate ?? Math.max(384e3, 16 * Math.max(...beats));
  const size = 1024;
  const listener = createListener(circuit, {
    device: sameDevice(options.devices),
    stations,
    pointer: carrier,
    rate,
    decimation: 1,
    window: Math.min(1.1 * COHERENT, 0.45 * rate),
    outputs: [{ kind: 'voltage', ...output }],
    radioOutputs: [{ kind: 'voltage', ...input }],
    largestBlock: size,
    harmonics: options.harmonics ?? true,
  });
  const skip = Math.round(settle * rate);
  const count = Math.round(duration * rate);
  if (!(count >= 2)) throw new ImpossibleValues({ code: 'signal.too-short' });
  const heard = new Float64Array(count);
  const envelopes = stations.map(() => new Float64Array(size));
  const out = [new Float64Array(size)];
  let square = 0;
  let power = 0;
  for (let done = 0; done < skip + count; done += size) {
    const n = Math.min(size, skip + count - done);
    stations.forEach((s, k) => {
      const into = envelopes[k];
      for (let i = 0; i < n; i++) {
        const t = (done + i + 1) / rate;
        let a = 1;
        if (s.envelope) a = s.envelope(t);
        else
          for (const m of s.modulation ?? []) a += m.depth * Math.cos(2 * Math.PI * m.frequency * t + (m.phase ?? 0));
        into[i] = a;
      }
    });
    listener.process(n, envelopes, out);
    const from = Math.max(skip - done, 0);
    if (from >= n) continue;
    heard.set(out[0].subarray(from, n), done + from - skip);
    const [v] = listener.trace;
    const c = listener.traceCurrent;
    for (let i = from; i < n; i++) {
      square += v.re[i] ** 2 + v.im[i] ** 2;
      power += v.re[i] * c.re[i] + v.im[i] * c.im[i];
    }
  }
  if (listener.meters.lost > 0) throw new ImpossibleValues({ code: 'envelope.not-followed' });
  return {
    ...harmonics(heard, 1 / rate, options.tones, { start: (skip + 1) / rate, mean: 0 }),
    inputResistance: square / power,
    warnings: listener.warnings,
  };
}

function sameDevice(devices: readonly Device[]): Device {
  if (devices.length === 0) throw new RangeError('detection needs a detector');
  if (devices.some((d) => d !== devices[0]))
    throw new RangeError('the envelope engine takes two detectors only when they are alike');
  return devices[0];
}
