import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { isRecord, type Path, stillAssumed, withValueAt } from '../../engine/index.ts';
import { editingWords } from '../../outputs/words/index.ts';
import { followStations } from '../description/follow-stations.ts';
import { changeEveryBand } from '../description/on-band.ts';
import { labelAt } from '../description/schema-at.ts';
import { type Settled, settle } from '../description/settle-parts.ts';
import * as History from './history.ts';
import { dismissOnChange, TRIED, tell } from './notices.ts';

export interface EditOptions {
  /** Changes of the same run are one step to undo: a drag, a spell of typing. */
  readonly run?: string;
  readonly label?: string;
}

export interface ChangeOptions extends EditOptions {
  readonly part?: Parameters<typeof settle>[1];
}

/** A change that is being typed and not yet taken. */
export interface PendingChange {
  /** What the description becomes, from what it was before the run. */
  readonly make: (base: unknown) => unknown;
  readonly options: ChangeOptions;
}

/** The description of one set, with its file and the steps to undo. */
export interface Document {
  /** The description as written, unknown keys and all; it may have problems while it is being edited. */
  readonly written: ReadonlySignal<unknown>;
  readonly fileName: Signal<string>;
  /** What the file on disk holds, to say whether there is anything to save. */
  readonly savedWritten: Signal<unknown>;
  readonly isSaved: ReadonlySignal<boolean>;
  readonly undoLabel: ReadonlySignal<string | undefined>;
  readonly redoLabel: ReadonlySignal<string | undefined>;
  /** What is being typed in the field that has the focus. */
  readonly draft: Signal<PendingChange | undefined>;
  /** The history as it would be, were the draft taken now: what is kept when the page closes. */
  readonly historyWithDraft: ReadonlySignal<History.History>;
  readonly writtenWithDraft: ReadonlySignal<unknown>;
  /** The change of one value; undefined removes the key. */
  readonly valueChange: (path: Path, value: unknown, options?: EditOptions) => PendingChange;
  /** Change one value; undefined removes the key. Taps come down with a shortened coil, and back within the same run. */
  readonly edit: (path: Path, value: unknown, options?: EditOptions) => void;
  /** Change the description by a function of what it was before the run. */
  readonly change: (make: PendingChange['make'], options?: ChangeOptions) => void;
  readonly apply: (one: PendingChange) => void;
  /** The latest step comes to something else, made from what was before it; nothing where there are steps to do again. */
  readonly amend: (make: PendingChange['make'], label: string) => void;
  /** Tell what the latest change did, with a way to take it back; it goes when something else is changed. */
  readonly tellOfChange: (text: string, key: string, label?: string) => void;
  readonly endRun: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** Another description in place of this one, as one step that can be undone. @param saved the file on disk holds the same; left out: it does */
  readonly replace: (next: unknown, name: string, label: string, saved?: boolean) => void;
  /** Begin with a description; nothing before it to undo. @param saved the file on disk holds the same. */
  readonly beginWith: (next: unknown, name: string, saved: boolean) => void;
  /** The description as another tab has changed it; all that it changes in one run is one step. */
  readonly follow: (next: unknown, name: string, saved: boolean) => void;
  /** The steps from before the page was closed. @param saved the one that the file on disk holds. */
  readonly restoreHistory: (next: History.History, saved: unknown) => void;
}

/** @param id whose notices of changes these are. */
export function createDocument(id: string, description: unknown, name: string): Document {
  const history = signal(History.begin(description));
  const written = computed(() => history.value.present.written);
  const fileName = signal(name);
  const savedWritten = signal<unknown>(description);
  const isSaved = computed(() => savedWritten.value === written.value);
  const draft = signal<PendingChange | undefined>(undefined);
  const afterDraft = computed(() => draft.value && afterChange(history.value, draft.value));
  const historyWithDraft = computed(() => afterDraft.value?.history ?? history.value);

  /** Under which name a description that was opened stood, so that a step back to it brings its name back. */
  const names = new WeakMap<object, string>();
  const nameStep = (step: unknown, name: string): void => {
    if (isRecord(step)) names.set(step, name);
  };
  const moveTo = (next: History.History): void => {
    history.value = next;
    dismissOnChange(id);
  };
  const stepTo = (next: History.History): void => {
    moveTo(next);
    const { written: now } = next.present;
    const known = isRecord(now) ? names.get(now) : undefined;
    if (known !== undefined) fileName.value = known;
  };
  const undo = (): void => stepTo(History.undo(history.peek()));
  const tellOfChange: Document['tellOfChange'] = (text, key, label = editingWords.undo) =>
    tell(text, { key, of: id, action: { label, run: undo }, untilNextChange: true, stays: key === TRIED });
  const apply = (one: PendingChange): void => {
    // Once taken, what was typed is the very description that is kept already, not a change to it.
    const taken = one === draft.peek() ? afterDraft.peek() : undefined;
    const { history: next, also } = taken ?? afterChange(history.peek(), one);
    moveTo(next);
    if (also.length > 0) tellOfChange(also.join(' '), 'also');
  };
  const AMENDING = 'amend';
  const endRun = (): void => {
    history.value = History.endRun(history.peek());
  };
  const valueChange: Document['valueChange'] = (path, value, options = {}) => ({
    make: (base) => withValueAt(base, path, value),
    options: { label: labelAt(written.peek(), path), ...options, part: path[0] === 'coils' ? 'coils' : 'other' },
  });

  return {
    written,
    fileName,
    savedWritten,
    isSaved,
    undoLabel: computed(() => (history.value.past.length > 0 ? history.value.present.label : undefined)),
    redoLabel: computed(() => history.value.future[0]?.label),
    draft,
    historyWithDraft,
    writtenWithDraft: computed(() => historyWithDraft.value.present.written),
    valueChange,
    edit: (path, value, options) => apply(valueChange(path, value, options)),
    change: (make, options = {}) => apply({ make, options }),
    apply,
    amend: (make, label) => {
      const now = history.peek();
      // A step that was gone back from stays to be gone forward to.
      if (now.past.length === 0 || now.future.length > 0) return;
      const { history: next } = afterChange({ ...now, run: AMENDING }, { make, options: { run: AMENDING, label } });
      moveTo(History.endRun(next));
    },
    tellOfChange,
    endRun,
    undo,
    redo: () => stepTo(History.redo(history.peek())),
    replace(next, name, label, saved = true) {
      nameStep(written.peek(), fileName.peek());
      nameStep(next, name);
      moveTo(History.record(history.peek(), next, label));
      fileName.value = name;
      if (saved) savedWritten.value = next;
    },
    beginWith(next, name, saved) {
      moveTo(History.begin(next));
      fileName.value = name;
      savedWritten.value = saved ? next : undefined;
    },
    follow(next, name, saved) {
      moveTo(History.record(history.peek(), next, editingWords.otherTab, 'another-tab'));
      fileName.value = name;
      savedWritten.value = saved ? next : undefined;
    },
    restoreHistory(next, saved) {
      const wasSaved = isSaved.peek();
      history.value = next;
      if (wasSaved) savedWritten.value = next.present.written;
      else if (saved !== undefined) savedWritten.value = saved;
    },
  };
}

function afterChange(before: History.History, { make, options }: PendingChange) {
  const base = History.baseOf(before, options.run);
  const changed = make(base);
  const alone = options.part ? settleEveryBand(changed, options.part) : { written: changed, also: [] };
  const { written: settled, also } = followStations(base, alone);
  return {
    history: History.record(before, stillAssumed(base, settled), options.label ?? editingWords.change, options.run),
    also,
  };
}

/** What the other bands of a set with a band switch need is brought along too, each thing said once. */
function settleEveryBand(written: unknown, part: Parameters<typeof settle>[1]): Settled {
  const also = new Set<string>();
  const settled = changeEveryBand(written, (standing) => {
    const one = settle(standing, part);
    for (const sentence of one.also) also.add(sentence);
    return one.written;
  });
  return { written: settled, also: [...also] };
}
