import { computed } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { type Path, valueAtPath } from '../../engine/index.ts';
import { pathText } from '../description/schema-at.ts';
import { written } from './document.ts';

/**
 * A value made from the state; the component is drawn again only when that value is another one, so that a slider
 * redraws its own field and not every field there is.
 * @param key names all that `derive` depends on besides the state.
 */
export function usePiece<T>(key: string, derive: () => T): T {
  return useMemo(() => computed(derive), [key]).value;
}

/** The value at a path of the description as written. */
export const useWritten = (path: Path): unknown => usePiece(pathText(path), () => valueAtPath(written.value, path));
