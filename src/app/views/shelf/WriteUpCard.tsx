import { signal } from '@preact/signals';
import { useEffect, useRef, useState } from 'preact/hooks';
import { readValue } from '../../../engine/index.ts';
import { shelfWords } from '../../../outputs/words/index.ts';
import { downloadFile, fileStem } from '../../state/download.ts';
import { useOpenSet, useShelf } from '../../state/set-context.ts';
import { FilePicker } from '../../widgets/FilePicker.tsx';
import { useWorker } from '../../workers/use-worker.ts';
import { SharedPositionChoice, useSharedPosition, withoutPosition } from './SharedPositionChoice.tsx';
import type { ChosenPhoto, SharedPosition, WriteUpAnswer, WriteUpQuestion } from './write-up-question.ts';

const newWriteUpWorker = (): Worker =>
  new Worker(new URL('./write-up.worker.ts', import.meta.url), { type: 'module', name: 'write-up' });

const texts = shelfWords.writeUp;
/** Larger files are no pictures for a screen. */
const LARGEST_PHOTO = 50e6;

/** Photos of each set, by its id, for as long as the page lasts. */
const chosenPhotos = signal<ReadonlyMap<string, readonly ChosenPhoto[]>>(new Map());

/** The set in focus written up for others: as one web page, or as Markdown with its pictures. */
export function WriteUpCard() {
  const { id, written, time } = useOpenSet();
  const shelf = useShelf();
  const picker = useRef<HTMLInputElement>(null);
  const photos = chosenPhotos.value.get(id) ?? [];
  const setPhotos = (next: readonly ChosenPhoto[]) => {
    chosenPhotos.value = new Map([...chosenPhotos.peek(), [id, next]]);
  };
  const [chosenPosition, setPosition] = useState<SharedPosition>('none');
  const [withLog, setWithLog] = useState(true);
  const [log, setLog] = useState<string | undefined>();
  const [isWorking, setWorking] = useState(false);
  const [message, setMessage] = useState('');
  const now = written.value;
  const sharing = useSharedPosition(now);
  const position = chosenPosition === 'none' && !sharing.canLeaveOut ? 'coarse' : chosenPosition;
  const entries = shelf.entries.value;
  useEffect(() => {
    let isHere = true;
    shelf.log(id).then(
      (text) => isHere && setLog(text),
      () => undefined,
    );
    return () => {
      isHere = false;
    };
  }, [shelf, id, entries]);
  const ask = useWorker<WriteUpQuestion, WriteUpAnswer>(newWriteUpWorker, (_question, reply) => {
    setWorking(false);
    if ('error' in reply) setMessage(texts.failed(reply.error));
    else if ('unread' in reply.answer) setMessage(texts.unread(reply.answer.unread));
    else {
      downloadFile(reply.answer.name, reply.answer.file);
      setMessage(texts.saved(reply.answer.name));
    }
  });
  const save = (format: WriteUpQuestion['format']) => {
    const read = readValue(now);
    if (!read.ok) {
      setMessage(shelfWords.noSetToShare);
      return;
    }
    setWorking(true);
    setMessage(texts.working);
    ask({
      set: read.set,
      written: position === 'none' ? withoutPosition(now) : now,
      time: time.value,
      position,
      photos: photos.map(({ file, caption }) => ({ file, caption: caption.trim() || captionFor(file) })),
      log: withLog ? log : undefined,
      format,
      stem: fileStem(read.set.name, 'set'),
    });
  };
  const add = (file: File) => {
    const isTooLarge = file.size > LARGEST_PHOTO;
    if (isTooLarge) setMessage(texts.tooLarge(file.name, LARGEST_PHOTO));
    else setPhotos([...(chosenPhotos.peek().get(id) ?? []), { file, caption: captionFor(file) }]);
  };
  return (
    <section class="card share-link" aria-labelledby="write-up-title">
      <h3 id="write-up-title">{texts.title}</h3>
      <p>{texts.about}</p>
      <ul class="write-up-photos">
        {photos.map(({ file, caption }, i) => (
          <li key={`${file.name} ${file.lastModified} ${i}`}>
            <input
              type="text"
              aria-label={texts.caption(file.name)}
              value={caption}
              onInput={(event) => {
                const words = event.currentTarget.value;
                setPhotos(photos.map((one, k) => (k === i ? { ...one, caption: words } : one)));
              }}
            />
            <button
              type="button"
              class="leave-out"
              aria-label={texts.removePhoto(file.name)}
              onClick={() => setPhotos(photos.filter((_, k) => k !== i))}
            >
              ×
            </button>
          </li>
        ))}
      </ul>
      <button
        type="button"
        onClick={() => {
          setMessage('');
          picker.current?.click();
        }}
      >
        {texts.addPhotos}
      </button>
      <FilePicker picker={picker} accept="image/*" label={texts.photoPicker} multiple onFile={add} />
      {photos.length > 0 && <p class="quiet">{texts.photosAbout}</p>}
      {log !== undefined && log !== '' && (
        <label>
          <input type="checkbox" checked={withLog} onChange={(event) => setWithLog(event.currentTarget.checked)} />{' '}
          {texts.withLog}
        </label>
      )}
      <SharedPositionChoice name="write-up-position" {...sharing} position={position} onPosition={setPosition} />
      <p class="shelf-acts">
        <button type="button" disabled={isWorking} onClick={() => save('html')}>
          {texts.saveHtml}
        </button>
        <button type="button" disabled={isWorking} onClick={() => save('markdown')}>
          {texts.saveMarkdown}
        </button>
      </p>
      <p role="status">{message}</p>
    </section>
  );
}

/** "front-view.jpg" as words. */
const captionFor = ({ name: file }: File): string => file.split('.')[0].split(/[-_]+/).join(' ');
