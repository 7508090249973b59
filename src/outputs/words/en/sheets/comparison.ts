import { listOf } from '../grammar.ts';

/** The sheet on which several sets stand side by side. */
export const comparisonSheetWords = {
  title: 'Sets compared',
  ranges: 'In brackets: the range (90 %).',
  dials: 'Left: level at the detector, each set relative to its own maximum. Right: the dials; filled: heard.',
  withRange: (level: string, range: string): string => `${level} (${range})`,
  description: (names: readonly string[]): string => `${listOf(names)} side by side on one station.`,
} as const;
