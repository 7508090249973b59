/**
 * SI quantities as flavoured numbers: a plain number is accepted, but farads never pass for henries.
 * Inside formulas they are ordinary numbers; only public inputs and results carry the flavour.
 */
declare const unit: unique symbol;
type Quantity<U extends string> = number & { readonly [unit]?: U };

/** Length, m. */
export type Metres = Quantity<'m'>;
/** Capacitance, F. */
export type Farads = Quantity<'F'>;
/** Inductance, H. */
export type Henries = Quantity<'H'>;
/** Resistance, reactance or the size of an impedance, Ω. */
export type Ohms = Quantity<'Ω'>;
/** Frequency, Hz. */
export type Hertz = Quantity<'Hz'>;
/** Voltage, V; peak or r.m.s. as the place says. */
export type Volts = Quantity<'V'>;
/** Current, A. */
export type Amperes = Quantity<'A'>;
/** Power, W. */
export type Watts = Quantity<'W'>;
/** Time, s. */
export type Seconds = Quantity<'s'>;
/** Temperature, K. */
export type Kelvins = Quantity<'K'>;
/** Mass, kg. */
export type Kilograms = Quantity<'kg'>;
/** Angle, rad. */
export type Radians = Quantity<'rad'>;
/** Decimal degrees: positions, bearings and capacitor scales are read in degrees. */
export type Degrees = Quantity<'deg'>;
/** Field strength, V/m; r.m.s. unless the place says otherwise. */
export type VoltsPerMetre = Quantity<'V/m'>;
/** Resistivity, Ω·m. */
export type OhmMetres = Quantity<'Ω·m'>;
/** Resistance of a length of wire, Ω/m. */
export type OhmsPerMetre = Quantity<'Ω/m'>;
/** Conductivity, S/m. */
export type SiemensPerMetre = Quantity<'S/m'>;
/** Conductance, S. */
export type Siemens = Quantity<'S'>;
/** A ratio in decibels, or a level over the reference its name gives. */
export type Decibels = Quantity<'dB'>;
/** A plain ratio; 0.3 means 30 %. */
export type Ratio = Quantity<'1'>;

/** Speed of light in vacuum, m/s (exact, SI). */
export const LIGHT_SPEED = 299_792_458;
/** Magnetic constant, H/m (CODATA 2018). */
export const MU_0 = 1.256_637_062_12e-6;
/** Electric constant, F/m (CODATA 2018). */
export const EPSILON_0 = 8.854_187_812_8e-12;
/** Boltzmann constant, J/K (exact, SI). */
const BOLTZMANN = 1.380_649e-23;
/** Elementary charge, C (exact, SI). */
export const ELEMENTARY_CHARGE = 1.602_176_634e-19;

/** 0 °C. */
export const ZERO_CELSIUS: Kelvins = 273.15;

/** Temperature voltage kT/e. @param temperature K. @returns volts; 25.852 mV at 300 K. */
export const temperatureVoltage = (temperature: Kelvins): Volts => (BOLTZMANN * temperature) / ELEMENTARY_CHARGE;

/** Amplitude ratio to decibels. @returns 20·log10(ratio). */
export const decibels = (ratio: number): Decibels => 20 * Math.log10(ratio);
/** Power ratio to decibels. @returns 10·log10(ratio). */
export const powerDecibels = (ratio: number): Decibels => 10 * Math.log10(ratio);
/** Decibels to an amplitude ratio. */
export const fromDecibels = (level: Decibels): number => 10 ** (level / 20);
