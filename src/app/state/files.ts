import { signal } from '@preact/signals';
import {
  LARGEST_FILE,
  listeningTime,
  type Problem,
  type ReadResult,
  readText,
  tooLarge,
  writeText,
} from '../../engine/index.ts';
import { readingWords, readNote, fileWords as texts } from '../../outputs/words/index.ts';
import { latestWins } from '../workers/latest.ts';
import { type ReadingQuestion, readDescription, SHORT_TEXT } from '../workers/reading.ts';
import { fileName, replace, savedWritten, tellOfChange, written } from './document.ts';
import { download } from './download.ts';
import type { Example } from './examples.ts';
import { dismiss, tell } from './notices.ts';
import { newReadingWorker } from './reading-worker.ts';
import { remember } from './understanding.ts';
import { chooseStation, time } from './view.ts';

/** A file that could not be read, with everything that is wrong with it; the dialog shows it. */
export interface BadFile {
  readonly name: string;
  readonly problems: readonly Problem[];
}
export const badFile = signal<BadFile | undefined>(undefined);

/** The dialog for pasting is open. */
export const isPasting = signal(false);
export const showPaste = (): void => {
  isPasting.value = true;
};

let handle: FileSystemFileHandle | undefined;

/** Ends the reading of a long text, if there is one. */
let stopReading: (() => void) | undefined;

/** Opens a description in place of the one on the page; if it cannot be read, the work on the page is untouched. */
export function openText(text: string, name: string): void {
  stopReading?.();
  if (text.length > SHORT_TEXT) readBeside({ text }, name, text.length);
  else take(readText(text), name);
}

/** As `openText`, of a file. */
export async function openFile(file: File): Promise<void> {
  stopReading?.();
  if (file.size > 4 * LARGEST_FILE) {
    badFile.value = { name: file.name, problems: [tooLarge(file.size)] };
  } else if (file.size > SHORT_TEXT) readBeside({ file }, file.name, file.size);
  else take(await readDescription({ file }), file.name);
}

/** A worker reads it; meanwhile the page is as it was, and says so with a way to stop. */
function readBeside(question: ReadingQuestion, name: string, size: number): void {
  const worker = newReadingWorker();
  const stop = () => {
    worker.terminate();
    dismiss('reading');
    stopReading = undefined;
  };
  stopReading = stop;
  tell(readingWords.reading(name, size), {
    key: 'reading',
    stays: true,
    isBusy: true,
    action: { label: readingWords.cancel, run: stop },
  });
  latestWins<ReadingQuestion, ReadResult>(worker, (_question, reply) => {
    stop();
    if ('answer' in reply) take(reply.answer, name);
    else
      badFile.value = {
        name,
        problems: [
          { path: '', expected: { code: 'readable-file' }, hint: { code: 'system-message', message: reply.error } },
        ],
      };
  }).ask(question);
}

function take(result: ReadResult, name: string): void {
  if (!result.ok) {
    badFile.value = { name, problems: result.problems };
    return;
  }
  badFile.value = undefined;
  handle = undefined;
  remember(result.written, result);
  replace(result.written, name, texts.openLabel(name));
  chooseStation(undefined);
  time.value = listeningTime(result.set.place);
  dismiss('another-tab');
  tellOfChange(texts.opened(name, result.notes.map(readNote)), 'opened', texts.backToBefore);
}

export const openExample = (example: Example): void => openText(example.text, example.file);

interface SavePicker {
  showSaveFilePicker?: (options: object) => Promise<FileSystemFileHandle>;
}

/** Save to the file chosen before, or ask where; browsers that cannot ask download. */
export async function saveFile(options: { as?: boolean } = {}): Promise<void> {
  const now = written.peek();
  const text = writeText(now);
  const { showSaveFilePicker } = window as SavePicker;
  if (!showSaveFilePicker) {
    download(fileName.peek(), text);
    savedWritten.value = now;
    return;
  }
  try {
    if (!handle || options.as)
      handle = await showSaveFilePicker({
        suggestedName: fileName.peek(),
        types: [{ description: texts.fileKind, accept: { 'application/json': ['.json'] } }],
      });
    const stream = await handle.createWritable();
    await stream.write(text);
    await stream.close();
    fileName.value = handle.name;
    savedWritten.value = now;
    tell(texts.saved(handle.name), { key: 'saved' });
  } catch (error) {
    if ((error as Error).name === 'AbortError') return;
    handle = undefined;
    tell(texts.notWritten((error as Error).message), {
      key: 'saved',
      stays: true,
      action: { label: texts.downloadInstead, run: () => download(fileName.peek(), text) },
    });
  }
}
