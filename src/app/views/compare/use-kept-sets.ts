import { useEffect, useState } from 'preact/hooks';
import { useShelf } from '../../state/set-context.ts';
import type { ShelfEntry } from '../../state/shelf/shelf-entry.ts';
import type { KeptSet } from './sets-question.ts';

/** Sets of the shelf as they are kept, read anew when one of them changes; undefined until they are read. */
export function useKeptSets(entries: readonly ShelfEntry[]): readonly KeptSet[] | undefined {
  const shelf = useShelf();
  const [sets, setSets] = useState<readonly KeptSet[] | undefined>();
  const key = entries.map(({ id, changed }) => `${id} ${changed}`).join();
  useEffect(() => {
    let isHere = true;
    const reading = entries.map(async ({ id, name, fileName }): Promise<KeptSet> => {
      const kept = await shelf.kept(id);
      return { name: name || fileName, written: kept?.written, lastValid: kept?.lastValid };
    });
    void Promise.all(reading).then((read) => isHere && setSets(read));
    return () => {
      isHere = false;
    };
  }, [shelf, key]);
  return sets;
}
