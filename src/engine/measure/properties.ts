import { LIMITS } from '../fields/limits.ts';
import { USUAL_ERROR } from '../kinds/measured/usual-errors.ts';
import type { Bounds } from '../units/bounds.ts';
import type { QuantityKind } from '../units/quantity-kind.ts';

/** Greatest values that a description takes. */
const GREATEST = {
  inductance: LIMITS.inductance.max,
  capacitance: LIMITS.capacitance.max,
  resistance: LIMITS.resistance.max,
  current: LIMITS.saturationCurrent.max,
  length: LIMITS.effectiveHeight.max,
  level: 200,
  'field strength': LIMITS.fieldStrength.max,
} as const satisfies Partial<Record<QuantityKind, number>>;
type Measurable = keyof typeof GREATEST;

interface Property {
  /** Left out for a number without a unit. */
  readonly quantity?: Measurable;
  /** Its standard error is an amount in its own unit; of all others it is a share of the value. */
  readonly isAmount?: true;
  /** Standard error of a hand instrument, in the same form. */
  readonly usual: number;
}

/** What of a set has a measured value in its description: the part, and what of it. */
export const PROPERTIES = {
  'coil.inductance': { quantity: 'inductance', usual: USUAL_ERROR.inductance },
  'coil.q': { usual: USUAL_ERROR.q },
  'coil.selfCapacitance': { quantity: 'capacitance', isAmount: true, usual: USUAL_ERROR.selfCapacitance },
  'tuning.minimum': { quantity: 'capacitance', isAmount: true, usual: USUAL_ERROR.smallCapacitance },
  'tuning.maximum': { quantity: 'capacitance', usual: USUAL_ERROR.capacitance },
  'tuning.stray': { quantity: 'capacitance', isAmount: true, usual: USUAL_ERROR.smallCapacitance },
  'arrangement.coupling': { usual: USUAL_ERROR.coupling },
  'aerial.capacitance': { quantity: 'capacitance', usual: USUAL_ERROR.capacitance },
  'aerial.resistance': { quantity: 'resistance', usual: USUAL_ERROR.aerialResistance },
  'aerial.effectiveHeight': { quantity: 'length', usual: USUAL_ERROR.effectiveHeight },
  'earth.resistance': { quantity: 'resistance', usual: USUAL_ERROR.earthResistance },
  'detector.saturationCurrent': { quantity: 'current', usual: USUAL_ERROR.saturationCurrent },
  'detector.ideality': { usual: USUAL_ERROR.ideality },
  'detector.seriesResistance': { quantity: 'resistance', usual: USUAL_ERROR.seriesResistance },
  'detector.leakage': { quantity: 'resistance', usual: USUAL_ERROR.leakage },
  'load.resistance': { quantity: 'resistance', usual: USUAL_ERROR.directResistance },
  'load.impedance': { quantity: 'resistance', usual: USUAL_ERROR.audioImpedance },
  'load.capacitance': { quantity: 'capacitance', usual: USUAL_ERROR.capacitance },
  'load.sensitivity': { quantity: 'level', isAmount: true, usual: USUAL_ERROR.sensitivity },
  'station.fieldStrength': { quantity: 'field strength', usual: USUAL_ERROR.fieldStrength },
} as const satisfies Record<string, Property>;

/** One of `PROPERTIES`. */
export type PropertyId = keyof typeof PROPERTIES;
export const PROPERTY_IDS = Object.keys(PROPERTIES) as PropertyId[];

/**
 * What there is to know of a property.
 * @param id of the property
 * @returns its quantity, the form of its standard error, and the usual one
 */
export const propertyOf = (id: PropertyId): Property => PROPERTIES[id];

/**
 * What a measured value may be.
 * @param quantity of the property
 * @returns ends, SI
 */
export const boundsOf = (quantity: Measurable): Bounds & { readonly max: number } => {
  const max = GREATEST[quantity];
  return quantity === 'level' ? { min: -max, max } : { above: 0, max };
};
