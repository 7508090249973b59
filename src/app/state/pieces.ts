import { computed } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { type Path, valueAtPath } from '../../engine/index.ts';
import { pathText } from '../description/schema-at.ts';
import { type Edited, useEdited } from './edited.ts';

/**
 * A value made from the state of what is edited; the component is drawn again only when that value is another one, so that a
 * slider redraws its own field and not every field there is.
 * @param key names all that `derive` depends on besides it.
 */
export function usePiece<T>(key: string, derive: (edited: Edited) => T): T {
  const edited = useEdited();
  return useMemo(() => computed(() => derive(edited)), [key, edited]).value;
}

/** The value at a path of the description as written. */
export const useWritten = (path: Path): unknown =>
  usePiece(pathText(path), ({ written }) => valueAtPath(written.value, path));

/** Places in the list of the stations that the figures leave out. */
export const useLeftOut = (): ReadonlySet<number> => {
  const places = usePiece('left-out', ({ standIns }) =>
    JSON.stringify(
      standIns.value.flatMap(({ path, source }) => {
        const place = source === 'none' ? /^place\.stations\[(\d+)\]/.exec(path) : null;
        return place ? [Number(place[1])] : [];
      }),
    ),
  );
  return useMemo(() => new Set(JSON.parse(places) as number[]), [places]);
};
