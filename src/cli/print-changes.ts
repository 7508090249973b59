import { type Path, placeText } from '../engine/index.ts';
import { clean } from '../outputs/tables/index.ts';
import { moveAnswer } from '../outputs/words/index.ts';
import type { Io } from './command.ts';

/** What is to be written in a description, a line each. */
export function printChanges(changes: readonly { readonly path: Path; readonly value: unknown }[], io: Io): void {
  io.out(`\n${moveAnswer.changes}\n`);
  for (const { path, value } of changes)
    io.out(`  ${placeText(path)}: ${clean(typeof value === 'string' ? value : JSON.stringify(value))}\n`);
}
