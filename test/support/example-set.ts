import { readFileSync } from 'node:fs';
import { inRoot } from '../../scripts/support/paths.mjs';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText } from '../../src/engine/set/read.ts';

/** An example as read. @param name of its file, without the ending */
export function exampleSet(name: string): SetDescription {
  const read = readText(readFileSync(inRoot(`examples/${name}.json`), 'utf8'));
  if (!read.ok) throw new Error(`${name} does not read`);
  return read.set;
}
