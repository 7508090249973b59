import { magnitude } from '../../numerics/complex.ts';
import { shallowTones } from '../../parts/detector/shallow-tone.ts';
import { type Decibels, decibels, type Hertz } from '../../units/quantities.ts';
import type { HeardBand } from '../hearing/types.ts';
import { type Receiver, TEST_TONE, type TunedStation, toneSource } from './receive-station.ts';

/** Where the response is calculated; it runs straight between, in dB over octaves. */
const TONES: readonly Hertz[] = [300, TEST_TONE, 2500, 6000];

/**
 * Bands of a speech at the ear with the treble that the detector on its tuned circuit really leaves. The level at the ear
 * takes a treble loss by the loaded Q; but where phones or a capacitor make the detector's load another for high notes
 * than for low ones, it damps the sidebands otherwise, and notes above a kilohertz may be gone at a Q that passes them.
 * Speech is for the most part far below its peaks: its notes are followed as shallow ones.
 */
export function speechBands(set: Receiver, s: TunedStation): readonly HeardBand[] {
  const sources = TONES.map((tone) => toneSource(set, s, tone));
  const currentOf = shallowTones(set.circuit.averaged, sources[0].carrier, s.steady);
  const at = TONES.map((tone, i) => {
    const current = currentOf(sources[i].upper, sources[i].lower, set.audioLoadAt(tone));
    return decibels((current * magnitude(set.transducerAt(tone))) / s.audioResponseAt(tone));
  });
  const reference = at[TONES.indexOf(TEST_TONE)];
  const shifts = at.map((dB) => (Number.isFinite(dB - reference) ? dB - reference : 0));
  return s.heard.bands.map((band) => ({ ...band, level: band.level + between(band.frequency, shifts) }));
}

function between(frequency: Hertz, shifts: readonly Decibels[]): Decibels {
  const k = TONES.findIndex((tone) => tone >= frequency);
  if (k <= 0) return k === 0 ? shifts[0] : shifts[shifts.length - 1];
  const share = Math.log(frequency / TONES[k - 1]) / Math.log(TONES[k] / TONES[k - 1]);
  return shifts[k - 1] + share * (shifts[k] - shifts[k - 1]);
}
