import type { LoadDescription } from '../../../../engine/kinds/loads/load-schema.ts';
import type { Plates } from './bring-up-steps.ts';
import { outputNames } from './circuit.ts';

/** What one notices. */
export type Symptom =
  | 'silence'
  | 'clicks only'
  | 'one station everywhere'
  | 'low readings'
  | 'high readings'
  | 'broad and weak'
  | 'hum'
  | 'fading';

const SYMPTOMS: Readonly<Record<Symptom, string>> = {
  silence: 'Silence, no click when a wire is moved',
  'clicks only': 'Clicks, but no station',
  'one station everywhere': 'One station everywhere on the dial',
  'low readings': 'Stations come in at lower readings than they should',
  'high readings': 'Stations come in at higher readings than they should',
  'broad and weak': 'Broad tuning and weak stations',
  hum: 'Hum with every station',
  fading: 'A station fades and comes back',
};

/** What may be wrong, with the tags or kinds that its text needs. */
export type Cause =
  | { readonly code: 'amplifier' | 'outputs-touch' | 'transformer-open' | 'valve-open' | 'detector-open' }
  | { readonly code: 'phones-and-cord'; readonly load: LoadDescription['kind'] }
  | { readonly code: 'by-pass-shorted'; readonly tag: string }
  | {
      readonly code:
        | 'crystal-spot'
        | 'heater-cold'
        | 'detector'
        | 'aerial-or-earth-off'
        | 'coil-open'
        | 'taps-miscounted';
    }
  | { readonly code: 'tuning-off'; readonly tag: string; readonly plates: Plates }
  | {
      readonly code:
        | 'slider-contact'
        | 'turn-to-minimum'
        | 'aerial-tap-high'
        | 'coils-close'
        | 'series-capacitor-large';
    }
  | { readonly code: 'trap-off' | 'no-trap' }
  | { readonly code: 'coil-large-slid' | 'coil-large-wound' | 'coil-large' | 'stray-capacitance' }
  | { readonly code: 'coil-small-wound' | 'coil-small' | 'slider-bridges' | 'capacitor-small' }
  | { readonly code: 'damp-paper' | 'damp-former' | 'bad-joint' | 'detector-tap-high' }
  | { readonly code: 'mains-near-loop' | 'mains-near-lead-in' | 'amplifier-supply' | 'heater-alternating' }
  | { readonly code: 'sky-wave' | 'sky-wave-or-whisker' | 'sky-wave-or-pair' };

type Plain = Exclude<Cause['code'], 'phones-and-cord' | 'by-pass-shorted' | 'tuning-off'>;

const PLAIN: Readonly<Record<Plain, string>> = {
  amplifier: 'amplifier and its lead',
  'outputs-touch': 'P1 and P2 touching',
  'transformer-open': 'transformer open',
  'valve-open': 'valve out of its holder, or an open heater',
  'detector-open': 'detector open',
  'crystal-spot': 'detector: find another spot, try a diode',
  'heater-cold': 'heater cold: check its supply; try another valve',
  detector: 'detector: try another',
  'aerial-or-earth-off': 'aerial or earth off',
  'coil-open': 'coil open',
  'taps-miscounted': 'taps counted from the wrong end',
  'slider-contact': 'slider not touching: bare and clean its track',
  'turn-to-minimum': 'turn the aerial until that station is weakest',
  'aerial-tap-high': 'aerial on too many turns: move it towards the start',
  'coils-close': 'coils too close: move them apart',
  'series-capacitor-large': 'a smaller capacitor in the aerial lead',
  'trap-off': 'the trap: tune it to that station',
  'no-trap': 'fit a trap for that station',
  'coil-large-slid': 'coil larger than calculated: no harm while every station is within the travel',
  'coil-large-wound': 'coil too large: take off turns, one at a time',
  'coil-large': 'coil too large',
  'stray-capacitance': 'more stray capacitance than calculated: move wires apart',
  'coil-small-wound': 'coil too small, or turns short-circuited',
  'coil-small': 'coil too small',
  'slider-bridges': 'slider bridging two turns',
  'capacitor-small': 'capacitor smaller than marked or calculated',
  'damp-paper': 'damp paper under the coil',
  'damp-former': 'damp former',
  'bad-joint': 'bad joint',
  'detector-tap-high': 'detector too far up the coil: try a lower tap',
  'mains-near-loop': 'mains wires or a lamp’s supply nearby: turn the aerial',
  'mains-near-lead-in': 'mains wires beside the lead-in; earth on the wrong thing',
  'amplifier-supply': 'the amplifier’s supply',
  'heater-alternating': 'a heater on alternating current',
  'sky-wave': 'by night the sky wave fades; by day a loose joint',
  'sky-wave-or-whisker': 'by night the sky wave fades; by day a loose joint or the whisker',
  'sky-wave-or-pair': 'by night the sky wave fades; by day a loose joint or the pair of crystals',
};

function causeText(cause: Cause): string {
  switch (cause.code) {
    case 'phones-and-cord':
      return `${outputNames[cause.load]} and cord`;
    case 'by-pass-shorted':
      return `by-pass capacitor ${cause.tag} short-circuited`;
    case 'tuning-off':
      return `${cause.tag} not connected, or its ${cause.plates} short-circuited`;
    default:
      return PLAIN[cause.code];
  }
}

/** A row of the table of faults: what one notices, and where to look, in order. */
export const faultRow = (symptom: Symptom, causes: readonly Cause[]): readonly [string, string] => [
  SYMPTOMS[symptom],
  `${causes.map(causeText).join('; ')}.`,
];
