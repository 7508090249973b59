import * as v from 'valibot';
import { refuse, refuseWith } from '../../engine/index.ts';
import type { CalcExpectation } from '../../outputs/words/index.ts';

/** A message of a schema that keeps what was expected as a code. */
export const expected = (code: CalcExpectation) => refuseWith({ expected: { code } });

/** One of a few words. */
export const oneOf = <const T extends readonly string[]>(options: T) =>
  v.picklist(options, refuse({ code: 'one-of', options }));

/** A number without a unit, ends included. */
export const numberIn = (min: number, max: number) => {
  const between = refuse({ code: 'number', min, max });
  return v.pipe(
    v.number(between),
    v.check((x) => x >= min && x <= max, between),
  );
};

/** A number of 1 and more. */
export const atLeastOne = v.pipe(
  v.number(refuse({ code: 'at-least', min: 1 })),
  v.minValue(1, refuse({ code: 'at-least', min: 1 })),
);

type Shaped = v.ObjectSchema<{ readonly shape: v.LiteralSchema<string, undefined> } & v.ObjectEntries, undefined>;

/** The message of a variant by "shape". */
const shapes = (options: readonly Shaped[]) =>
  refuseWith<
    { readonly expected: { readonly code: string; readonly key?: string; readonly options?: readonly string[] } },
    v.VariantIssue
  >(({ expected: what }) =>
    what === 'Object'
      ? { expected: { code: 'shape' satisfies CalcExpectation } }
      : { expected: { code: 'kind', key: 'shape', options: options.map((one) => one.entries.shape.literal) } },
  );

/** One of several shapes, told apart by "shape". */
export const byShape = <const T extends [Shaped, Shaped, ...Shaped[]]>(options: T) =>
  v.variant('shape', options, shapes(options));
