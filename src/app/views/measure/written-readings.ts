import {
  type Fields,
  formatQuantity,
  MEASUREMENTS,
  type OfferedMeasurement,
  type PropertyId,
  parseQuantity,
  propertyOf,
  QUANTITY_KINDS,
  type QuantityKind,
  type ScalarField,
} from '../../../engine/index.ts';
import { readingUnit } from '../../../outputs/words/index.ts';
import { isBlank, type ReadingsDraft } from '../../state/measuring.ts';

export const EMPTY_DRAFT: ReadingsDraft = { fields: {}, rows: [], files: {} };

/** An offered measurement's own key: two coils have two cards of one kind. */
export const cardKey = ({ kind, part, coil, properties }: OfferedMeasurement): string =>
  [kind, part, coil ?? '', kind === 'value' ? properties[0] : ''].join(' ');

/** Whether readings of a card are of one station: its field, or how loud it is. */
export const isOfStation = ({ kind, part }: Pick<OfferedMeasurement, 'kind' | 'part'>): boolean =>
  part === 'station' || kind === 'audibility';

/** Key of what is typed into a card: a reading of a station is of the one that is chosen. */
export const draftKey = (card: OfferedMeasurement, station: string | undefined): string =>
  isOfStation(card) && station !== undefined ? `${cardKey(card)} ${station}` : cardKey(card);

/**
 * The card that a measurement of a file belongs to.
 * @param offered all that the set allows
 * @param written as a file of readings has it
 * @param coils names of the set's coils
 * @param open the card that is open: of two that fit it is taken
 * @param station name of the station that is measured
 * @returns undefined where no card can hold it
 */
export function cardFor(
  offered: readonly OfferedMeasurement[],
  written: Readonly<Record<string, unknown>>,
  coils: readonly string[],
  open: OfferedMeasurement,
  station: string | undefined,
): OfferedMeasurement | undefined {
  const fitting = offered.filter(
    ({ kind, part, coil, properties }) =>
      kind === written.kind &&
      (kind !== 'value' || properties[0] === written.of) &&
      (written.coil === undefined || (part === 'coil' && coil !== undefined && coils[coil] === written.coil)) &&
      (written.station === undefined || (isOfStation({ kind, part }) && station === written.station)),
  );
  return fitting.find((one) => cardKey(one) === cardKey(open)) ?? fitting[0];
}

/** What is read for a figure off an instrument: the reading, and how sure it is. */
function valueFields(property: PropertyId): Fields {
  const { quantity, isAmount } = propertyOf(property);
  return {
    value: quantity ? { type: 'quantity', quantity } : { type: 'number', min: 0, max: 1e6 },
    error: { type: 'quantity', quantity: isAmount && quantity ? quantity : 'ratio', optional: true },
  };
}

/** The fields of a card. */
export const fieldsOfCard = ({ kind, properties }: OfferedMeasurement): Fields =>
  kind === 'value' ? valueFields(properties[0]) : MEASUREMENTS[kind].fields;

/** A number without a unit. */
const BARE = /^[-+−]?\d+(?:[.,]\d+)?(?:e[-+]?\d+)?$/i;

/** As a file of readings would have it: a bare number gets the unit that its field says. */
function writtenScalar(typed: string, field: ScalarField): unknown {
  const text = typed.trim();
  const isBare = BARE.test(text);
  const plain = text.replace('−', '-').replace(',', '.');
  if (field.type === 'number') return isBare ? Number(plain) : text;
  if (field.type !== 'quantity') return text;
  const unit = unitOf(field);
  return isBare && unit !== '' ? `${plain} ${unit}` : text;
}

export const unitOf = (field: ScalarField): string =>
  field.type === 'quantity' ? readingUnit(field.quantity as QuantityKind) : '';

/** Samples separated by whatever stands between numbers. */
const samplesOf = (text: string): unknown[] =>
  text
    .split(/[\s;,]+/)
    .filter((one) => one !== '')
    .map((one) => (Number.isFinite(Number(one)) ? Number(one) : one));

/** A measurement as written, and which row of the form each of its readings stands in. */
export interface WrittenReadings {
  readonly written: Readonly<Record<string, unknown>>;
  readonly rowOf: readonly number[];
}

/**
 * What was typed, as a file of readings has it.
 * @param card whose fields it is
 * @param draft as typed; rows that are blank are left out
 * @param about name of coil or station, date and note
 */
export function writtenReadings(
  card: OfferedMeasurement,
  draft: ReadingsDraft,
  about: Readonly<Record<string, string | undefined>>,
): WrittenReadings {
  const written: Record<string, unknown> = { kind: card.kind };
  if (card.kind === 'value') written.of = card.properties[0];
  for (const [key, value] of Object.entries(about)) if (value !== undefined && value !== '') written[key] = value;
  const put = (into: Record<string, unknown>, key: string, typed: string | undefined, field: ScalarField): void => {
    if (typed !== undefined && typed.trim() !== '') into[key] = writtenScalar(typed, field);
  };
  let rowOf: number[] = [];
  for (const [key, field] of Object.entries(fieldsOfCard(card))) {
    switch (field.type) {
      case 'list': {
        const kept = draft.rows.flatMap((row, i) => (isBlank(row) ? [] : [{ row, i }]));
        rowOf = kept.map(({ i }) => i);
        written[key] = kept.map(({ row }) => {
          const reading: Record<string, unknown> = {};
          for (const [column, of] of Object.entries(field.columns)) put(reading, column, row[column], of);
          return reading;
        });
        break;
      }
      case 'group': {
        const group: Record<string, unknown> = {};
        for (const [inner, of] of Object.entries(field.fields)) put(group, inner, draft.fields[`${key}.${inner}`], of);
        if (Object.keys(group).length > 0 || !field.optional) written[key] = group;
        break;
      }
      case 'samples':
        if (draft.fields[key]?.trim()) written[key] = samplesOf(draft.fields[key]);
        break;
      case 'text':
        if (draft.files[key]) written[key] = draft.files[key].text;
        break;
      default:
        put(written, key, draft.fields[key], field);
    }
  }
  return { written, rowOf };
}

const asText = (value: unknown): string => (value === undefined || value === null ? '' : String(value));

/** An SI value with a unit: short where that says it exactly, all of its digits otherwise. */
function exactText(value: number, kind: QuantityKind): string {
  for (const digits of [6, 12]) {
    const text = formatQuantity(value, kind, digits);
    const read = parseQuantity(text, kind);
    if (read.ok && read.value === value) return text;
  }
  // A ratio has no unit of its own: it is typed in per cent.
  return kind === 'ratio' ? `${value * 100} %` : `${value} ${QUANTITY_KINDS[kind].unit}`;
}

/** As it is typed. A file may hold bare SI numbers, the form takes bare numbers to be in its own units. */
function typedText(value: unknown, field: ScalarField): string {
  if (field.type !== 'quantity') return asText(value);
  const isBare = typeof value === 'number' || (typeof value === 'string' && BARE.test(value.trim()));
  const read = isBare ? parseQuantity(value, field.quantity) : undefined;
  return read?.ok ? exactText(read.value, field.quantity) : asText(value);
}

/**
 * A measurement as a file has it, put back into the fields of its card.
 * @param card whose fields these are
 * @param written as a file of readings has it
 * @param name of the file
 */
export function draftOf(
  card: OfferedMeasurement,
  written: Readonly<Record<string, unknown>>,
  name: string,
): ReadingsDraft {
  const fields: Record<string, string> = {};
  const files: Record<string, { name: string; text: string }> = {};
  let rows: Record<string, string>[] = [];
  for (const key of ['date', 'note']) if (written[key] !== undefined) fields[key] = asText(written[key]);
  for (const [key, field] of Object.entries(fieldsOfCard(card))) {
    const value = written[key];
    if (value === undefined) continue;
    if (field.type === 'list')
      rows = (value as readonly Record<string, unknown>[]).map((row) =>
        Object.fromEntries(
          Object.keys(field.columns).map((column) => [column, typedText(row[column], field.columns[column])]),
        ),
      );
    else if (field.type === 'group')
      for (const inner of Object.keys(field.fields))
        fields[`${key}.${inner}`] = typedText((value as Record<string, unknown>)[inner], field.fields[inner]);
    else if (field.type === 'samples') fields[key] = (value as readonly unknown[]).join(' ');
    else if (field.type === 'text') files[key] = { name, text: asText(value) };
    else fields[key] = typedText(value, field);
  }
  return { fields, rows, files, source: name };
}
