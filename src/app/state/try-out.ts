import { edit, tellOfChange } from './document.ts';

/** Make a change that a button offered; the notice says so and takes it back. @param label of the step back. */
export function tryOut(
  { path, to }: { readonly path: readonly (string | number)[]; readonly to: unknown },
  label: string,
  said: string,
): void {
  edit(path, to, { label });
  tellOfChange(said, 'tried');
}
