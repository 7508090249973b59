import type { PartRole } from '../../../engine/built/identity.ts';
import type { Reception, StationReception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import type { WaveSpec } from '../../explain/index.ts';
import { sidebandPassing, USUAL_TONE } from '../../explain/model/wave-programme.ts';
import type { Depth, PowerSource, Smoothing } from '../../words/index.ts';
import { boardParts } from '../board/parts.ts';

/** Where the power for the sound comes from. */
export function powerOf({ load, detector }: SetDescription): PowerSource {
  if (load.kind === 'amplifier') return 'amplifier';
  return detector.kind === 'valve' ? 'aerial, heated valve' : 'aerial';
}

/** The tags of the coil and capacitor of two tuned circuits; none where a set has not two. */
export function circuitTags(set: SetDescription) {
  if (set.arrangement.kind !== 'two circuits') return undefined;
  const { parts } = boardParts(set);
  const tags = (...roles: PartRole[]): string[] =>
    roles.flatMap((role) => parts.find((p) => p.role === role)?.tag ?? []);
  return { aerial: tags('aerial-coil', 'aerial-tuning'), detector: tags('tuning-coil', 'tuning') };
}

/** What smooths the audio after the detector. */
export function smoothingOf({ load }: SetDescription): Smoothing {
  if (load.bypass > 0) return 'by-pass';
  return load.kind === 'crystal earpiece' ? 'earpiece' : 'load';
}

/** A neighbour's carrier this much of the wanted one's shows at the edges of the picture. */
const SHOWS = 0.015;

/** Names of the neighbours whose carriers show; none where none does. */
export function neighboursShown({ neighbours }: WaveSpec): string[] | undefined {
  const showing = neighbours.filter((n) => n.share > SHOWS);
  return showing.length === 0 ? undefined : showing.flatMap((n) => n.name || []);
}

/** Why the carrier is modulated otherwise than sent, where it shows. */
export function depthOf(
  set: SetDescription,
  reception: Reception,
  best: StationReception,
  spec: WaveSpec,
): Depth | undefined {
  const sent = spec.depth;
  if (!(sent > 0)) return undefined;
  const passed = sidebandPassing(spec.loadedQ, spec.carrier, USUAL_TONE).gain;
  // As the waves have it: never so deep that the carrier would be turned over.
  const shown = sent * passed * Math.min(spec.deepening ?? 1, Math.max(1, 1 / sent));
  const { directResistance: direct, impedanceAt1kHz: audio } = reception.parts.load;
  if (shown > 1.15 * sent && audio > direct)
    return {
      code: 'deeper',
      sent,
      shown,
      load: set.load.kind,
      direct,
      audio,
      distortion: shown > 0.9 && best.distortion > 0.05 ? best.distortion : undefined,
    };
  return shown < 0.85 * sent && passed < 0.9 ? { code: 'shallower', sent, shown } : undefined;
}
