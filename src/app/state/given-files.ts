import { fileWords as texts } from '../../outputs/words/index.ts';
import { type OpeningPlace, openFile } from './files.ts';
import { isOfInstrument, measureFile } from './launched-readings.ts';
import { tell } from './notices.ts';

/**
 * Opens files that another program handed to the page together: each set as one more, of which the last gets the focus,
 * and in Measure the first of those that instruments wrote; the others of these are named.
 */
export async function openGivenFiles(place: OpeningPlace, files: readonly File[]): Promise<void> {
  for (const file of files) if (!isOfInstrument(file)) await openFile(place, file);
  const [first, ...others] = files.filter(isOfInstrument);
  if (!first) return;
  measureFile(first);
  if (others.length === 0) return;
  const names = others.map(({ name }) => name);
  tell(texts.oneInstrumentFile(first.name, names), { key: 'instrument-files', stays: true });
}
