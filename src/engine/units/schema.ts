import * as v from 'valibot';
import { type Bounds, outside, usualSizes } from './bounds.ts';
import type { Coded } from './coded.ts';
import { parseQuantity, type QuantityKind } from './parse.ts';
import {
  givenValue,
  type QuantityExpectations,
  type QuantityHint,
  type QuantityRefusal,
  refuseWith,
} from './refusal.ts';
import { usualUnitOf } from './typed.ts';

export type { Bounds } from './bounds.ts';

/**
 * Schema of a quantity: text with a unit, or a plain SI number, read to an SI number.
 * Issues carry what was expected, what was given and a hint, as facts; see `refusalIn`.
 * @param kind what it is a quantity of
 * @param bounds least and greatest, in the SI unit; default what the kind can be
 * @returns a valibot schema that gives the SI value
 */
export function quantity(kind: QuantityKind, bounds: Bounds = {}) {
  const usual = usualSizes(bounds);
  const expectedHere = { code: 'quantity', kind, ...(usual && { usual }) } as const;
  return v.pipe(
    v.union(
      [v.string(), v.number()],
      refuseWith(
        (issue: v.BaseIssue<unknown>): QuantityRefusal => ({
          expected: expectedHere,
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
      const hint = (): QuantityHint | undefined => {
        const bare = typeof dataset.value === 'string' ? dataset.value.trim() : '';
        const unit = usualUnitOf(bare, kind, bounds);
        return unit === undefined ? undefined : { code: 'add-this-unit', number: bare, unit };
      };
      if (!parsed.ok) return refuse(expectedHere, hint() ?? (usual ? inField(parsed.hint, usual) : parsed.hint));
      const expected = outside(parsed.value, kind, bounds);
      return expected ? refuse(expected, hint()) : parsed.value;
    }),
    v.metadata({
      quantity: kind,
      bounds,
      field: bounds.field,
    }),
  );
}

/** A hint that shows examples, with the sizes that are usual in the field. */
const inField = (hint: QuantityHint, usual: readonly [number, number]): QuantityHint =>
  'kind' in hint ? { ...hint, usual } : hint;

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
