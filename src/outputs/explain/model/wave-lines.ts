import { once } from '../../../engine/numerics/lazily.ts';
import type { Hertz } from '../../../engine/units/quantities.ts';
import { amplitudeAt, type Line, sidebandLines } from './lines.ts';
import type { Trace } from './range.ts';
import type { WaveContext } from './wave-context.ts';
import type { AtPoint } from './wave-points.ts';
import { commonStep } from './wave-programme.ts';
import { oneToneOf, type Signals, sampleCount } from './wave-signals.ts';

/** Samples to a cycle for a spectrum: closely, for the corner at zero has harmonics without end. */
const PER_CYCLE = 256;

/** The steady waves that each point's wave is the sum of. */
export function linesOf(context: WaveContext, signals: Signals, traces: AtPoint<Trace>): AtPoint<readonly Line[]> {
  const { spec, parts, passing } = context;
  const { carrier, depth, programme, neighbours, atAerial, atTuned } = spec;
  const tones = programme.kind === 'recording' ? [] : programme.tones;
  return {
    programme: once(() =>
      tones.map(
        (t): Line => ({ frequency: t.frequency, amplitude: depth * t.share, phase: t.phase, what: 'programme' }),
      ),
    ),
    carrier: once((): Line[] => [{ frequency: carrier, amplitude: atAerial, what: 'carrier' }]),
    modulated: once(() => sidebandLines(carrier, atAerial, depth, programme)),
    tuned: once(() =>
      [
        ...sidebandLines(carrier, atTuned, depth, programme, passing),
        ...neighbours.flatMap((s) =>
          sidebandLines(s.frequency, s.share * atTuned, s.depth, oneToneOf(s)).map(
            (line): Line => ({ ...line, what: 'neighbour' }),
          ),
        ),
      ].sort((a, b) => a.frequency - b.frequency),
    ),
    detector: once(
      () => (parts.lines.detector ??= outputLines(context, () => detectorPeriod(context, signals, traces))),
    ),
    phones: once(() => (parts.lines.phones ??= outputLines(context, signals.capacitor))),
  };
}

interface OnePeriod {
  readonly samples: ArrayLike<number>;
  readonly period: number;
}

/** One period of the detector's output on a grid. */
function detectorPeriod({ spec, tones }: WaveContext, { crowd }: Signals, traces: AtPoint<Trace>): OnePeriod {
  const period = crowd()?.period ?? 1 / commonStep([spec.carrier, ...tones]);
  const n = sampleCount(period, PER_CYCLE * spec.carrier);
  const trace = traces.detector();
  return { samples: Float64Array.from({ length: n }, (_, i) => trace.at((i * period) / n)), period };
}

/** Spectrum of what is not a sum of carriers. */
function outputLines({ spec, recording, tones }: WaveContext, onePeriod: () => OnePeriod): Line[] {
  if (recording) return [];
  const { carrier } = spec;
  const { samples, period } = onePeriod();
  const line = (frequency: Hertz, what: Line['what']): Line => ({
    frequency,
    amplitude: amplitudeAt(samples, period, frequency),
    what,
  });
  const audio = [...new Set(tones.flatMap((f) => [f, 2 * f, 3 * f]))].map((f) => line(f, 'programme'));
  const around = (f: Hertz): Line[] => [
    line(f, 'ripple'),
    ...tones.flatMap((t) => [line(f - t, 'ripple'), line(f + t, 'ripple')]),
  ];
  return [line(0, 'direct'), ...audio, ...around(carrier), ...around(2 * carrier)].sort(
    (a, b) => a.frequency - b.frequency,
  );
}
