import { computed, type ReadonlySignal, signal } from '@preact/signals';
import {
  type BoxDescription,
  type BoxRead,
  isRecord,
  readBoxValue,
  type WrittenBox,
  withValueAt,
} from '../../engine/index.ts';
import { keptBoxWords as boxWords, findView as texts } from '../../outputs/words/index.ts';
import {
  isOfBoxes,
  type KeptBox,
  keepBox,
  keptBox,
  keptBoxIds,
  keptBoxToOpen,
  putKeptBox,
  removeKeptBox,
  unreadableBox,
} from './box-keeper.ts';
import { createDocument, type Document } from './document.ts';
import type { Edited } from './edited.ts';

/** A box of parts that is open: its description with the steps to undo, and what was read of it. */
export interface OpenBox extends Document, Edited {
  readonly id: string;
  readonly reading: ReadonlySignal<BoxRead>;
  /** The last state without problems. */
  readonly understood: ReadonlySignal<{ readonly box: BoxDescription; readonly written: WrittenBox } | undefined>;
  readonly dispose: () => void;
}

/** A box of the shelf. */
interface Shelved {
  readonly id: string;
  readonly name: string;
}

const SHELF_KEY = 'faintwave.boxes';
const OPEN_KEY = 'faintwave.boxes.open';
const EMPTY: WrittenBox = { format: 'faintwave-box/1', name: texts.newBox };
const NO_PROBLEMS: readonly never[] = [];
const NO_STAND_INS = signal<readonly never[]>([]);

/** @param beginning what it begins with; left out: what this browser keeps of it */
function createBox(
  id: string,
  beginning: Pick<KeptBox, 'written' | 'fileName'> = keptBoxToOpen(id) ?? { written: EMPTY, fileName: texts.boxFile },
): OpenBox {
  const document = createDocument(id, beginning.written, beginning.fileName);
  const reading = computed(() => readBoxValue(document.written.value));
  let last: { readonly box: BoxDescription; readonly written: WrittenBox } | undefined;
  const understood = computed(() => {
    const now = reading.value;
    if (now.ok) last = { box: now.box, written: now.written };
    return last;
  });
  const box = {
    ...document,
    id,
    reading,
    understood,
    standIns: NO_STAND_INS,
    problemsAt: (path: string) => {
      const now = reading.value;
      if (now.ok) return NO_PROBLEMS;
      const here = now.problems.filter((problem) => problem.path === path);
      return here.length > 0 ? here : NO_PROBLEMS;
    },
  };
  return { ...box, dispose: keepBox(box) };
}

/** @returns undefined where storage is blocked */
function keptShelf(): readonly Shelved[] | undefined {
  try {
    return listIn(localStorage.getItem(SHELF_KEY) ?? '[]') ?? keptBoxIds().map(listed);
  } catch {
    return undefined;
  }
}

/** @returns undefined where the text is no list */
function listIn(text: string): readonly Shelved[] | undefined {
  try {
    const kept: unknown = JSON.parse(text);
    if (!Array.isArray(kept)) return undefined;
    const boxes = kept.filter((one) => isRecord(one) && typeof one.id === 'string');
    return boxes.map(({ id, name }) => ({ id, name: String(name) }));
  } catch {
    return undefined;
  }
}

const listed = (id: string): Shelved => ({ id, name: nameOf(keptBox(id)?.written) });

const shelf = signal<readonly Shelved[]>(keptShelf() ?? []);
const open = signal<OpenBox | undefined>(undefined);
/** Counts the changes of kept boxes that other tabs made. */
const changesElsewhere = signal(0);

/** The boxes that this browser keeps, the one in view by the name it has now. */
export const shelvedBoxes = computed<readonly Shelved[]>(() => {
  const now = open.value;
  return shelf.value.map((one) => (one.id === now?.id ? { id: one.id, name: nameOf(now.written.value) } : one));
});

/** The box in view; undefined until one is chosen. */
export const openBox: ReadonlySignal<OpenBox | undefined> = open;

function nameOf(written: unknown): string {
  return isRecord(written) && written.name ? String(written.name) : texts.newBox;
}

/** Changes the list as it is kept now: another tab may have changed it. */
function put(change: (boxes: readonly Shelved[]) => readonly Shelved[]): void {
  const boxes = change(keptShelf() ?? shelf.peek());
  shelf.value = boxes;
  try {
    localStorage.setItem(SHELF_KEY, JSON.stringify(boxes));
    localStorage.setItem(OPEN_KEY, open.peek()?.id ?? '');
  } catch {
    // Without storage the boxes last as long as the page; the keeper of each says so.
  }
}

function show(box: OpenBox | undefined): void {
  const before = open.peek();
  // The name by which the shelf lists it from now on.
  const name = before && nameOf(before.written.peek());
  open.value = box;
  put((boxes) => boxes.map((one) => (name !== undefined && one.id === before?.id ? { id: one.id, name } : one)));
  before?.dispose();
}

/** Names no other box, of no other tab either. */
const newBoxId = (): string => `box-${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 10)}`;

/** A box as the shelf lists it. */
export interface BoxEntry extends KeptBox {
  readonly id: string;
  readonly name: string;
  readonly notes: string;
}

/** All boxes that are kept and can be read, changed last first. */
export const boxEntries = computed<readonly BoxEntry[]>(() => {
  void changesElsewhere.value;
  const now = open.value;
  const entries = shelf.value.flatMap(({ id }): BoxEntry[] => {
    const kept = keptBox(id);
    const box = now?.id === id ? { changed: 0, ...kept, ...contentNow(now) } : kept;
    return box ? [{ ...box, id, name: nameOf(box.written), notes: notesOf(box.written) }] : [];
  });
  return entries.sort((a, b) => b.changed - a.changed);
});

/** A box that is kept and cannot be read. */
export interface UnreadableBox extends Shelved {
  readonly text: string;
}

export const unreadableBoxes = computed<readonly UnreadableBox[]>(() => {
  void changesElsewhere.value;
  return shelf.value.flatMap((one) => {
    const text = one.id === open.value?.id ? undefined : unreadableBox(one.id);
    return text === undefined ? [] : [{ ...one, text }];
  });
});

const contentNow = (box: OpenBox): Pick<KeptBox, 'written' | 'fileName'> => ({
  written: box.written.value,
  fileName: box.fileName.value,
});

const notesOf = (written: unknown): string =>
  isRecord(written) && typeof written.notes === 'string' ? written.notes : '';

/** One more box, on the shelf only. @returns whether the browser keeps it */
export function shelveBox(box: KeptBox, id = newBoxId()): boolean {
  if (!putKeptBox(id, box)) return false;
  put((boxes) => [...boxes.filter((one) => one.id !== id), { id, name: nameOf(box.written) }]);
  return true;
}

/** One more box with the same parts, as they are now, on the shelf only. @returns as `shelveBox` */
export function copyBox(entry: BoxEntry): boolean {
  // Another tab may have changed it since it was listed.
  const { written, fileName } = (open.peek()?.id === entry.id ? undefined : keptBox(entry.id)) ?? entry;
  const copied = withValueAt(written, ['name'], boxWords.copyOf(nameOf(written)));
  return shelveBox({ written: copied, fileName, changed: Date.now() });
}

/** One that another tab removed meanwhile stays removed. @returns as `shelveBox` */
export function renameBox({ id }: Pick<BoxEntry, 'id'>, name: string): boolean {
  const now = open.peek();
  if (now?.id !== id) {
    const kept = keptBox(id);
    if (kept)
      return shelveBox({ ...kept, written: withValueAt(kept.written, ['name'], name), changed: Date.now() }, id);
    changesElsewhere.value++;
    return true;
  }
  now.edit(['name'], name, { label: boxWords.renamed });
  put((boxes) => boxes.map((one) => (one.id === id ? { id, name } : one)));
  return true;
}

/** One more box, which comes into view. @param written none: an empty one */
export function addBox(written: unknown = EMPTY, fileName: string = texts.boxFile): void {
  const id = newBoxId();
  show(createBox(id, { written, fileName }));
  put((boxes) => [...boxes, { id, name: nameOf(written) }]);
}

/** Bring the box into view that was in view last. @returns false where none is kept */
export function reopenBox(): boolean {
  let last: string | null = null;
  try {
    last = localStorage.getItem(OPEN_KEY);
  } catch {
    // Without storage nothing is kept.
  }
  const boxes = shelf.peek();
  const found = boxes.find(({ id }) => id === last) ?? boxes[0];
  if (found) chooseBox(found.id);
  return found !== undefined;
}

/** Bring a box of the shelf into view. */
export function chooseBox(id: string): void {
  if (open.peek()?.id !== id && shelf.peek().some((one) => one.id === id)) show(createBox(id));
}

/** Takes a box off the shelf; for the one in view another comes into view. @returns what puts it back */
export function removeBox(id = open.peek()?.id): () => void {
  const box = open.peek();
  if (box?.id !== id) {
    const listedAs = shelf.peek().find((one) => one.id === id);
    if (id === undefined || !listedAs) return () => {};
    const putBack = removeKeptBox(id);
    put((boxes) => boxes.filter((one) => one.id !== id));
    return () => {
      if (putBack()) put((boxes) => [...boxes.filter((one) => one.id !== id), listedAs]);
    };
  }
  if (!box) return () => {};
  const [written, fileName] = [box.written.peek(), box.fileName.peek()];
  show(undefined);
  put((boxes) => boxes.filter(({ id }) => id !== box.id));
  removeKeptBox(box.id);
  const next = shelf.peek().at(0);
  if (next) chooseBox(next.id);
  return () => addBox(written, fileName);
}

/** The list as another tab has changed it; a box that it removed goes from view, it can be put back there. */
function heard({ key }: StorageEvent): void {
  if (isOfBoxes(key)) changesElsewhere.value++;
  if (key !== SHELF_KEY) return;
  shelf.value = [...(keptShelf() ?? shelf.peek())];
  const box = open.peek();
  if (!box || shelf.peek().some(({ id }) => id === box.id)) return;
  const next = shelf.peek().at(0);
  show(next && createBox(next.id));
}
globalThis.addEventListener?.('storage', heard);
