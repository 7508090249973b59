import { MEASUREMENTS, type MeasurementKind } from './measurements.ts';

/**
 * Tells a file of readings, which says its kind, from what an instrument wrote, which does not.
 * @param text of a file
 * @returns whether it is JSON or a table that names its kind
 */
export const isReadingsText = (text: string): boolean => /^\s*[[{]/.test(text) || /^\s*#\s*kind\s*:/m.test(text);

/**
 * The field of a kind of measurement that holds what an instrument wrote, as it is.
 * @param kind id of the kind, or a figure read off an instrument
 * @returns key of the field; undefined where the kind has none
 */
export const wholeFileField = (kind: MeasurementKind | 'value'): string | undefined =>
  kind === 'value'
    ? undefined
    : Object.entries(MEASUREMENTS[kind].fields).find(([, field]) => field.type === 'text' && !field.optional)?.[0];
