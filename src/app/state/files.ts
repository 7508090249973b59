import { signal } from '@preact/signals';
import { listeningTime } from '../../engine/set/listening-time.ts';
import { LARGEST_FILE, type Problem, readText } from '../../engine/set/read.ts';
import { writeText } from '../../engine/set/write.ts';
import { fileName, replace, savedWritten, tellOfChange, written } from './document.ts';
import { download } from './download.ts';
import type { Example } from './examples.ts';
import { dismiss, tell } from './notices.ts';
import { textOfFile } from './text-of-file.ts';
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

/** @returns whether it could be read; if not, the work on the page is untouched. */
export function openText(text: string, name: string): boolean {
  const result = readText(text);
  if (!result.ok) {
    badFile.value = { name, problems: result.problems };
    return false;
  }
  badFile.value = undefined;
  handle = undefined;
  replace(result.written, name, `open ${name}`);
  chooseStation(undefined);
  time.value = listeningTime(result.set.place);
  dismiss('another tab');
  const notes = result.notes.length ? ` ${result.notes.join('. ')}.` : '';
  tellOfChange(`Opened ${name}.${notes}`, 'opened', 'Back to what I had');
  return true;
}

export async function openFile(file: File): Promise<void> {
  if (file.size > 4 * LARGEST_FILE) {
    const received = `${(file.size / 1e6).toFixed(1)} MB`;
    const problem = { path: '', expected: 'a description of at most 2 MB', received, hint: 'choose another file' };
    badFile.value = { name: file.name, problems: [problem] };
    return;
  }
  const read = await textOfFile(file);
  if (read.text === undefined) badFile.value = { name: file.name, problems: [{ path: '', ...read }] };
  else openText(read.text, file.name);
}

export const openExample = (example: Example): boolean => openText(example.text, example.file);

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
        types: [{ description: 'Faintwave set', accept: { 'application/json': ['.json'] } }],
      });
    const stream = await handle.createWritable();
    await stream.write(text);
    await stream.close();
    fileName.value = handle.name;
    savedWritten.value = now;
    tell(`Saved ${handle.name}.`, { key: 'saved' });
  } catch (error) {
    if ((error as Error).name === 'AbortError') return;
    handle = undefined;
    tell(`The file could not be written (${(error as Error).message}).`, {
      key: 'saved',
      stays: true,
      action: { label: 'Download it instead', run: () => download(fileName.peek(), text) },
    });
  }
}
