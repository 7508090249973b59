import * as v from 'valibot';
import { refusalOfMissing } from '../fields/fields.ts';
import { type FieldHints, refuse } from '../fields/refusal.ts';
import { type NetworkRead, readNetwork } from '../parts/aerial/touchstone.ts';
import type { Coded } from '../units/coded.ts';
import type { QuantityKind } from '../units/quantity-kind.ts';
import { givenValue } from '../units/refusal.ts';
import { quantity } from '../units/schema.ts';
import { type Recording, readRecord } from './record.ts';

/** A quantity as people write it, read to SI. Bounds in SI. */
export interface QuantityField {
  readonly type: 'quantity';
  readonly quantity: QuantityKind;
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
}
/** A number without a unit, ends included. */
export interface NumberField {
  readonly type: 'number';
  readonly min: number;
  readonly max: number;
}
/** One of a few words. */
export interface ChoiceField {
  readonly type: 'choice';
  readonly options: readonly string[];
}
/** The text of a file, read to what it holds. */
export interface TextField {
  readonly type: 'text';
  readonly format: 'touchstone' | 'record';
}
/** What stands in one column of a list of readings, or alone. */
export type ScalarField = QuantityField | NumberField | ChoiceField | TextField;

/** A list of numbers without a unit. */
export interface SamplesField {
  readonly type: 'samples';
  readonly least: number;
  readonly most: number;
}
/** Readings one below the other; each key is a column. */
export interface ListField {
  readonly type: 'list';
  readonly least: number;
  readonly columns: Fields<ScalarField>;
}
/** Figures that belong together. */
export interface GroupField {
  readonly type: 'group';
  readonly fields: Fields<ScalarField>;
  /** Keys of two figures of which the first must be the smaller. */
  readonly rising?: readonly [lower: string, upper: string];
}
/** One field of a kind of measurement: how it is written, read and refused. */
export type ReadingField = ScalarField | SamplesField | ListField | GroupField;

/** May be left out. */
export interface Optional {
  readonly optional?: true;
  /** All the same worth asking for with what may not be left out. */
  readonly isAsked?: true;
}
/** Fields by name. */
export type Fields<F extends ReadingField = ReadingField> = Readonly<Record<string, F & Optional>>;

type ValueOf<F> = F extends { readonly type: 'quantity' | 'number' }
  ? number
  : F extends { readonly type: 'choice'; readonly options: readonly (infer O)[] }
    ? O
    : F extends { readonly type: 'text'; readonly format: infer T }
      ? T extends 'record'
        ? Recording
        : Network
      : F extends { readonly type: 'samples' }
        ? readonly number[]
        : F extends { readonly type: 'list'; readonly columns: infer C }
          ? readonly ValuesOf<C>[]
          : F extends { readonly type: 'group'; readonly fields: infer G }
            ? ValuesOf<G>
            : never;

type OptionalKeys<Fs> = { [K in keyof Fs]: Fs[K] extends { readonly optional: true } ? K : never }[keyof Fs];

/** What fields hold once they are read: SI numbers, words and lists of them. */
export type ValuesOf<Fs> = { readonly [K in Exclude<keyof Fs, OptionalKeys<Fs>>]: ValueOf<Fs[K]> } & {
  readonly [K in OptionalKeys<Fs>]?: ValueOf<Fs[K]>;
};

const MOST_READINGS = 10_000;
const MOST_CHARACTERS = 10_000_000;

/** A file of a network analyser, once it is read. */
export type Network = Extract<NetworkRead, { readonly ok: true }>;

/** A text as it is read, or refused with every problem that the reader names. */
const readBy = <R extends { readonly ok: true }, P>(
  read: (text: string) => R | { readonly ok: false; readonly problems: P },
  code: 'network-file' | 'record-file',
  hintOf: (problems: P) => Coded<FieldHints>,
) =>
  v.rawTransform<string, R>(({ dataset, addIssue, NEVER }) => {
    const result = read(dataset.value);
    if (result.ok) return result;
    addIssue({
      message: refuse({
        expected: { code },
        given: givenValue(dataset.value.slice(0, 40)),
        hint: hintOf(result.problems),
      }),
    });
    return NEVER;
  });

const networkText = v.pipe(
  v.string(refuse({ code: 'network-file' })),
  v.maxLength(MOST_CHARACTERS, refuse({ code: 'text.at-most', characters: MOST_CHARACTERS })),
  readBy(readNetwork, 'network-file', (problems) => ({ code: 'touchstone-problems', problems })),
);

const recordText = v.pipe(
  v.string(refuse({ code: 'record-file' })),
  readBy(readRecord, 'record-file', (problems) => ({ code: 'record-problems', problems })),
);

function scalarSchema(field: ScalarField): v.GenericSchema {
  switch (field.type) {
    case 'quantity': {
      const { min, above, max } = field;
      return quantity(field.quantity, { min, above, max });
    }
    case 'number': {
      const between = refuse({ code: 'number', min: field.min, max: field.max });
      return v.pipe(
        v.number(between),
        v.check((x) => x >= field.min && x <= field.max, between),
      );
    }
    case 'choice':
      return v.picklist(field.options, refuse({ code: 'one-of', options: field.options }));
    case 'text':
      return field.format === 'record' ? recordText : networkText;
  }
}

const keysOf = (fields: Fields): string[] => Object.keys(fields).filter((key) => !fields[key].optional);

const listSchema = (item: v.GenericSchema, least: number, most: number, keys: readonly string[]) =>
  v.pipe(
    v.array(item, refuse({ code: 'list-of', keys })),
    v.minLength(least, refuse({ code: 'items.at-least', count: least })),
    v.maxLength(most, refuse({ code: 'items.at-most', count: most })),
  );

function groupSchema({ fields, rising }: GroupField): v.GenericSchema {
  const group = v.object(fieldEntries(fields), objectMessage(fields));
  if (!rising) return group;
  const [lower, upper] = rising;
  return v.pipe(
    group,
    v.check(
      (values) => {
        const figures = values as Readonly<Record<string, number>>;
        return figures[upper] > figures[lower];
      },
      refuse({ code: 'rising', lower, upper }),
    ),
  );
}

function fieldSchema(field: ReadingField): v.GenericSchema {
  switch (field.type) {
    case 'samples': {
      const finite = refuse({ code: 'finite-number' });
      return listSchema(v.pipe(v.number(finite), v.finite(finite)), field.least, field.most, []);
    }
    case 'list': {
      const { columns, least } = field;
      return listSchema(v.object(fieldEntries(columns), objectMessage(columns)), least, MOST_READINGS, keysOf(columns));
    }
    case 'group':
      return groupSchema(field);
    default:
      return scalarSchema(field);
  }
}

/** What is refused of an object: that it is none, or that it lacks a key. */
const objectMessage = (fields: Fields) =>
  refuse<v.BaseIssue<unknown>>(({ input, path }) => {
    const key = path?.at(-1)?.key;
    return input === undefined && typeof key === 'string' && Object.hasOwn(fields, key)
      ? refusalOfMissing(fieldSchema(fields[key]))
      : { expected: { code: 'object-of', keys: keysOf(fields) } };
  });

/**
 * Schemas by which readings are read: quantities as people write them or plain SI numbers in, SI out.
 * @param fields of a kind of measurement, or the columns of its readings
 * @returns the entries of an object schema, one a field; what they refuse, they refuse by `refuse`
 */
export const fieldEntries = (fields: Fields): Record<string, v.GenericSchema> =>
  Object.fromEntries(
    Object.entries(fields).map(([key, field]) => [
      key,
      field.optional ? v.optional(fieldSchema(field)) : fieldSchema(field),
    ]),
  );
