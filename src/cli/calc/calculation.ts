import * as v from 'valibot';
import type { QuantityKind } from '../../engine/units/parse.ts';
import { QUANTITY_KINDS } from '../../engine/units/parse.ts';

/** One WHAT of `faintwave calc`: how its input is read and what it answers. */
export interface Calculation {
  readonly name: string;
  readonly about: string;
  /** An input that works, printed by `--help` and run by a test. */
  readonly example: unknown;
  /** @throws v.ValiError-like list through `problems` */
  readonly run: (input: unknown) => CalculationResult;
}

export interface Problem {
  readonly path: string;
  readonly message: string;
}

export type CalculationResult =
  | { readonly ok: true; readonly answer: Record<string, unknown> & { warnings: readonly string[] } }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A figure of the answer: `{ value, unit }`, SI, full precision. */
export const figure = (value: number, kind: QuantityKind) => ({ value, unit: QUANTITY_KINDS[kind].unit });
export const figureIn = (value: number, unit: string) => ({ value, unit });

/** Build a calculation from a schema and a function of its output. */
export function calculation<S extends v.GenericSchema>(
  definition: Omit<Calculation, 'run'> & {
    schema: S;
    answer: (input: v.InferOutput<S>) => Record<string, unknown> & { warnings: readonly string[] };
  },
): Calculation {
  const { schema, answer, ...rest } = definition;
  return {
    ...rest,
    run(input) {
      const read = v.safeParse(schema, input);
      if (!read.success) {
        return {
          ok: false,
          problems: read.issues.map((issue) => ({ path: v.getDotPath(issue) ?? '(top)', message: issue.message })),
        };
      }
      return { ok: true, answer: answer(read.output) };
    },
  };
}
