import { useEffect, useState } from 'preact/hooks';
import { useShelf } from '../../state/set-context.ts';
import type { ShelfEntry } from '../../state/shelf/shelf-entry.ts';
import { DrawnSvg } from '../../widgets/DrawnSvg.tsx';
import { useNear } from '../../widgets/use-near.ts';
import { shareWorker } from '../../workers/latest.ts';
import type { ThumbnailQuestion } from './thumbnail.worker.ts';

let share: ReturnType<typeof shareWorker<ThumbnailQuestion, string>> | undefined;
const askThumbnail: NonNullable<typeof share> = (heard) => {
  share ??= shareWorker<ThumbnailQuestion, string>(
    new Worker(new URL('./thumbnail.worker.ts', import.meta.url), { type: 'module', name: 'thumbnail' }),
  );
  return share(heard);
};

/** Drawn once for each state of a set. */
const drawn = new Map<string, string>();

/** The circuit of a set, small and without its letters; the name beside it says what it is. */
export function Thumbnail({ entry }: { readonly entry: ShelfEntry }) {
  const shelf = useShelf();
  const { isNear, holder } = useNear();
  const { id, changed } = entry;
  const key = `${id} ${changed}`;
  const [, redraw] = useState(0);
  const svg = drawn.get(key);
  useEffect(() => {
    if (!isNear || drawn.has(key)) return;
    const asking = askThumbnail((_question, reply) => {
      drawn.set(key, 'answer' in reply ? reply.answer : '');
      redraw((count) => count + 1);
    });
    let isHere = true;
    void shelf.kept(id).then((kept) => {
      if (kept && isHere) asking.ask({ written: kept.written });
    });
    return () => {
      isHere = false;
      asking.close();
    };
  }, [isNear, key, id, shelf]);
  return (
    <div ref={holder} class="shelf-drawing" aria-hidden="true">
      <DrawnSvg svg={svg ?? ''} />
    </div>
  );
}
