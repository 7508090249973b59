import { signal } from '@preact/signals';
import { LARGEST_FILE, type Problem, textOfLink, tooLarge, writeText } from '../../engine/index.ts';
import { readingWords, readNote, fileWords as texts } from '../../outputs/words/index.ts';
import { isWholeSet, type Reading, readWithStandIns } from '../description/stand-ins.ts';
import { latestWins } from '../workers/latest.ts';
import { type ReadingQuestion, readDescription, readDescriptionText, SHORT_TEXT } from '../workers/reading.ts';
import { download } from './download.ts';
import type { Example } from './examples.ts';
import { dismiss, tell } from './notices.ts';
import type { OpenSet } from './open-sets.ts';
import { newReadingWorker } from './reading-worker.ts';

/** A file that could not be read, with everything that is wrong with it; the dialog shows it. */
export interface BadFile {
  readonly name: string;
  readonly problems: readonly Problem[];
}
export const badFile = signal<BadFile | undefined>(undefined);

/** The dialog for pasting is open; what was pasted before and is refused stands in it with all that is wrong. */
export const pasting = signal<{ readonly text: string; readonly problems: readonly Problem[] } | undefined>(undefined);
export const showPaste = (): void => {
  pasting.value = { text: '', problems: [] };
};

type Refuse = (problems: readonly Problem[]) => void;

/** Where what is opened goes: a set of its own, which gets the focus. @param name of the file */
export interface OpeningPlace {
  readonly add: (reading: Reading, name: string) => OpenSet;
  /** Away from a set that was just opened, back to the one before it. */
  readonly back: (opened: OpenSet) => void;
}

/** Ends the reading of a long text, while there is one. */
let stopReading: (() => void) | undefined;

/** Opens a description as one more set; if it cannot be read, nothing is changed. @returns as `openFile` */
function openText(place: OpeningPlace, text: string, name: string): Promise<void> {
  return readDescriptionOf(place, text, name, (problems) => {
    badFile.value = { name, problems };
  });
}

/** Opens a description that was made here. @returns what is wrong with it, if it cannot be opened; then nothing is changed. */
export const openWritten = (place: OpeningPlace, written: unknown, name: string): readonly Problem[] =>
  openReading(place, readWithStandIns(written), name);

/** As `openWritten`, of a description that is read already. */
export function openReading(place: OpeningPlace, reading: Reading, name: string): readonly Problem[] {
  stopReading?.();
  if (!reading.result.ok) return reading.result.problems;
  take(place, reading, name, () => {});
  return [];
}

/** As `openText`, of what was pasted; if it cannot be read, it stays in the dialog. */
export function openPasted(place: OpeningPlace, text: string): Promise<void> {
  pasting.value = undefined;
  return readDescriptionOf(place, text, texts.pasted, (problems) => {
    pasting.value = { text, problems };
  });
}

function readDescriptionOf(place: OpeningPlace, text: string, name: string, refuse: Refuse): Promise<void> {
  stopReading?.();
  if (text.length > SHORT_TEXT) return readBeside(place, { text }, name, text.length, refuse);
  take(place, readDescriptionText(text), name, refuse);
  return Promise.resolve();
}

/** As `openText`, of the set in a link. @param fragment of the address, without "#" */
export function openLink(place: OpeningPlace, fragment: string): Promise<void> {
  const link = textOfLink(fragment);
  if ('text' in link) return openText(place, link.text, texts.fromLink);
  badFile.value = { name: texts.fromLink, problems: [link.problem] };
  return Promise.resolve();
}

/** As `openText`, of a file. @returns resolves once it is open, or refused, or the reading was stopped */
export async function openFile(place: OpeningPlace, file: File): Promise<void> {
  stopReading?.();
  const refuse: Refuse = (problems) => {
    badFile.value = { name: file.name, problems };
  };
  if (file.size > 4 * LARGEST_FILE) refuse([tooLarge(file.size)]);
  else if (file.size > SHORT_TEXT) await readBeside(place, { file }, file.name, file.size, refuse);
  else take(place, await readDescription({ file }), file.name, refuse);
}

/** A worker reads it; meanwhile the page is as it was, and says so with a way to stop. @returns resolves at its end */
function readBeside(
  place: OpeningPlace,
  question: ReadingQuestion,
  name: string,
  size: number,
  refuse: Refuse,
): Promise<void> {
  return new Promise((resolve) => {
    const worker = newReadingWorker();
    const stop = () => {
      worker.terminate();
      dismiss('reading');
      stopReading = undefined;
      resolve();
    };
    stopReading = stop;
    tell(readingWords.reading(name, size), {
      key: 'reading',
      stays: true,
      isBusy: true,
      action: { label: readingWords.cancel, run: stop },
    });
    latestWins<ReadingQuestion, Reading>(worker, (_question, reply) => {
      stop();
      if ('answer' in reply) take(place, reply.answer, name, refuse);
      else
        refuse([
          { path: '', expected: { code: 'readable-file' }, hint: { code: 'system-message', message: reply.error } },
        ]);
    }).ask(question);
  });
}

/** A description whose fields are all there opens, though some are refused: they are marked, as while it was edited. */
function take(place: OpeningPlace, reading: Reading, name: string, refuse: Refuse): void {
  const { result, usable } = reading;
  if (!result.ok && !(usable && isWholeSet(result.problems))) {
    refuse(result.problems);
    return;
  }
  badFile.value = undefined;
  pasting.value = undefined;
  const opened = place.add(reading, name);
  const remarks = result.ok ? result.notes.map(readNote) : [texts.fieldsRefused(result.problems.length)];
  tell(texts.opened(name, remarks), {
    key: 'opened',
    of: opened.id,
    action: { label: texts.backToBefore, run: () => place.back(opened) },
  });
}

export const openExample = (place: OpeningPlace, example: Example): void =>
  void openText(place, example.text, example.file);

interface SavePicker {
  showSaveFilePicker?: (options: object) => Promise<FileSystemFileHandle>;
}

/** Save to the file chosen before, or ask where; browsers that cannot ask download. */
export async function saveFile(set: OpenSet, options: { as?: boolean } = {}): Promise<void> {
  const { whole, fileName, savedWritten, file } = set;
  const now = whole.peek();
  const text = writeText(now);
  const { showSaveFilePicker } = window as SavePicker;
  if (!showSaveFilePicker) {
    download(fileName.peek(), text);
    savedWritten.value = now;
    return;
  }
  try {
    // A step back to another description brings its name back: it is not written over the file of this one.
    if (!file.handle || options.as || file.handle.name !== fileName.peek())
      file.handle = await showSaveFilePicker({
        suggestedName: fileName.peek(),
        types: [{ description: texts.fileKind, accept: { 'application/json': ['.json'] } }],
      });
    const stream = await file.handle.createWritable();
    await stream.write(text);
    await stream.close();
    fileName.value = file.handle.name;
    savedWritten.value = now;
    tell(texts.saved(file.handle.name), { key: 'saved', of: set.id });
  } catch (error) {
    if ((error as Error).name === 'AbortError') return;
    file.handle = undefined;
    tell(texts.notWritten((error as Error).message), {
      key: 'saved',
      of: set.id,
      stays: true,
      action: { label: texts.downloadInstead, run: () => download(fileName.peek(), text) },
    });
  }
}
