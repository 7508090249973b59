import * as v from 'valibot';
import { brief } from './brief.ts';
import { formatNumber, formatQuantity } from './format.ts';
import { wholeNumber } from './number.ts';
import { parseQuantity, QUANTITY_KINDS, type QuantityKind } from './parse.ts';
import { ZERO_CELSIUS } from './quantities.ts';
import { type Refusal, refuse } from './refusal.ts';

export interface Bounds {
  /** Smallest accepted SI value; `above` excludes the end itself. */
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
  /** Id by which its label and explanation are found. */
  readonly field?: string;
  /** Usual range, SI: where a slider runs. Values outside are accepted. */
  readonly typical?: readonly [number, number];
}

/**
 * Schema of a quantity: text with a unit, or a plain SI number, read to an SI number.
 * Issues carry what was expected ("a length such as \"63 mm\""), received and a hint; see `refusalOf`.
 */
export function quantity(kind: QuantityKind, bounds: Bounds = {}) {
  const info = QUANTITY_KINDS[kind];
  return v.pipe(
    v.union(
      [v.string(), v.number()],
      refuse((issue) => describe(issue.input, kind)),
    ),
    v.rawTransform<string | number, number>(({ dataset, addIssue, NEVER }) => {
      const parsed = parseQuantity(dataset.value, kind);
      const show = JSON.stringify(String(dataset.value).slice(0, 60));
      if (!parsed.ok) {
        const hint = unitHint(dataset.value, kind, bounds) ?? parsed.hint;
        addIssue({ message: refuse({ expected: parsed.expected, received: show, hint }), expected: parsed.expected });
        return NEVER;
      }
      const wrong = outside(parsed.value, kind, bounds);
      if (wrong) {
        const expected = `${info.article} ${wrong}`;
        const hint = unitHint(dataset.value, kind, bounds);
        addIssue({ message: refuse({ expected, received: show, hint }), expected });
        return NEVER;
      }
      return parsed.value;
    }),
    v.metadata({
      quantity: kind,
      bounds,
      examples: info.examples,
      field: bounds.field,
    }),
  );
}

/**
 * Units people write, the likeliest first; which of them is meant shows where the usual range is known. A wire's gauge
 * comes last: where "mm" makes a usual size, that is meant.
 */
const UNITS =
  'mm m cm km pF nF µF µH mH Ω kΩ MΩ kHz MHz V mV µA mA A kW W mV/m µV/m °C ° % dB ms s g mS/m Ω·m µS SWG AWG'.split(
    ' ',
  );

/** For a bare number: the unit that makes a usual size of it, or at least one that is accepted. */
function unitHint(written: unknown, kind: QuantityKind, bounds: Bounds): string | undefined {
  const bare = typeof written === 'string' ? written.trim() : '';
  if (wholeNumber(bare) === undefined) return undefined;
  const offers = UNITS.flatMap((unit) => {
    const tried = parseQuantity(`${bare} ${unit}`, kind);
    return tried.ok && !outside(tried.value, kind, bounds) ? [{ unit, value: tried.value }] : [];
  });
  const [low, high] = bounds.typical ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const offer = offers.find(({ value }) => value >= low && value <= high) ?? offers[0];
  return offer && `add a unit: "${bare} ${offer.unit}", not "${bare}"`;
}

function describe(input: unknown, kind: QuantityKind): Refusal {
  const info = QUANTITY_KINDS[kind];
  return { expected: `${info.article} such as "${info.examples[0]}"`, received: brief(input) };
}

/** Smaller than any part or signal; beyond it, one over it soon overflows. */
const LEAST = 1e-24;

/** Written so that NaN is outside. */
function outside(value: number, kind: QuantityKind, { min, above, max }: Bounds): string | undefined {
  if (min !== undefined && !(value >= min)) return `of at least ${limit(min, kind, Math.ceil)}`;
  if (above !== undefined && !(value > above)) return `above ${limit(above, kind, Math.ceil)}`;
  if (max !== undefined && !(value <= max)) return `of at most ${limit(max, kind, Math.floor)}`;
  if (value !== 0 && Math.abs(value) < LEAST)
    return `that is 0 or no smaller than ${LEAST} ${QUANTITY_KINDS[kind].unit}`.trimEnd();
  return undefined;
}

/** A limit in the unit a builder would use; a temperature to whole degrees, rounded so that what is said is accepted. */
function limit(value: number, kind: QuantityKind, round: (x: number) => number): string {
  if (value === 0) return '0';
  return kind === 'temperature' ? `${formatNumber(round(value - ZERO_CELSIUS), 4)} °C` : formatQuantity(value, kind);
}

/** A whole number within bounds, given as a JSON number. */
export const count = (min: number, max = 1e6) =>
  v.pipe(
    v.number(refuse(`a whole number from ${min} to ${max}`)),
    v.integer(refuse(`a whole number from ${min} to ${max}`)),
    v.minValue(min, refuse(`at least ${min}`)),
    v.maxValue(max, refuse(`at most ${max}`)),
  );
