import type { CautionCode } from '../facts/cautions.ts';
import type { Warning, WarningCode } from '../facts/warning.ts';
import type { SetDescription } from '../set/description.ts';
import type { QuantityKind } from '../units/quantity-kind.ts';
import type { SuspectReading } from './dial-fit.ts';
import type { FigureCorrelation } from './figure-correlations.ts';
import type { Fitted } from './fitted.ts';
import type { Fields, ValuesOf } from './reading-fields.ts';
import type { DialCapacitor } from './scale-of-capacitor.ts';

/** What a measurement takes besides the set itself. */
export type Equipment =
  | 'set'
  | 'ears'
  | 'station'
  | 'voltmeter'
  | 'ammeter'
  | 'ohmmeter'
  | 'signal generator'
  | 'oscilloscope'
  | 'sound card'
  | 'network analyser'
  | 'capacitance meter'
  | 'inductance meter'
  | 'battery'
  | 'known capacitors'
  | 'known resistors'
  | 'coupling transformer'
  | 'auxiliary earths'
  | 'dummy aerial';

/** A figure of a set that a measurement settles: the part, and what of it. */
export type MeasuredProperty =
  | 'coil.inductance'
  | 'coil.q'
  | 'coil.selfCapacitance'
  | 'arrangement.coupling'
  | 'tuning.stray'
  | 'tuning.capacitance'
  | 'aerial.capacitance'
  | 'aerial.inductance'
  | 'aerial.resistance'
  | 'earth.resistance'
  | 'detector.saturationCurrent'
  | 'detector.ideality'
  | 'detector.seriesResistance'
  | 'detector.leakage'
  | 'load.resistance'
  | 'load.impedance'
  | 'load.capacitance'
  | 'transformer.primaryInductance'
  | 'transformer.leakage'
  | 'station.fieldStrength';

/** One figure that a kind of measurement yields. */
export interface Yield {
  /** Left out for a number without a unit. */
  readonly quantity?: QuantityKind;
  /** What of the set it settles; left out where it only informs. */
  readonly settles?: MeasuredProperty;
  /** Not with all readings. */
  readonly optional?: true;
}

/** An impedance at one frequency, Hz and Ω, and the standard error of each of its parts. */
export interface ImpedanceReading {
  readonly frequency: number;
  readonly resistance: number;
  readonly reactance: number;
  readonly standardError: number;
}

/** What readings say. */
export interface Measured {
  readonly figures: Readonly<Record<string, Fitted>>;
  /** How the errors of figures of one fit go together, where they do: of logarithms, but of what is an amount itself. */
  readonly correlations?: readonly FigureCorrelation[];
  /** One standard deviation of the readings about the fit, where more were read than are unknown. */
  readonly scatter?: number;
  /** Of a sweep: what was measured at each frequency. */
  readonly sweep?: readonly ImpedanceReading[];
  /** Hz, where a Q is for that no figure says. */
  readonly at?: number;
  /** Figures that say nothing of the set as it is used, though their kind usually settles one. */
  readonly settlesNot?: readonly string[];
  /** Of a dial: the capacitor that it was read on, and whether it runs as the set's own does. */
  readonly dial?: { readonly capacitor: DialCapacitor; readonly isOfSet: boolean };
  /** Readings left out as misread. */
  readonly suspects?: readonly SuspectReading[];
  readonly warnings: readonly Warning[];
}

/** A kind of measurement: what is read, what follows, and what it takes. */
export interface Measurement {
  /** What is read, by name. */
  readonly fields: Fields;
  /** The field that is named when readings possible one by one lead nowhere together. */
  readonly readings: string;
  readonly yields: Readonly<Record<string, Yield>>;
  readonly equipment: readonly Equipment[];
  /** What serves as well in place of `equipment`. */
  readonly equipmentInstead?: readonly Equipment[];
  readonly cautions: readonly CautionCode[];
  /** What it may warn of. */
  readonly warnings: readonly WarningCode[];
  /**
   * @param values as its fields are read, SI
   * @param set that it is of, as read: what readings do not say of its parts; left out: they say it all
   * @throws UnfitReadings where no figure follows
   */
  readonly fit: (values: Readonly<Record<string, unknown>>, set?: SetDescription) => Measured;
}

/** A kind of measurement, its readings typed by its fields. */
export const measurement = <const Fs extends Fields>(
  kind: Omit<Measurement, 'fields' | 'fit' | 'readings'> & {
    readonly fields: Fs;
    readonly readings: keyof Fs & string;
    readonly fit: (values: ValuesOf<Fs>, set?: SetDescription) => Measured;
  },
): Measurement => ({ ...kind, fit: (values, set) => kind.fit(values as ValuesOf<Fs>, set) });
