import { once } from '../../../engine/numerics/lazily.ts';
import type { Hertz } from '../../../engine/units/quantities.ts';
import type { SampledPart, WaveParts } from './parts.ts';
import { emptyRange, type Trace } from './range.ts';
import { SampledWave } from './sampled-wave.ts';
import { onGrid, type Passing, sidebandPassing } from './wave-programme.ts';
import type { WaveSpec } from './wave-spec.ts';

/** Neighbours weaker than this do not show. */
const FAINTEST = 1e-4;

/** What all waves of one spec are made with. */
export interface WaveContext {
  readonly spec: WaveSpec;
  /** 2π times the carrier. */
  readonly w: number;
  readonly recording: boolean;
  /** Frequencies of the programme; none of a recording. */
  readonly tones: readonly Hertz[];
  /** How much deeper the carrier is modulated on the tuned circuit than its Q alone would leave. */
  readonly deeper: number;
  /** What passes of a sideband. */
  passing(f: Hertz): Passing;
  readonly parts: WaveParts;
  /** A part that is kept as samples: taken as it was made elsewhere, or made when first asked for. */
  sampled(part: SampledPart, make: () => SampledWave): () => SampledWave;
  /** Of a recording there is much to keep; of tones hardly anything. */
  envelope(part: SampledPart, make: () => Trace): () => Trace;
}

/** @throws RangeError for a carrier, level or Q that cannot be. */
export function waveContext(given: WaveSpec, parts: WaveParts): WaveContext {
  const spec = settled(given);
  const { carrier, depth, programme } = spec;
  // Loading deepens what is sent, but never turns the carrier over.
  const deeper = Math.min(spec.deepening ?? 1, Math.max(1, 1 / Math.max(depth, 1e-6)));
  const sampled: WaveContext['sampled'] = (part, make) =>
    once(() => {
      const made = parts.sampled[part];
      const wave = made ? new SampledWave(made.samples, made.period, made) : make();
      parts.sampled[part] = wave;
      return wave;
    });
  const recording = programme.kind === 'recording';
  return {
    spec,
    w: 2 * Math.PI * carrier,
    recording,
    tones: programme.kind === 'tones' ? programme.tones.filter((t) => t.share > 0).map((t) => t.frequency) : [],
    deeper,
    passing(f) {
      const { gain, lag } = sidebandPassing(spec.loadedQ, carrier, f);
      return { gain: gain * deeper, lag };
    },
    parts,
    sampled,
    envelope: (part, make) => (recording ? sampled(part, () => make() as SampledWave) : once(make)),
  };
}

/** Greatest distance from 0 over all the time a picture can show. */
export function wholeExtent(trace: Trace): number {
  const out = emptyRange();
  trace.extent(0, 60, out);
  return Math.max(Math.abs(out.min), Math.abs(out.max), 1e-12);
}

/** Onto the grid on which everything repeats, and within sense. */
function settled(spec: WaveSpec): WaveSpec {
  const need = (ok: boolean, what: string, got: number) => {
    if (!ok) throw new RangeError(`${what}, got ${got}`);
  };
  need(spec.carrier >= 20e3 && spec.carrier <= 10e6, 'carrier must be from 20 kHz to 10 MHz', spec.carrier);
  need(spec.depth >= 0 && spec.depth <= 3, 'depth must be from 0 to 3', spec.depth);
  need(spec.loadedQ > 0 && spec.loadedQ < 1e5, 'loaded Q must be above 0', spec.loadedQ);
  need(spec.atAerial > 0 && spec.atAerial < 1e5, 'voltage in the aerial must be above 0', spec.atAerial);
  need(spec.atTuned > 0 && spec.atTuned < 1e5, 'voltage on the tuned circuit must be above 0', spec.atTuned);
  need(spec.atDetector > 0 && spec.atDetector < 1e4, 'voltage at the detector must be above 0', spec.atDetector);
  const { programme } = spec;
  return {
    ...spec,
    carrier: onGrid(spec.carrier),
    programme:
      programme.kind === 'recording'
        ? programme
        : { ...programme, tones: programme.tones.map((t) => ({ ...t, frequency: onGrid(t.frequency) })) },
    neighbours:
      programme.kind === 'recording'
        ? []
        : spec.neighbours
            .filter((n) => n.share > FAINTEST)
            .map((n) => ({ ...n, frequency: onGrid(n.frequency), tone: onGrid(n.tone) })),
  };
}
