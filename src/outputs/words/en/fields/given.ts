import type { Given, GivenFacts } from '../../../../engine/fields/problem.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import type { SentencesFor } from '../warnings/sentences-for.ts';

const GIVEN: SentencesFor<GivenFacts> = {
  nothing: () => 'nothing',
  value: ({ json }) => json,
  'empty-file': () => 'an empty file',
  megabytes: ({ size }) => `${size.toFixed(1)} MB`,
  'nested-too-deep': () => 'lists or objects nested too deep',
  'utf-16-without-mark': () => 'what looks like UTF-16 without a byte-order mark',
  'eight-bit-text': ({ byte, line }) =>
    `what looks like Windows-1252 or Latin-1 (byte ${byte.toString(16).toUpperCase()} in line ${line})`,
  capacitance: ({ value }) => formatQuantity(value, 'capacitance'),
  length: ({ value }) => formatQuantity(value, 'length'),
  frequency: ({ value }) => formatQuantity(value, 'frequency'),
};

/** What was given, as the object of "got". */
export const givenText = (given: Given): string => (GIVEN[given.code] as (figures: Given) => string)(given);
