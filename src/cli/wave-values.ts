import { wholeNumber } from '../engine/units/number.ts';
import { parseQuantity, type QuantityKind } from '../engine/units/parse.ts';
import { InputError } from './command.ts';

export function quantityOf(text: string, kind: QuantityKind, option: string, min: number, max: number): number {
  // Nought needs no unit.
  const parsed = parseQuantity(wholeNumber(text) === 0 ? 0 : text, kind);
  if (!parsed.ok)
    throw new InputError(`${option}: expected ${parsed.expected}, received "${text.slice(0, 40)}" (${parsed.hint})`);
  if (!(parsed.value >= min && parsed.value <= max))
    throw new InputError(`${option}: expected a value from ${min} to ${max}, received "${text.slice(0, 40)}"`);
  return parsed.value;
}

export function sizeFrom(text: string | undefined, rows: number): readonly [number, number] {
  if (text === undefined) return [1200, Math.min(900, 150 + 150 * rows)];
  const match = /^(\d{2,5})\s*[x×]\s*(\d{2,5})$/i.exec(text.trim());
  const size = match ? ([Number(match[1]), Number(match[2])] as const) : undefined;
  if (!size || size[0] < 200 || size[1] < 120 || size[0] > 20_000 || size[1] > 20_000)
    throw new InputError(`--size: expected such as 1920x1080, at least 200x120, received "${text.slice(0, 40)}"`);
  return size;
}
