/** What readings of a bench measurement cannot show: each code with its figures, SI. */
export interface MeasureWarnings {
  /** Index from 0, the frequency given, and the range of what its position belongs to (infinite: none). */
  readonly 'measure.reading-misread': {
    readonly index: number;
    readonly frequency: number;
    readonly there: number;
    readonly from: number;
    readonly to: number;
  };
  /** Readings given, and how many it takes. */
  readonly 'measure.too-few-to-suspect': { readonly given: number; readonly least: number };
  /** The law that fits the readings best of a dial, the next one, and how likely each is, 0 to 1. */
  readonly 'measure.law-chosen': {
    readonly law: string;
    readonly share: number;
    readonly other?: string;
    readonly otherShare?: number;
  };
  /** The law that the readings show, and the described one that they exclude. */
  readonly 'measure.law-not-as-described': { readonly law: string; readonly described: string };
  /** The law that the readings state; the described one, left out for a capacitor without vanes. */
  readonly 'measure.other-law': { readonly stated: string; readonly described?: string };
  /** The described capacitor has no scale. */
  readonly 'measure.dial-not-described': Record<never, never>;
  /** The description couples no two coils, or nothing is known of how. */
  readonly 'measure.no-coupled-coils': Record<never, never>;
  /** The station whose prediction a reading would be set beside; left out where the reading names none. */
  readonly 'measure.no-prediction': { readonly station?: string };
  /** K, and its standard deviation. */
  readonly 'measure.temperature-supposed': { readonly temperature: number; readonly deviation: number };
  readonly 'measure.loudness-shared': Record<never, never>;
  readonly 'measure.series-resistance-unseen': Record<never, never>;
  /** At least so much, Ω. */
  readonly 'measure.leakage-unseen': { readonly least: number };
  /** How many times the errors given. */
  readonly 'measure.scatter-above-errors': { readonly times: number };
  readonly 'measure.level-ratio-small': { readonly ratio: number; readonly least: number };
  readonly 'measure.natural-frequency-unseen': Record<never, never>;
  /** At most so much, H. */
  readonly 'measure.coupling-unseen': { readonly most: number };
  readonly 'measure.coupling-without-q': Record<never, never>;
  /** Standard error as a share of the resistance. */
  readonly 'measure.auxiliary-earths-poor': { readonly share: number };
  readonly 'measure.electrodes-share-soil': Record<never, never>;
  /** Ω. */
  readonly 'measure.earth-of-dry-soil': { readonly resistance: number };
  readonly 'measure.phase-unseen': Record<never, never>;
  /** Standard deviation assumed, dB. */
  readonly 'measure.ringing-at-audio': { readonly frequency: number };
  readonly 'measure.one-trial': { readonly deviation: number };
  /** A. */
  readonly 'measure.current-near-floor': { readonly current: number };
  /** Q is at least so much. */
  readonly 'measure.q-lower-bound': { readonly least: number };
  /** The largest magnitude of the reflection. */
  readonly 'measure.analyser-not-calibrated': { readonly highest: number };
  /** Between S11 and what follows from S21, rms. */
  readonly 'measure.fixture-not-thin': { readonly disagreement: number };
}
