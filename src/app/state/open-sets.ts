import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Reading } from '../description/stand-ins.ts';
import { createBanded, followBands, readingOnBand, type SetBands } from './banded.ts';
import { createCurves, type SetCurves } from './curves.ts';
import { createDocument, type Document } from './document.ts';
import { createFaults, type SetFaults } from './fault-search.ts';
import { createMeasuring, type SetMeasuring } from './measuring.ts';
import { dismissAllOf } from './notices.ts';
import { createReception, type SetReception } from './reception.ts';
import { createSetReading, type SetReading } from './set-reading.ts';
import { createSetView, type SetView } from './set-view.ts';
import type { SetWorkers } from './set-workers.ts';
import { createWanted, type SetWanted } from './wanted.ts';

/** All there is of one open set: its description with the steps to undo, what is looked at, and its figures. */
export interface OpenSet
  extends Document,
    SetReading,
    SetView,
    SetBands,
    SetReception,
    SetWanted,
    SetCurves,
    SetMeasuring,
    SetFaults {
  readonly id: string;
  readonly file: {
    /** The one it is saved to, once one was chosen. */
    handle?: FileSystemFileHandle;
  };
  /** Ends everything it follows and asks. */
  readonly dispose: () => void;
}

/**
 * @param id by which this browser keeps it
 * @param description as written
 * @param hasFocus what only the set in focus needs is worked out only then
 */
function openSet(
  id: string,
  description: unknown,
  fileName: string,
  workers: SetWorkers,
  hasFocus: ReadonlySignal<boolean>,
  read?: Reading,
): OpenSet {
  const document = createDocument(id, description, fileName);
  const reading = createSetReading(document, workers, read);
  const view = createSetView(reading.lastValidSet);
  const banded = createBanded(document, id);
  const onBand = readingOnBand(reading, banded);
  const bands = followBands(reading, banded, view, workers, hasFocus);
  const reception = createReception(onBand.lastValidSet, view, workers, hasFocus);
  const wanted = createWanted(reception.receptionSet, view.time, workers, hasFocus);
  const curves = createCurves(reception, view, workers, hasFocus);
  const measuring = createMeasuring(id);
  const faults = createFaults(id);
  const file: OpenSet['file'] = {};
  return {
    id,
    file,
    ...document,
    ...banded,
    ...reading,
    ...onBand,
    ...view,
    ...bands,
    ...reception,
    ...wanted,
    ...curves,
    ...measuring,
    ...faults,
    dispose() {
      for (const part of [faults, measuring, curves, wanted, reception, bands, banded, view, reading]) part.dispose();
      dismissAllOf(id);
    },
  };
}

/** The id of the set that a browser begins with, and kept before it knew several: the same in every browser. */
export const FIRST_ID = 'first';

/** The sets that are open on the page; one of them is in focus. */
export interface OpenSets {
  readonly all: ReadonlySignal<readonly OpenSet[]>;
  readonly focused: ReadonlySignal<OpenSet>;
  /** One more set, which gets the focus; one that is open under that id already gets it as it is. @param read the description as read, where it is */
  readonly open: (id: string, description: unknown, fileName: string, read?: Reading) => OpenSet;
  /** An id under which no set is open changes nothing. */
  readonly focus: (id: string) => void;
  /** The focus goes to the one opened before it. The last one stays open. */
  readonly close: (id: string) => void;
}

/** @param first the set that the page begins with. */
export function createOpenSets(
  workers: SetWorkers,
  first: { readonly id: string; readonly description: unknown; readonly fileName: string },
): OpenSets {
  const focusId = signal(first.id);
  const begin = (id: string, description: unknown, fileName: string, read?: Reading): OpenSet =>
    openSet(
      id,
      description,
      fileName,
      workers,
      computed(() => focusId.value === id),
      read,
    );
  const all = signal<readonly OpenSet[]>([begin(first.id, first.description, first.fileName)]);
  const setOf = (id: string): OpenSet | undefined => all.peek().find((set) => set.id === id);
  return {
    all,
    focused: computed(() => all.value.find((set) => set.id === focusId.value)!),
    open(id, description, fileName, read) {
      const opened = setOf(id) ?? begin(id, description, fileName, read);
      if (!all.peek().includes(opened)) all.value = [...all.peek(), opened];
      focusId.value = id;
      return opened;
    },
    focus(id) {
      if (setOf(id)) focusId.value = id;
    },
    close(id) {
      const closed = setOf(id);
      if (!closed || all.peek().length === 1) return;
      const index = all.peek().indexOf(closed);
      const left = all.peek().filter((set) => set !== closed);
      if (focusId.peek() === id) focusId.value = left[Math.max(0, index - 1)].id;
      all.value = left;
      closed.dispose();
    },
  };
}
