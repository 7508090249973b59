import type { Problem } from '../fields/problem.ts';
import { type FileSort, parsedText, type ReadBySchema, type ReadNote, readBySchema } from '../set/read.ts';
import { type BoxDescription, boxDescription, type WrittenBox } from './box-schema.ts';

/** A box and what it was read from, or every problem there is. */
export type BoxRead =
  | {
      readonly ok: true;
      /** As written, unknown keys and all. */
      readonly written: WrittenBox;
      /** As SI numbers with defaults filled in. */
      readonly box: BoxDescription;
      readonly notes: readonly ReadNote[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const A_BOX: FileSort = { expected: { code: 'box' }, hint: { code: 'start-from-example-box' } };

/**
 * Read the text of a box of parts. Never throws; every problem is returned at once.
 * @param text of a file, up to 2 MB
 * @returns the box in SI units with notes, or all problems with place, what was expected, what was given and a way out
 */
export function readBox(text: string): BoxRead {
  const parsed = parsedText(text, A_BOX);
  return parsed.ok ? readBoxValue(parsed.value) : parsed;
}

/**
 * Read a parsed box of parts. Never throws.
 * @param value JSON as parsed
 * @returns the box in SI units with notes, or all problems, as `readBox`
 */
export function readBoxValue(value: unknown): BoxRead {
  const result: ReadBySchema<BoxDescription> = readBySchema(boxDescription, value, A_BOX);
  if (!result.ok) return result;
  const problems = formerProblems(result.output);
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, written: result.written as unknown as WrittenBox, box: result.output, notes: result.notes };
}

/** Plates whose winding would end before it begins. */
const formerProblems = ({ formers }: BoxDescription): Problem[] =>
  formers.flatMap(({ former }, i): Problem[] =>
    former.kind !== 'plate' || former.outerDiameter > former.innerDiameter
      ? []
      : [
          {
            path: `formers[${i}].former.outerDiameter`,
            expected: { code: 'quantity.above', kind: 'length', above: former.innerDiameter },
            given: { code: 'length', value: former.outerDiameter },
          },
        ],
  );
