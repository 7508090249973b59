import * as v from 'valibot';
import type { Coded } from './coded.ts';
import { wholeNumber } from './number.ts';
import { parseQuantity, QUANTITY_KINDS, type QuantityKind } from './parse.ts';
import {
  givenValue,
  type QuantityExpectations,
  type QuantityHint,
  type QuantityRefusal,
  refuseWith,
} from './refusal.ts';

export interface Bounds {
  /** Smallest accepted SI value; `above` excludes the end itself. */
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
  /** Id by which its label and explanation are found. */
  readonly field?: string;
  /** Usual range, SI: where a slider runs. Values outside are accepted. */
  readonly typical?: readonly [number, number];
}

/**
 * Schema of a quantity: text with a unit, or a plain SI number, read to an SI number.
 * Issues carry what was expected, what was given and a hint, as facts; see `refusalIn`.
 * @param kind what it is a quantity of
 * @param bounds least and greatest, in the SI unit; default what the kind can be
 * @returns a valibot schema that gives the SI value
 */
export function quantity(kind: QuantityKind, bounds: Bounds = {}) {
  const info = QUANTITY_KINDS[kind];
  return v.pipe(
    v.union(
      [v.string(), v.number()],
      refuseWith(
        (issue: v.BaseIssue<unknown>): QuantityRefusal => ({
          expected: { code: 'quantity', kind },
          given: givenValue(issue.input),
        }),
      ),
    ),
    v.rawTransform<string | number, number>(({ dataset, addIssue, NEVER }) => {
      const parsed = parseQuantity(dataset.value, kind);
      const given = { code: 'value', json: JSON.stringify(String(dataset.value).slice(0, 60)) } as const;
      const refuse = (expected: Coded<QuantityExpectations>, hint: QuantityHint | undefined): typeof NEVER => {
        addIssue({ message: refuseWith({ expected, given, hint } satisfies QuantityRefusal), expected: expected.code });
        return NEVER;
      };
      const hint = () => unitHint(dataset.value, kind, bounds);
      if (!parsed.ok) return refuse({ code: 'quantity', kind }, hint() ?? parsed.hint);
      const expected = outside(parsed.value, kind, bounds);
      return expected ? refuse(expected, hint()) : parsed.value;
    }),
    v.metadata({
      quantity: kind,
      bounds,
      examples: info.examples,
      field: bounds.field,
    }),
  );
}

/**
 * Units people write, the likeliest first; which of them is meant shows where the usual range is known. A wire's gauge
 * comes last: where "mm" makes a usual size, that is meant.
 */
const UNITS =
  'mm m cm km pF nF µF µH mH Ω kΩ MΩ kHz MHz V mV µA mA A kW W mV/m µV/m °C ° % dB ms s g mS/m Ω·m µS SWG AWG'.split(
    ' ',
  );

/** For a bare number: the unit that makes a usual size of it, or at least one that is accepted. */
function unitHint(written: unknown, kind: QuantityKind, bounds: Bounds): QuantityHint | undefined {
  const bare = typeof written === 'string' ? written.trim() : '';
  if (wholeNumber(bare) === undefined) return undefined;
  const offers = UNITS.flatMap((unit) => {
    const tried = parseQuantity(`${bare} ${unit}`, kind);
    return tried.ok && !outside(tried.value, kind, bounds) ? [{ unit, value: tried.value }] : [];
  });
  const [low, high] = bounds.typical ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const offer = offers.find(({ value }) => value >= low && value <= high) ?? offers[0];
  return offer && { code: 'add-this-unit', number: bare, unit: offer.unit };
}

/** Smaller than any part or signal; beyond it, one over it soon overflows. */
const LEAST = 1e-24;

/** Written so that NaN is outside. */
function outside(
  value: number,
  kind: QuantityKind,
  { min, above, max }: Bounds,
): Coded<QuantityExpectations> | undefined {
  if (min !== undefined && !(value >= min)) return { code: 'quantity.at-least', kind, min };
  if (above !== undefined && !(value > above)) return { code: 'quantity.above', kind, above };
  if (max !== undefined && !(value <= max)) return { code: 'quantity.at-most', kind, max };
  if (value !== 0 && Math.abs(value) < LEAST) return { code: 'quantity.not-tiny', kind, least: LEAST };
  return undefined;
}

/**
 * A whole number within bounds, given as a JSON number.
 * @param min least, included
 * @param max greatest, included; default a million
 * @returns a valibot schema that gives the number
 */
export const count = (min: number, max = 1e6) => {
  const refuse = (expected: Coded<QuantityExpectations>) =>
    refuseWith<QuantityRefusal, v.BaseIssue<unknown>>({ expected });
  return v.pipe(
    v.number(refuse({ code: 'whole-number', min, max })),
    v.integer(refuse({ code: 'whole-number', min, max })),
    v.minValue(min, refuse({ code: 'at-least', min })),
    v.maxValue(max, refuse({ code: 'at-most', max })),
  );
};
