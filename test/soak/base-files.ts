import { readdirSync, readFileSync } from 'node:fs';
import { inRoot } from '../../scripts/support/paths.mjs';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText } from '../../src/engine/set/read.ts';

/** Texts of the example files of a folder. @param folder in examples/ */
export const exampleTexts = (folder: string, ending: string): string[] =>
  readdirSync(inRoot(`examples/${folder}`))
    .filter((file) => file.endsWith(ending))
    .sort()
    .map((file) => readFileSync(inRoot(`examples/${folder}/${file}`), 'utf8'));

export const EXAMPLE_SETS: readonly SetDescription[] = exampleTexts('', '.json').map((text) => {
  const read = readText(text);
  if (!read.ok) throw new Error('an example does not read');
  return read.set;
});
