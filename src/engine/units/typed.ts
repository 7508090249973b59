import { type Bounds, outside } from './bounds.ts';
import { readGauge } from './gauge.ts';
import { leadingNumber, wholeNumber } from './number.ts';
import { parseQuantity, type QuantityKind, sectionsOf } from './parse.ts';

/**
 * Units people write, the likeliest first; which of them is meant shows where the usual range is known. A wire's gauge
 * comes last: where "mm" makes a usual size, that is meant.
 */
const UNITS =
  'mm m cm km pF nF µF µH mH Ω kΩ MΩ kHz MHz V mV µA mA A kW W mV/m µV/m °C ° % dB ms s g mS/m Ω·m µS SWG AWG'.split(
    ' ',
  );

/**
 * The unit that makes a usual size of a bare number, or at least one that is accepted.
 * @param bare a number without a unit
 * @param kind what it is a quantity of
 * @param bounds of the field; the usual range decides between units
 * @returns the unit; undefined where none will do, or where the text is no bare number
 */
export function usualUnitOf(bare: string, kind: QuantityKind, bounds: Bounds): string | undefined {
  if (wholeNumber(bare) === undefined) return undefined;
  const offers = UNITS.flatMap((unit) => {
    const value = accepted(`${bare} ${unit}`, kind, bounds);
    return value === undefined ? [] : [{ unit, value }];
  });
  return (offers.find(({ value }) => distance(value, bounds) === 1) ?? offers[0])?.unit;
}

/** SI value of a text that a field accepts. */
function accepted(text: string, kind: QuantityKind, bounds: Bounds): number | undefined {
  const read = parseQuantity(text, kind);
  return read.ok && !outside(read.value, kind, bounds) ? read.value : undefined;
}

/** How many times a value lies above or below the usual range; 1 within it. */
function distance(value: number, { typical }: Bounds): number {
  if (!typical || (value >= typical[0] && value <= typical[1])) return 1;
  const [low, high] = typical;
  return value > high ? value / high : value > 0 ? low / value : Number.POSITIVE_INFINITY;
}

/** A bare number is taken in the unit shown unless that makes it so many times too large or small, and another does not. */
const FAR = 10;

/** The unit that a field shows, with the space before it: " mm", " SWG", "°". */
function unitShown(shown: unknown, kind: QuantityKind): string | undefined {
  if (typeof shown !== 'string') return undefined;
  const size = readGauge(shown);
  if (size) return ` ${size.gauge}`;
  // Of "51°12′N" only the letter is a unit of the whole.
  if (kind === 'latitude' || kind === 'longitude') {
    const letter = /[NSEW]\s*$/i.exec(shown)?.[0];
    return letter === undefined ? '°' : ` ${letter.trim()}`;
  }
  const read = leadingNumber(sectionsOf(shown)?.one ?? shown);
  return read.ok && read.rest !== '' ? read.rest : undefined;
}

/**
 * What somebody typed in a field, as a description holds it. A number without a unit takes the unit that the field
 * shows; where that makes a size that the field refuses, or one far from the usual, the unit that makes a usual size
 * ("0.4" where "28 SWG" stands is 0.4 mm). All else stays as typed, for the reader to accept or refuse.
 * @param typed as it stands in the field
 * @param kind what it is a quantity of
 * @param bounds of the field, SI
 * @param shown what the field showed before, with its unit; undefined for an empty field
 * @returns text that `parseQuantity` reads, wherever the field is to accept what was typed
 */
export function typedQuantity(typed: string, kind: QuantityKind, bounds: Bounds = {}, shown?: unknown): string {
  const text = typed.trim();
  const sections = kind === 'capacitance' ? sectionsOf(text) : undefined;
  if (sections) return `${sections.count} × ${typedQuantity(sections.one, kind, bounds, shown)}`;
  if (wholeNumber(text) === undefined) return text;
  const unit = unitShown(shown, kind);
  const value = unit === undefined ? undefined : accepted(`${text}${unit}`, kind, bounds);
  if (unit !== undefined && value !== undefined && distance(value, bounds) < FAR) return `${text}${unit}`;
  if (kind === 'ratio') {
    const plain = accepted(text, kind, bounds);
    if (plain !== undefined && distance(plain, bounds) === 1) return text;
  }
  const usual = usualUnitOf(text, kind, bounds);
  const other = usual === undefined ? undefined : accepted(`${text} ${usual}`, kind, bounds);
  const isBetter = other !== undefined && (value === undefined || distance(other, bounds) === 1);
  if (isBetter) return `${text}${usual === '°' ? '' : ' '}${usual}`;
  return unit === undefined ? text : `${text}${unit}`;
}

/**
 * A number of turns as somebody types it: "12 1/2", "45 turns", or for a tap "50 %" of its coil, to half a turn.
 * @param typed as it stands in the field
 * @param ofCoil turns of the coil that a share is of; undefined where a share means nothing
 * @returns the number; undefined for what is none
 */
export function typedTurns(typed: string, ofCoil?: number): number | undefined {
  const share = /^(.*?)\s*(?:%|per\s*cent)\s*(?:of\s+(?:the\s+)?turns)?$/i.exec(typed.trim());
  if (share) {
    const part = wholeNumber(share[1]);
    return part === undefined || ofCoil === undefined ? undefined : Math.round((2 * ofCoil * part) / 100) / 2;
  }
  return wholeNumber(typed.trim().replace(/\s*turns?$/i, ''));
}
