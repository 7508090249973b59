import { type Domain, preferredValues } from '../kinds/adjustment.ts';
import { formatQuantity } from '../units/format.ts';
import { parseQuantity, type QuantityKind } from '../units/parse.ts';

/** A value of an adjustment: as it is written, and SI as it reads then. */
export interface Value {
  readonly written: unknown;
  readonly value: unknown;
}

/** A number as it is written with so many digits, and as that reads. */
export function asWritten(number: number, digits: number, unit?: QuantityKind): Value {
  if (unit === undefined) {
    const value = Number(number.toPrecision(digits));
    return { written: value, value };
  }
  const written = formatQuantity(number, unit, digits);
  const read = parseQuantity(written, unit);
  if (!read.ok) throw new RangeError(`"${written}" does not read as ${unit}`);
  return { written, value: read.value };
}

/** All values of a domain that is a list, in order; undefined for a continuous one. */
export function valuesOf(domain: Domain): readonly Value[] | undefined {
  switch (domain.is) {
    case 'whole':
      return Array.from({ length: Math.max(0, domain.to - domain.from + 1) }, (_, i) => ({
        written: domain.from + i,
        value: domain.from + i,
      }));
    case 'series':
      return preferredValues(domain.from, domain.to).map((value) => asWritten(value, 2, domain.unit));
    case 'choice':
      return domain.of.map((written) => ({ written, value: written }));
    case 'real':
      return undefined;
  }
}
