import type { PartRole } from '../../../engine/built/identity.ts';
import type { Reception, StationReception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatNumber, inSeries } from '../../../engine/units/format.ts';
import type { WaveSpec } from '../../explain/index.ts';
import { sidebandPassing, USUAL_TONE } from '../../explain/model/programme.ts';
import { boardParts } from '../board/parts.ts';
import { OUT_WORDS } from './best.ts';
import { ohms, printable } from './words.ts';

/** Where the power comes from. */
export const drivenWords = (set: SetDescription): string =>
  set.load.kind === 'amplifier'
    ? 'Up to the amplifier nothing drives it but what the aerial catches.'
    : set.detector.kind === 'valve'
      ? 'Nothing drives the sound but what the aerial catches; the heater only frees the electrons.'
      : 'Nothing drives the set but what the aerial catches.';

/** What two circuits are for, where a set has two. */
export function twoCircuitsWords(set: SetDescription): string | undefined {
  const { arrangement } = set;
  if (arrangement.kind !== 'two circuits') return undefined;
  const { parts } = boardParts(set);
  const tagOf = (role: PartRole): string | undefined => parts.find((p) => p.role === role)?.tag;
  const circuit = (...tags: (string | undefined)[]): string => {
    const known = tags.filter(Boolean).join(' with ');
    return known ? ` (${known})` : '';
  };
  const aerial = circuit(tagOf('aerial-coil'), tagOf('aerial-tuning'));
  const detector = circuit(tagOf('tuning-coil'), tagOf('tuning'));
  return `Two tuned circuits stand in the way, both set to the station: the aerial’s${aerial} and the detector’s${detector}. Only the field that their coils share hands the signal on, so a neighbour has to get past both. Closer coils: louder, but broader; further apart: fainter, but keener.`;
}

/** The load's trace, by what does the smoothing. */
export function outTitle({ load }: SetDescription): string {
  const heard = 'as it is heard';
  if (load.bypass > 0) return `After the by-pass capacitor, ${heard}`;
  if (load.kind === 'crystal earpiece') return `At the earpiece, a capacitor itself, ${heard}`;
  return `At the ${OUT_WORDS[load.kind]}, ${heard}`;
}

/** What the pictures show, top to bottom, with what may look odd in them. */
export function wavesWords(set: SetDescription, reception: Reception, best: StationReception, spec: WaveSpec): string {
  const cycles = formatNumber(Math.round(spec.carrier / USUAL_TONE), 4);
  const halves =
    set.detector.wiring === 'full-wave'
      ? 'which lets one half through and turns the other over'
      : 'which lets one half through';
  return `Top to bottom: the programme, a tone standing for voice and music; the tuned circuit, where the carrier swings up and down some ${cycles} times within each wiggle of the tone, too fast to be drawn one by one, as much above as below, so that on average there is nothing to hear; after the detector, ${halves}, the average follows the programme; in the ${OUT_WORDS[set.load.kind]} only that average is left.${depthWords(set, reception, best, spec)}${neighbourWords(spec)}`;
}

/** A neighbour's carrier this much of the wanted one's shows at the edges of the picture. */
const SHOWS = 0.015;

function neighbourWords({ neighbours }: WaveSpec): string {
  const showing = neighbours.filter((n) => n.share > SHOWS);
  if (showing.length === 0) return '';
  const names = showing.flatMap((n) => (n.name ? [printable(n.name)] : []));
  return ` The fine ripple along the edges is ${names.length > 2 ? 'neighbours' : inSeries(names)}, not quite kept out.`;
}

/** Why the carrier is modulated otherwise than sent, where it shows. */
function depthWords(set: SetDescription, reception: Reception, best: StationReception, spec: WaveSpec): string {
  const { depth } = spec;
  if (!(depth > 0)) return '';
  const passed = sidebandPassing(spec.loadedQ, spec.carrier, USUAL_TONE).gain;
  // As the waves have it: never so deep that the carrier would be turned over.
  const shown = depth * passed * Math.min(spec.deepening ?? 1, Math.max(1, 1 / depth));
  const percent = (x: number): string => `${formatNumber(100 * x, 2)} %`;
  const { directResistance, impedanceAt1kHz } = reception.parts.load;
  if (shown > 1.15 * depth && impedanceAt1kHz > directResistance) {
    const bent =
      shown > 0.9 && best.distortion > 0.05
        ? ` In the troughs hardly anything is left, and that bends the tone: part of the ${percent(best.distortion)} distortion comes from there.`
        : '';
    return ` On the tuned circuit the wiggles are deeper than sent, ${percent(shown)} and not ${percent(depth)}: to steady current the ${OUT_WORDS[set.load.kind]} and what leads to them are ${ohms(directResistance)}, to the tone ${ohms(impedanceAt1kHz)}, so the detector draws more from the steady carrier and holds it down.${bent}`;
  }
  if (shown < 0.85 * depth && passed < 0.9)
    return ` On the tuned circuit the wiggles are shallower than sent, ${percent(shown)} and not ${percent(depth)}: so keen a circuit trims what lies beside the carrier.`;
  return '';
}
