import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { type LogCells, TableTooLargeError } from '../../../engine/index.ts';
import { tableTooLarge, logWords as texts } from '../../../outputs/words/index.ts';
import { download } from '../../state/download.ts';
import { tell } from '../../state/notices.ts';
import { useOpenSet, useShelf } from '../../state/set-context.ts';
import { joinedLogs, withEntry, withoutEntry } from '../../state/shelf/log-text.ts';

/** A log of one set, as the text of a table. */
interface ShownLog {
  readonly of: string;
  readonly text: string;
}

/** The log of the set in focus; where the browser keeps nothing it lasts as long as the page. */
export function useLog() {
  const shelf = useShelf();
  const { id } = useOpenSet();
  const [shown, setShown] = useState<ShownLog>({ of: id, text: '' });
  const latest = useRef(shown);
  const show = useCallback((log: ShownLog) => {
    latest.current = log;
    setShown(log);
  }, []);
  const focused = useRef(id);
  focused.current = id;
  const entries = shelf.entries.value;
  useEffect(() => {
    let isHere = true;
    shelf.log(id).then(
      (text = '') => isHere && show({ of: id, text }),
      () => undefined,
    );
    return () => {
      isHere = false;
    };
  }, [shelf, id, entries, show]);
  const change = useCallback(
    async (make: (text: string | undefined) => string): Promise<boolean> => {
      let text: string;
      try {
        text = await shelf.changeLog(id, make);
      } catch (error) {
        if (error instanceof TableTooLargeError) {
          tell(tableTooLarge(error.fact), { key: 'log-too-large', of: id, stays: true });
          return false;
        }
        // Held already, or as it was read when it could be read last.
        const before = await shelf.log(id).catch(() => undefined);
        text = make(before ?? (latest.current.of === id ? latest.current.text || undefined : undefined));
        shelf.holdLog(id, text);
        const save = { label: texts.saveNow, run: () => download(texts.fileName, text, 'text/csv') };
        tell(texts.notKept, { key: 'log-not-kept', of: id, stays: true, action: save });
      }
      if (focused.current === id) show({ of: id, text });
      return true;
    },
    [shelf, id, show],
  );
  return {
    log: shown.of === id ? shown.text : '',
    /** @returns false where the log is full */
    add: (cells: LogCells) => change((text) => withEntry(text, cells)),
    remove: (cells: LogCells) => change((text) => withoutEntry(text, cells)),
    /** Adds what another log holds. @param joined what both gave, of the log as it was `before` */
    join: (other: string, before: string, joined: string) =>
      change((text) => ((text ?? '') === before ? joined : joinedLogs(text, other))),
  };
}
