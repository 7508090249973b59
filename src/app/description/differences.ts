import { isRecord, type Path, placeText, valueAtPath } from '../../engine/index.ts';
import { shelfWords as texts } from '../../outputs/words/index.ts';
import { fieldPath } from './places.ts';

/** A place where two descriptions differ, each value as written; undefined: nothing is there. */
interface Difference {
  readonly path: Path;
  readonly before: unknown;
  readonly after: unknown;
}

/** Says which values nobody has confirmed: it changes with each of them. */
const NOT_SHOWN = new Set(['assumed']);

/** Where two descriptions differ, in the order of the later one. */
export function differences(before: unknown, after: unknown, path: Path = []): readonly Difference[] {
  if (before === after) return [];
  if (Array.isArray(before) && Array.isArray(after)) {
    const most = Math.max(before.length, after.length);
    return Array.from({ length: most }, (_, i) => differences(before[i], after[i], [...path, i])).flat();
  }
  if (isRecord(before) && isRecord(after)) {
    const keys = [...new Set([...Object.keys(after), ...Object.keys(before)])].filter(
      (key) => path.length > 0 || !NOT_SHOWN.has(key),
    );
    return keys.flatMap((key) => differences(valueAtPath(before, [key]), valueAtPath(after, [key]), [...path, key]));
  }
  return [{ path, before, after }];
}

/** A longer value is cut. */
const LONGEST = 60;

function valueText(value: unknown): string | undefined {
  if (value === undefined) return undefined;
  const shown = isRecord(value) ? (value.name ?? value.kind) : value;
  const text = typeof shown === 'object' ? texts.part : String(shown);
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
}

/** What was changed, in words. @param most lines; how many more there are is said in one more */
export function differenceTexts(before: unknown, after: unknown, most: number): readonly string[] {
  const all = differences(before, after);
  const lines = all
    .slice(0, most)
    .map((one) =>
      texts.difference(
        fieldPath(placeText(one.path), one.after === undefined ? before : after),
        valueText(one.before),
        valueText(one.after),
      ),
    );
  return all.length > most ? [...lines, texts.moreDifferences(all.length - most)] : lines;
}
