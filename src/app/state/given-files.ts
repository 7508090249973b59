import { type OpeningPlace, openFile } from './files.ts';
import { measureFile } from './launched-readings.ts';

/** Opens a file that another program handed to the page: a set as one more, what an instrument wrote in Measure. */
export async function openGivenFile(place: OpeningPlace, file: File): Promise<void> {
  if (!measureFile(file)) await openFile(place, file);
}
