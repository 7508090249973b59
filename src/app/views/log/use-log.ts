import { useCallback, useEffect, useState } from 'preact/hooks';
import type { LogCells } from '../../../engine/index.ts';
import { logWords as texts } from '../../../outputs/words/index.ts';
import { download } from '../../state/download.ts';
import { tell } from '../../state/notices.ts';
import { useOpenSet, useShelf } from '../../state/set-context.ts';
import { joinedLogs, withEntry, withoutEntry } from '../../state/shelf/log-text.ts';

/** The log of the set in focus, as the text of a table; where the browser keeps nothing it lasts as long as the page. */
export function useLog() {
  const shelf = useShelf();
  const { id } = useOpenSet();
  const [log, setLog] = useState('');
  const entries = shelf.entries.value;
  useEffect(() => {
    let isHere = true;
    shelf.log(id).then(
      (text) => isHere && setLog((before) => text ?? before),
      () => undefined,
    );
    return () => {
      isHere = false;
    };
  }, [shelf, id, entries]);
  const change = useCallback(
    async (make: (text: string | undefined) => string): Promise<void> => {
      try {
        setLog(await shelf.changeLog(id, make));
      } catch {
        setLog((before) => {
          const text = make(before || undefined);
          const save = { label: texts.saveNow, run: () => download(texts.fileName, text, 'text/csv') };
          tell(texts.notKept, { key: 'log-not-kept', of: id, stays: true, action: save });
          return text;
        });
      }
    },
    [shelf, id],
  );
  return {
    log,
    add: (cells: LogCells) => change((text) => withEntry(text, cells)),
    remove: (cells: LogCells) => change((text) => withoutEntry(text, cells)),
    /** @param joined what both give, of the log as it is here */
    join: (other: string, joined: string) =>
      change((text) => ((text ?? '') === log ? joined : joinedLogs(text, other))),
  };
}
