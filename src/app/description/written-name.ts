import { valueAtPath } from '../../engine/index.ts';

/** Name of a set, a box, a place or a station as it stands in its description; empty without one. */
export const writtenName = (written: unknown): string => String(valueAtPath(written, ['name']) ?? '');
