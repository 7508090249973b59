import { withValueAt } from '../../engine/index.ts';
import type { Document } from './document.ts';
import { TRIED } from './notices.ts';

/** Something to be written at a place of the description. */
interface Written {
  readonly path: readonly (string | number)[];
  readonly to: unknown;
}

/** Make the changes that a button offered, as one step; the notice tells what was done and takes it back. @param label of the step back. */
export function tryOut(
  { change, tellOfChange }: Pick<Document, 'change' | 'tellOfChange'>,
  changes: readonly Written[],
  label: string,
  notice: string,
): void {
  change((written) => changes.reduce((before, { path, to }) => withValueAt(before, path, to), written), { label });
  tellOfChange(notice, TRIED);
}
