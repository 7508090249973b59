import * as v from 'valibot';
import { ImpossibleValues, refuseWith } from '../../engine/index.ts';
import type { CalcExpectation } from '../../outputs/words/index.ts';

/** What was expected, and why the engine refuses what was given. */
export const refusalFor = (code: CalcExpectation, refusal: unknown) => {
  if (!(refusal instanceof RangeError)) throw refusal;
  return {
    expected: { code },
    ...(refusal instanceof ImpossibleValues && { hint: { code: 'unbuildable', reason: refusal.reason } as const }),
  };
};

/** Sizes that are each possible may still not fit together: turn the engine's refusal into a problem of the input. */
export const buildable = <S extends v.GenericSchema>(schema: S, build: (input: v.InferOutput<S>) => unknown) =>
  v.pipe(
    schema,
    v.rawCheck(({ dataset, addIssue }) => {
      if (!dataset.typed) return;
      try {
        build(dataset.value);
      } catch (refusal) {
        addIssue({ message: refuseWith(refusalFor('sizes-together', refusal)) });
      }
    }),
  );
