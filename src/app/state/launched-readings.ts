import { batch, signal } from '@preact/signals';
import type { Instrument, OfferedMeasurement } from '../../engine/index.ts';
import { instruments } from './measuring.ts';
import { view } from './page-view.ts';

/** A file of an instrument that the page was opened with, until a card of Measure has taken it. */
export const launchedReadings = signal<File | undefined>(undefined);

/** What writes files of an ending, and the cards that are for them. */
const WRITERS: readonly {
  readonly endings: readonly string[];
  readonly instrument: Instrument;
  readonly isFor: (kind: OfferedMeasurement['kind']) => boolean;
}[] = [
  { endings: ['.s1p', '.s2p'], instrument: 'network analyser', isFor: (kind) => kind.startsWith('analyser-') },
  { endings: ['.wav'], instrument: 'sound card', isFor: (kind) => kind === 'decay' },
];

const writerOf = (file: File) =>
  WRITERS.find(({ endings }) => endings.some((one) => file.name.toLowerCase().endsWith(one)));

export const isOfInstrument = (file: File): boolean => writerOf(file) !== undefined;

/** Shows Measure with a file of an instrument: whoever has the file has the instrument. */
export function measureFile(file: File): void {
  const writer = writerOf(file);
  if (!writer) return;
  batch(() => {
    if (!instruments.peek().includes(writer.instrument)) instruments.value = [...instruments.peek(), writer.instrument];
    launchedReadings.value = file;
    view.value = 'measure';
  });
}

/** The card for a file of an instrument: the one that is open, if it fits, or else the first that does. */
export const cardOf = (
  file: File,
  offered: readonly OfferedMeasurement[],
  open: OfferedMeasurement | undefined,
): OfferedMeasurement | undefined => {
  const fitting = offered.filter(({ kind }) => writerOf(file)?.isFor(kind));
  return open && fitting.includes(open) ? open : (fitting[0] ?? open ?? offered[0]);
};
