import { computed, signal } from '@preact/signals';
import { type Path, withValueAt } from '../../engine/index.ts';
import { editingWords } from '../../outputs/words/index.ts';
import { labelAt } from '../description/schema-at.ts';
import { settle } from '../description/settle.ts';
import { DEMO } from './examples.ts';
import * as History from './history.ts';
import { dismissOnChange, tell } from './notices.ts';

const history = signal(History.begin(JSON.parse(DEMO.text) as unknown));

function moveTo(next: History.History): void {
  history.value = next;
  dismissOnChange();
}

/** The description as written, unknown keys and all; it may have problems while it is being edited. */
export const written = computed(() => history.value.present.written);
export const fileName = signal(DEMO.file);
/** What the file on disk holds, to say whether there is anything to save. */
export const savedWritten = signal<unknown>(written.value);
export const isSaved = computed(() => savedWritten.value === written.value);

export const undoLabel = computed(() => (history.value.past.length > 0 ? history.value.present.label : undefined));
export const redoLabel = computed(() => history.value.future[0]?.label);

/** A change that is being typed and not yet taken. */
export interface Change {
  /** What the description becomes, from what it was before the run. */
  readonly make: (base: unknown) => unknown;
  readonly options: ChangeOptions;
}
/** What is being typed in the field that has the focus. */
export const draft = signal<Change | undefined>(undefined);
/** The history as it would be, were the draft taken now: what is kept when the page closes. */
export const historyWithDraft = computed(() =>
  draft.value ? afterChange(history.value, draft.value).history : history.value,
);
export const writtenWithDraft = computed(() => historyWithDraft.value.present.written);

export interface EditOptions {
  /** Changes of the same run are one step to undo: a drag, a spell of typing. */
  readonly run?: string;
  readonly label?: string;
}

/** The change of one value; undefined removes the key. */
export const valueChange = (path: Path, value: unknown, options: EditOptions = {}): Change => ({
  make: (base) => withValueAt(base, path, value),
  options: { label: labelAt(written.peek(), path), ...options, part: path[0] === 'coils' ? 'coils' : 'other' },
});

/** Change one value; undefined removes the key. Taps come down with a shortened coil, and back within the same run. */
export function edit(path: Path, value: unknown, options: EditOptions = {}): void {
  apply(valueChange(path, value, options));
}

export interface ChangeOptions extends EditOptions {
  readonly part?: Parameters<typeof settle>[1];
}

/** Change the description by a function of what it was before the run. */
export function change(make: Change['make'], options: ChangeOptions = {}): void {
  apply({ make, options });
}

export function apply(one: Change): void {
  const { history: next, also } = afterChange(history.peek(), one);
  moveTo(next);
  if (also.length > 0) tellOfChange(also.join(' '), 'also');
}

function afterChange(before: History.History, { make, options }: Change) {
  const changed = make(History.baseOf(before, options.run));
  const { written: settled, also } = options.part ? settle(changed, options.part) : { written: changed, also: [] };
  return { history: History.record(before, settled, options.label ?? editingWords.change, options.run), also };
}

/** Tell what the latest change did, with a way to take it back; it goes when something else is changed. */
export function tellOfChange(text: string, key: string, label: string = editingWords.undo): void {
  tell(text, { key, action: { label, run: undo }, untilNextChange: true });
}

export function endRun(): void {
  history.value = History.endRun(history.peek());
}

export function undo(): void {
  moveTo(History.undo(history.peek()));
}

export function redo(): void {
  moveTo(History.redo(history.peek()));
}

/** Another description in place of this one, as one step that can be undone. */
export function replace(next: unknown, name: string, label: string): void {
  moveTo(History.record(history.peek(), next, label));
  fileName.value = name;
  savedWritten.value = next;
}

/** Begin with a description; nothing before it to undo. @param saved the file on disk holds the same. */
export function beginWith(next: unknown, name: string, saved: boolean): void {
  moveTo(History.begin(next));
  fileName.value = name;
  savedWritten.value = saved ? next : undefined;
}

/** The steps from before the page was closed. @param saved the one that the file on disk holds. */
export function restoreHistory(next: History.History, saved: unknown): void {
  const wasSaved = isSaved.peek();
  history.value = next;
  if (wasSaved) savedWritten.value = next.present.written;
  else if (saved !== undefined) savedWritten.value = saved;
}
