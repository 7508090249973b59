import type { Path } from '../../engine/index.ts';
import { pathText } from '../description/schema-at.ts';

/** Id of the button that adds a field that is left out. */
export const addButtonId = (path: Path): string => `add-${pathText(path)}`;

/** A field left out from the keyboard is gone: the button that brings it back takes the focus. */
export function focusAddButton(path: Path): void {
  requestAnimationFrame(() => document.getElementById(addButtonId(path))?.focus());
}
