import type { RangedStation } from '../../../../engine/uncertainty/ranged-reception.ts';
import { wholeDB } from '../../figures.ts';

type Item = RangedStation['budget'][number];

/** "−8 to +6 dB": of the level at the ear. */
const signed = (dB: number): string => (Math.round(dB) > 0 ? `+${wholeDB(dB)}` : wholeDB(dB));
const span = ({ effect: [below, above] }: Item): string => `${signed(below)} to ${signed(above)} dB`;

/** Gains below this are not worth a measurement, dB. */
const LEAST_GAIN = 0.5;

interface Sentences {
  readonly measured: (span: string, gain: string) => string;
  readonly only: (span: string) => string;
}

const ITEMS: Readonly<Record<Item['what'], Sentences>> = {
  'field strength': {
    measured: (by, gain) =>
      `Field strength: ${by} at the ear. A measured field strength would narrow the range by ${gain} dB.`,
    only: (by) => `Field strength: ${by} at the ear.`,
  },
  modulation: {
    measured: (by, gain) =>
      `Depth of modulation: ${by} at the ear. The station’s own figure would narrow the range by ${gain} dB.`,
    only: (by) => `Depth of modulation: ${by} at the ear.`,
  },
  'effective height': {
    measured: (by, gain) =>
      `Effective height of the aerial: ${by} at the ear. A measured one would narrow the range by ${gain} dB.`,
    only: (by) => `Effective height of the aerial: ${by} at the ear.`,
  },
  aerial: {
    measured: (by, gain) =>
      `Capacitance and loss of the aerial: ${by} at the ear. Measuring its impedance would narrow the range by ${gain} dB.`,
    only: (by) => `Capacitance and loss of the aerial: ${by} at the ear.`,
  },
  earth: {
    measured: (by, gain) =>
      `Resistance of the earth: ${by} at the ear. Measuring it would narrow the range by ${gain} dB.`,
    only: (by) => `Resistance of the earth: ${by} at the ear.`,
  },
  coil: {
    measured: (by, gain) => `Q of the coil: ${by} at the ear. Measuring it would narrow the range by ${gain} dB.`,
    only: (by) => `Q of the coil: ${by} at the ear.`,
  },
  coupling: {
    measured: (by, gain) =>
      `Coupling of the coils: ${by} at the ear. Measuring it would narrow the range by ${gain} dB.`,
    only: (by) => `Coupling of the coils: ${by} at the ear.`,
  },
  'tuning capacitor': {
    measured: (by, gain) =>
      `Capacitance of the tuning capacitor: ${by} at the ear. Measuring it would narrow the range by ${gain} dB.`,
    only: (by) => `Capacitance of the tuning capacitor: ${by} at the ear.`,
  },
  detector: {
    measured: (by, gain) =>
      `Curve of the detector: ${by} at the ear. Measuring a few points of it would narrow the range by ${gain} dB.`,
    only: (by) => `Curve of the detector: ${by} at the ear.`,
  },
  phones: {
    measured: (by, gain) =>
      `Sensitivity of the phones or loudspeaker: ${by} at the ear. Measuring it would narrow the range by ${gain} dB.`,
    only: (by) => `Sensitivity of the phones or loudspeaker: ${by} at the ear.`,
  },
  hearing: {
    measured: (by, gain) => `Hearing: ${by}. A measured threshold would narrow the range by ${gain} dB.`,
    only: (by) => `Hearing: ${by}.`,
  },
};

/** What one unmeasured thing does to the level at the ear, and what measuring it would gain. */
export const budgetSentence = (item: Item): string =>
  item.gain >= LEAST_GAIN
    ? ITEMS[item.what].measured(span(item), item.gain >= 1 ? wholeDB(item.gain) : item.gain.toFixed(1))
    : ITEMS[item.what].only(span(item));

/** From here on there is hardly a set that does not hear a station. */
const ALL_BUT_SURE = 0.97;

/** How many of all such sets hear a station. */
export function chanceSentence({ chance, verdict }: Pick<RangedStation, 'chance' | 'verdict'>): string | undefined {
  const inTen = Math.round(10 * chance);
  if (verdict === 'out of range' && inTen < 1) return undefined;
  if (chance >= ALL_BUT_SURE)
    return 'Nearly all such sets would tune it in and receive it audibly, not masked by another station.';
  if (inTen < 1) return 'Fewer than 1 in 20 such sets would receive it audibly.';
  return `About ${Math.min(inTen, 9)} in 10 such sets would tune it in and receive it audibly, not masked by another station.`;
}

/** The same for a table. */
export function chanceCell(chance: number): string {
  if (chance >= ALL_BUT_SURE) return 'nearly all';
  const inTen = Math.round(10 * chance);
  return inTen < 1 ? 'hardly any' : `${Math.min(inTen, 9)} in 10`;
}

/** Heading of the things that make a range wide. */
export const uncertaintyHeading = 'What makes the range (90 %)';
