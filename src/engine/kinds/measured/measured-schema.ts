import * as v from 'valibot';
import type { FieldId } from '../../fields/field-ids.ts';
import {
  capacitance,
  frequency,
  inductance,
  length,
  number,
  object,
  part,
  quantityField,
  ratio,
  resistance,
  words,
} from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';

/** One standard error as a share of the value. */
const share = v.optional(ratio('measured.error', { min: 1e-5, max: 1, typical: [0.005, 0.2] }));
/** One standard error of a small capacitance, which may well be as large as the value. */
const few = v.optional(capacitance('measured.error:capacitance', { min: 1e-15, max: 1e-9, typical: [2e-13, 5e-12] }));
const decibels = v.optional(quantityField('measured.error:level', 'level', { min: 0.01, max: 30, typical: [0.5, 5] }));

const at = v.optional(frequency('measured.at', { min: 1, typical: [1e5, 1.6e6] }));

/** A measured value as read: SI, its standard error a share of it or in its own unit, by what it is of. */
export interface MeasuredValue {
  readonly value: number;
  readonly error?: number;
  /** Hz. */
  readonly at?: number;
  readonly method?: string;
  readonly date?: string;
}

/** The same as written. */
export interface WrittenMeasuredValue {
  value: string | number;
  error?: string | number;
  at?: string | number;
  method?: string;
  date?: string;
}

/** What of one part was measured, by what it is of. */
export type MeasuredOf<K extends string> = { readonly [Key in K]?: MeasuredValue };
export type WrittenOf<K extends string> = { [Key in K]?: WrittenMeasuredValue };
/** Named, or the type of a whole description grows too long to be written out. */
export interface MeasuredSchema<K extends string>
  extends v.OptionalSchema<v.GenericSchema<WrittenOf<K>, MeasuredOf<K>>, undefined> {}

/** A measured value with its standard error, and how and when it was measured. */
const measured = (field: FieldId, { value, error, ...more }: { readonly value: v.GenericSchema } & v.ObjectEntries) =>
  v.optional(
    part(
      field,
      object({
        value,
        error,
        ...more,
        method: v.optional(words('measured.method', 200)),
        date: v.optional(words('measured.date', 40)),
      }),
    ),
  );

/** Of one part: what of it was measured. It wins over what follows from its sizes, which stay. */
const measuredPart = <const K extends string>(entries: Readonly<Record<K, v.GenericSchema>>): MeasuredSchema<K> =>
  // The compiler cannot follow what schemas put together give; every entry is made by `measured`.
  v.optional(part('measured.part', object(entries as v.ObjectEntries))) as unknown as MeasuredSchema<K>;

const ohms = resistance('measured.value:resistance', { min: LIMITS.resistance.min, typical: [5, 5000] });
const farads = capacitance('measured.value:capacitance', { min: LIMITS.capacitance.min, typical: [2e-11, 1e-9] });
const smallFarads = capacitance('measured.value:stray', { max: 1e-9, typical: [0, 4e-11] });
const henries = inductance('measured.value:inductance', { typical: [2e-5, 5e-3] });
const qValue = number('measured.value:q', 1, 2000, [10, 400]);
const metres = length('measured.value:height', { ...LIMITS.effectiveHeight, typical: [0.3, 15] });

const winding = {
  inductance: measured('coil.inductance', { value: henries, error: share, at }),
  q: measured('coil.q:measured', { value: qValue, error: share, at }),
  selfCapacitance: measured('coil.selfCapacitance', { value: smallFarads, error: few }),
};

export const measuredCoil = measuredPart(winding);
export const measuredLoop = measuredPart({
  ...winding,
  effectiveHeight: measured('aerial.effectiveHeight', { value: metres, error: share, at }),
});
export const measuredWireAerial = measuredPart({
  capacitance: measured('aerial.capacitance', { value: farads, error: share }),
  resistance: measured('aerial.resistance:withEarth', { value: ohms, error: share, at }),
  effectiveHeight: measured('aerial.effectiveHeight', { value: metres, error: share, at }),
});
export const measuredTuning = measuredPart({
  minimum: measured('tuning.minimum:measured', { value: smallFarads, error: few }),
  maximum: measured('tuning.maximum', { value: farads, error: share }),
  stray: measured('tuning.stray', { value: smallFarads, error: few }),
});
export const measuredPlacing = measuredPart({
  coupling: measured('arrangement.coupling', {
    value: ratio('arrangement.coupling', { min: 1e-4, max: 0.999, typical: [0.01, 0.6] }),
    error: share,
  }),
});
export const measuredEarth = measuredPart({
  resistance: measured('earth.resistance', { value: ohms, error: share }),
});
export const measuredJunction = measuredPart({
  saturationCurrent: measured('detector.saturationCurrent', {
    value: quantityField('measured.value:current', 'current', { ...LIMITS.saturationCurrent, typical: [1e-9, 5e-5] }),
    error: share,
  }),
  ideality: measured('detector.ideality', { value: number('measured.value:ideality', 0.5, 10, [1, 3]), error: share }),
  seriesResistance: measured('detector.seriesResistance', { value: ohms, error: share }),
  leakage: measured('detector.leakage', {
    value: resistance('measured.value:leakage', { min: LIMITS.resistance.min, typical: [1e4, 1e7] }),
    error: share,
  }),
});
const sensitivity = measured('load.sensitivity', {
  value: quantityField('measured.value:level', 'level', { min: -60, max: 160, typical: [80, 130] }),
  error: decibels,
});
export const measuredPhones = measuredPart({
  resistance: measured('load.resistance', { value: ohms, error: share }),
  impedance: measured('load.impedance:measured', { value: ohms, error: share }),
  sensitivity,
});
export const measuredEarpiece = measuredPart({
  capacitance: measured('load.capacitance', { value: farads, error: share }),
  sensitivity,
});
export const measuredMovingCoil = measuredPart({
  impedance: measured('load.impedance', { value: ohms, error: share }),
  sensitivity,
});
export const measuredStation = measuredPart({
  fieldStrength: measured('station.fieldStrength', {
    value: quantityField('measured.value:field', 'field strength', {
      ...LIMITS.fieldStrength,
      typical: [1e-5, 0.1],
    }),
    error: share,
  }),
});

/** What of a coil or loop was measured. */
export type MeasuredWinding = MeasuredOf<'inductance' | 'q' | 'selfCapacitance'>;
