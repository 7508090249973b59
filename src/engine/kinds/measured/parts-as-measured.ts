import { complex } from '../../numerics/complex.ts';
import type { MeasuredEnd, MeasuredEnds } from '../../parts/capacitor/model.ts';
import type { EarthModel } from '../../parts/earth/earth.ts';
import type { Hertz, Ratio } from '../../units/quantities.ts';
import type { DetectorDescription } from '../detectors/detector-schema.ts';
import type { LoadDescription } from '../loads/load-schema.ts';
import type { TuningDescription } from '../tunings/tuning-schema.ts';
import type { MeasuredValue } from './measured-schema.ts';
import { amountRange, shareRange, USUAL_ERROR } from './usual-errors.ts';

/**
 * An earth with its resistance times a factor; its reactance stays.
 * @param earth as it was
 * @param factor on its resistance
 * @returns the earth so changed
 */
export function earthTimes(earth: EarthModel, factor: Ratio): EarthModel {
  if (factor === 1) return earth;
  const { impedanceAt } = earth;
  return {
    ...earth,
    resistance: earth.resistance * factor,
    impedanceAt: (f) => {
      const z = impedanceAt(f);
      return complex(z.re * factor, z.im);
    },
  };
}

/**
 * An earth whose measured resistance wins over the calculated one.
 * @param earth as calculated
 * @param measured resistance, Ω
 * @returns the earth with that resistance and its range
 */
export function earthAsMeasured(earth: EarthModel, measured: MeasuredValue | undefined): EarthModel {
  if (!measured) return earth;
  const { value } = measured;
  // An earth said to have no resistance has nothing that could be scaled.
  const scaled =
    earth.resistance > 0
      ? earthTimes(earth, value / earth.resistance)
      : { ...earth, resistance: value, impedanceAt: (f: Hertz) => complex(value, earth.impedanceAt(f).im) };
  return {
    ...scaled,
    range: shareRange(measured, USUAL_ERROR.earthResistance),
  };
}

const end = (measured: MeasuredValue | undefined, isAmount: boolean): MeasuredEnd | undefined =>
  measured && {
    value: measured.value,
    range: isAmount
      ? amountRange(measured, USUAL_ERROR.smallCapacitance)
      : shareRange(measured, USUAL_ERROR.capacitance),
  };

/**
 * The measured ends of a capacitor with their ranges.
 * @param measured as read
 * @returns ends and strays, F
 */
export const tuningEnds = (measured: TuningDescription['measured']): MeasuredEnds | undefined =>
  measured && {
    minimum: end(measured.minimum, true),
    maximum: end(measured.maximum, false),
    stray: end(measured.stray, true),
  };

/**
 * A detector with its measured figures in place of those given or of its kind.
 * @param detector as read
 * @returns the same description where nothing was measured
 */
export function givenJunction(detector: DetectorDescription): DetectorDescription {
  if (detector.kind === 'valve' || detector.kind === 'measured' || !detector.measured) return detector;
  const { saturationCurrent, ideality, seriesResistance, leakage } = detector.measured;
  const given = {
    ...detector,
    saturationCurrent: saturationCurrent?.value ?? detector.saturationCurrent,
    ideality: ideality?.value ?? detector.ideality,
    seriesResistance: seriesResistance?.value ?? detector.seriesResistance,
    leakage: leakage?.value ?? detector.leakage,
  };
  // The compiler does not follow that a spread keeps the kind.
  return given as DetectorDescription;
}

/**
 * Phones with their measured figures in place of those given or usual.
 * @param load as read
 * @returns the same description where nothing was measured
 */
export function givenLoad(load: LoadDescription): object {
  if (load.kind === 'amplifier' || !load.measured) return load;
  const sensitivity = load.measured.sensitivity?.value ?? load.sensitivity;
  switch (load.kind) {
    case 'phones': {
      const { resistance, impedance } = load.measured;
      return {
        ...load,
        sensitivity,
        resistance: resistance?.value ?? load.resistance,
        ...(impedance ? { impedance: impedance.value, inductance: undefined } : {}),
      };
    }
    case 'crystal earpiece':
      return { ...load, sensitivity, capacitance: load.measured.capacitance?.value ?? load.capacitance };
    case 'moving-coil phones':
      return { ...load, sensitivity, impedance: load.measured.impedance?.value ?? load.impedance };
  }
}
