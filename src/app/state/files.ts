import { signal } from '@preact/signals';
import { LARGEST_FILE, listeningTime, type Problem, textOfLink, tooLarge, writeText } from '../../engine/index.ts';
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

/** Opens a description in place of a set's own; if it cannot be read, the work on the page is untouched. */
function openText(set: OpenSet, text: string, name: string): void {
  readDescriptionOf(set, text, name, (problems) => {
    badFile.value = { name, problems };
  });
}

/** Opens a description that was made here. @returns what is wrong with it, if it cannot be opened; then nothing is changed. */
export function openWritten(set: OpenSet, written: unknown, name: string): readonly Problem[] {
  set.file.stopReading?.();
  const reading = readWithStandIns(written);
  if (!reading.result.ok) return reading.result.problems;
  take(set, reading, name, () => {});
  return [];
}

/** As `openText`, of what was pasted; if it cannot be read, it stays in the dialog. */
export function openPasted(set: OpenSet, text: string): void {
  pasting.value = undefined;
  readDescriptionOf(set, text, texts.pasted, (problems) => {
    pasting.value = { text, problems };
  });
}

function readDescriptionOf(set: OpenSet, text: string, name: string, refuse: Refuse): void {
  set.file.stopReading?.();
  if (text.length > SHORT_TEXT) readBeside(set, { text }, name, text.length, refuse);
  else take(set, readDescriptionText(text), name, refuse);
}

/** As `openText`, of the set in a link. @param fragment of the address, without "#" */
export function openLink(set: OpenSet, fragment: string): void {
  const link = textOfLink(fragment);
  if ('problem' in link) badFile.value = { name: texts.fromLink, problems: [link.problem] };
  else openText(set, link.text, texts.fromLink);
}

/** As `openText`, of a file. */
export async function openFile(set: OpenSet, file: File): Promise<void> {
  set.file.stopReading?.();
  const refuse: Refuse = (problems) => {
    badFile.value = { name: file.name, problems };
  };
  if (file.size > 4 * LARGEST_FILE) refuse([tooLarge(file.size)]);
  else if (file.size > SHORT_TEXT) readBeside(set, { file }, file.name, file.size, refuse);
  else take(set, await readDescription({ file }), file.name, refuse);
}

/** A worker reads it; meanwhile the page is as it was, and says so with a way to stop. */
function readBeside(set: OpenSet, question: ReadingQuestion, name: string, size: number, refuse: Refuse): void {
  const worker = newReadingWorker();
  const stop = () => {
    worker.terminate();
    dismiss('reading', set.id);
    set.file.stopReading = undefined;
  };
  set.file.stopReading = stop;
  tell(readingWords.reading(name, size), {
    key: 'reading',
    of: set.id,
    stays: true,
    isBusy: true,
    action: { label: readingWords.cancel, run: stop },
  });
  latestWins<ReadingQuestion, Reading>(worker, (_question, reply) => {
    stop();
    if ('answer' in reply) take(set, reply.answer, name, refuse);
    else
      refuse([
        { path: '', expected: { code: 'readable-file' }, hint: { code: 'system-message', message: reply.error } },
      ]);
  }).ask(question);
}

/** A description whose fields are all there opens, though some are refused: they are marked, as while it was edited. */
function take(set: OpenSet, reading: Reading, name: string, refuse: Refuse): void {
  const { result, usable, written } = reading;
  if (!result.ok && !(usable && isWholeSet(result.problems))) {
    refuse(result.problems);
    return;
  }
  badFile.value = undefined;
  pasting.value = undefined;
  set.file.handle = undefined;
  set.clearMeasuring();
  set.remember(written, reading);
  set.replace(written, name, texts.openLabel(name));
  set.chooseStation(undefined);
  if (usable) set.time.value = listeningTime(usable.set.place);
  dismiss('another-tab', set.id);
  const remarks = result.ok ? result.notes.map(readNote) : [texts.fieldsRefused(result.problems.length)];
  set.tellOfChange(texts.opened(name, remarks), 'opened', texts.backToBefore);
}

export const openExample = (set: OpenSet, example: Example): void => openText(set, example.text, example.file);

interface SavePicker {
  showSaveFilePicker?: (options: object) => Promise<FileSystemFileHandle>;
}

/** Save to the file chosen before, or ask where; browsers that cannot ask download. */
export async function saveFile(set: OpenSet, options: { as?: boolean } = {}): Promise<void> {
  const { written, fileName, savedWritten, file } = set;
  const now = written.peek();
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
