import { type PartId, partId } from '../network/ids.ts';
import type { SetDescription } from '../set/description.ts';
import type { Planted } from './planting.ts';

/** Ways in which parts of simple receivers fail. */
export type FaultCode =
  | 'winding-open'
  | 'winding-joint-dry'
  | 'turn-shorted'
  | 'section-reversed'
  | 'turns-few'
  | 'turns-many'
  | 'winding-damp'
  | 'taps-interchanged'
  | 'taps-from-wrong-end'
  | 'aerial-tap-open'
  | 'aerial-tap-dry'
  | 'slider-dirty'
  | 'coils-far'
  | 'rod-broken'
  | 'tuning-lead-off'
  | 'tuning-shorted'
  | 'vanes-touch'
  | 'rotor-contact-dirty'
  | 'tuning-leaky'
  | 'tuning-half'
  | 'strays-large'
  | 'dielectric-wet'
  | 'capacitor-open'
  | 'capacitor-shorted'
  | 'resistor-open'
  | 'lead-in-broken'
  | 'aerial-shorter'
  | 'aerial-leaks'
  | 'aerial-earthed'
  | 'aerial-switch-at-earth'
  | 'earth-lead-broken'
  | 'earth-dry'
  | 'spot-dead'
  | 'spot-poor'
  | 'spot-pressed-through'
  | 'device-open'
  | 'device-shorted'
  | 'device-leaky'
  | 'device-silicon'
  | 'device-lead-open'
  | 'device-joint-dry'
  | 'pair-half-open'
  | 'heater-cold'
  | 'heater-low'
  | 'bias-flat'
  | 'bias-reversed'
  | 'phones-open'
  | 'cord-intermittent'
  | 'phones-half'
  | 'phones-shorted'
  | 'magnetism-lost'
  | 'by-pass-shorted'
  | 'by-pass-leaky'
  | 'by-pass-large'
  | 'crystal-dead'
  | 'earpiece-resistor-missing'
  | 'earpiece-resistor-low'
  | 'transformer-reversed'
  | 'primary-open'
  | 'secondary-open'
  | 'load-resistor-open'
  | 'amplifier-dead'
  | 'station-off-air'
  | 'fading-at-night'
  | 'mains-hum'
  | 'nothing-wrong';

/** What a person can notice, or try, without a meter: yes or no. */
export type SignCode =
  | 'crackle-on-tapping'
  | 'crackle-on-turning'
  | 'scrape-at-one-place'
  | 'jumps-on-sliding'
  | 'sound-with-cord-moved'
  | 'changes-on-knock'
  | 'hand-near-moves-tuning'
  | 'hum'
  | 'weaker-when-wet'
  | 'louder-with-hand-on-earth'
  | 'louder-with-other-wire'
  | 'louder-with-other-earth'
  | 'louder-at-another-spot'
  | 'click-from-cell'
  | 'louder-with-other-phones'
  | 'louder-with-other-detector'
  | 'louder-with-by-pass-off'
  | 'louder-with-capacitor-bridged'
  | 'buzz-from-input'
  | 'switch-at-earth'
  | 'hiss-at-full-volume'
  | 'heater-glows'
  | 'swings-within-minutes'
  | 'bias-as-described'
  | 'other-receiver-hears-it';

/** A sign, or one that is looked for at a part by itself. */
export type Sign = SignCode | `louder-with-capacitor-bridged:${string}`;

/**
 * What is looked for, and at which part.
 * @param sign of a check
 * @returns its code; with it the part where it is one of several
 */
export function signAt(sign: Sign): { readonly code: SignCode; readonly part?: PartId } {
  const end = sign.indexOf(':');
  return end < 0
    ? { code: sign as SignCode }
    : { code: sign.slice(0, end) as SignCode, part: partId(sign.slice(end + 1)) };
}

/** What to do about it. Faults of one remedy on one part are one answer. */
export type RemedyCode =
  | 'resolder-winding'
  | 'rewind-turns'
  | 'swap-winding-ends'
  | 'correct-turns'
  | 'dry-winding'
  | 'correct-taps'
  | 'resolder-aerial-tap'
  | 'clean-slider'
  | 'move-coils'
  | 'replace-rod'
  | 'rejoin-tuning'
  | 'straighten-vanes'
  | 'clean-rotor'
  | 'dry-tuning'
  | 'replace-tuning'
  | 'part-leads'
  | 'replace-capacitor'
  | 'replace-resistor'
  | 'mend-lead-in'
  | 'inspect-aerial'
  | 'clear-aerial'
  | 'throw-switch'
  | 'mend-earth-lead'
  | 'improve-earth'
  | 'find-spot'
  | 'lift-whisker'
  | 'replace-device'
  | 'rejoin-device'
  | 'supply-heater'
  | 'renew-bias'
  | 'mend-phones'
  | 'replace-phones'
  | 'replace-by-pass'
  | 'fit-earpiece-resistor'
  | 'turn-transformer'
  | 'replace-transformer'
  | 'supply-amplifier'
  | 'wait-for-station'
  | 'wait-for-day'
  | 'move-from-mains'
  | 'none';

/** Beside a remedy or a check. */
export type FaultCaution =
  | 'unplug-first'
  | 'aerial-in-dry-calm-weather'
  | 'never-in-thunder'
  | 'cell-off-the-ears'
  | 'hot-glass'
  | 'wash-hands-after-galena'
  | 'no-mains-work'
  | 'volume-down'
  | 'no-high-ohm-range'
  | 'subtract-meter-leads'
  | 'earth-is-no-mains-earth';

/** One way in which one part of this set may fail. */
export interface PartFault {
  /** Unique in the set: code, part, and which of its joints or turns. */
  readonly id: string;
  readonly code: FaultCode;
  readonly part: PartId;
  /** Of a coil: between which turns, counted from its earthed end. */
  readonly turns?: readonly [number, number];
  /** How common beside the others; common practice, no source. */
  readonly weight: number;
  readonly remedy: RemedyCode;
  /** The set as really built. Its parts are made anew, so that no model of the described set is changed. */
  readonly describe?: (set: SetDescription) => SetDescription;
  /** What it does to the circuit, by severity 0…1. */
  readonly change?: (planted: Planted, severity: number) => Planted;
  /** Probability of each sign with this fault, where what is lost by it is well heard; others as without a fault. */
  readonly signs: Readonly<Partial<Record<SignCode, number>>>;
  readonly cautions: readonly FaultCaution[];
}

/** Faults with one remedy on one part count as one. */
export const remedyClass = ({ remedy, part }: PartFault): string => (remedy === 'none' ? remedy : `${remedy}@${part}`);

/** What mends several faults, the same in whatever order they stand. */
export const remediesOf = (faults: readonly PartFault[]): string => faults.map(remedyClass).sort().join();

/** Spread evenly on a logarithmic scale. @param severity 0…1. @returns between the two ends. */
export const bySeverity = (low: number, high: number, severity: number): number => low * (high / low) ** severity;
