import * as v from 'valibot';

/** Message for an unknown `shape`, in words. */
export const shapeMessage = ({
  expected,
  received,
}: {
  readonly expected: string | null;
  readonly received: string;
}): string =>
  expected === 'Object'
    ? `expected an object with "shape", got ${received}`
    : `expected "shape" to be one of ${(expected ?? '').replace(/[()]/g, '').replaceAll(' | ', ', ')}, got ${received}`;

/** Sizes that are each possible may still not fit together: turn the engine's refusal into a problem of the input. */
export const buildable = <S extends v.GenericSchema>(schema: S, build: (input: v.InferOutput<S>) => unknown) =>
  v.pipe(
    schema,
    v.rawCheck(({ dataset, addIssue }) => {
      if (!dataset.typed) return;
      try {
        build(dataset.value);
      } catch (refusal) {
        if (!(refusal instanceof RangeError)) throw refusal;
        addIssue({ message: refusal.message });
      }
    }),
  );
