import { parseQuantity, type QuantityKind, wholeNumber } from '../engine/index.ts';
import { hintText } from '../outputs/words/index.ts';
import { wrongOption } from './wrong-option.ts';

/** A quantity of an option, SI. @param min, max SI, both allowed. @throws InputError */
export function quantityOf(text: string, kind: QuantityKind, option: string, min: number, max: number): number {
  const range = { code: 'quantity.range', kind, min, max } as const;
  // Nought needs no unit.
  const parsed = parseQuantity(wholeNumber(text) === 0 ? 0 : text, kind);
  if (!parsed.ok) throw wrongOption(option, range, text, hintText(parsed.hint));
  if (!(parsed.value >= min && parsed.value <= max)) throw wrongOption(option, range, text);
  return parsed.value;
}

/** A plain number of an option. @throws InputError */
export function numberOf(text: string | undefined, fallback: number, option: string, min: number, max: number): number {
  if (text === undefined) return fallback;
  const value = wholeNumber(text) ?? Number.NaN;
  if (!(value >= min && value <= max)) throw wrongOption(option, { code: 'number.range', min, max }, text);
  return value;
}

/** One of a few words. @throws InputError */
export function choiceOf<T extends string>(text: string, option: string, choices: readonly T[]): T {
  const choice = choices.find((choice) => choice === text);
  if (choice === undefined) throw wrongOption(option, { code: 'one of', choices }, text);
  return choice;
}

/** Width and height of a picture, px. @throws InputError */
export function sizeFrom(text: string | undefined, rows: number): readonly [number, number] {
  if (text === undefined) return [1200, Math.min(900, 150 + 150 * rows)];
  const match = /^(\d{2,5})\s*[x×]\s*(\d{2,5})$/i.exec(text.trim());
  const size = match ? ([Number(match[1]), Number(match[2])] as const) : undefined;
  if (!size || size[0] < 200 || size[1] < 120 || size[0] > 20_000 || size[1] > 20_000)
    throw wrongOption('--size', { code: 'size in px' }, text);
  return size;
}
