import { isRecord } from '../../engine/index.ts';
import type { History, Step } from './history.ts';

/** A document as this browser keeps it. */
export interface Kept {
  /** Counts the changes; of two copies the one with more is the later. */
  readonly revision: number;
  /** As written, with what is being typed taken as meant. */
  readonly written: unknown;
  readonly fileName: string;
  /** The file on disk, or the example it was opened from, holds the same. */
  readonly isSaved: boolean;
  /** The last description without problems, when `written` has some. */
  readonly lastValid?: unknown;
  /** Place of the chosen station in the list; left out: the one heard best. */
  readonly station?: number;
  /** The tab that wrote it. */
  readonly tab: string;
  /** The state, as `stateName` names it, that the tab took from elsewhere before its own changes. */
  readonly base?: string;
}

/** Names a state among all that tabs have written of one document. */
export const stateName = ({ revision, tab }: Pick<Kept, 'revision' | 'tab'>): string => `${revision} ${tab}`;

export const keptText = (kept: Kept): string => JSON.stringify(kept);

/** @returns undefined for text that is not a kept document; what earlier versions kept is read too. */
export function readKept(text: string): Kept | undefined {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (!isRecord(value) || !isRecord(value.written)) return undefined;
  const { revision, written, fileName, isSaved, station, tab, base } = value;
  // Earlier versions called it `understood`.
  const lastValid = value.lastValid ?? value.understood;
  return {
    revision: isCount(revision) ? revision : 0,
    written,
    fileName: typeof fileName === 'string' && fileName !== '' ? fileName : 'set.json',
    isSaved: isSaved === true,
    ...(isRecord(lastValid) ? { lastValid } : {}),
    ...(isCount(station) ? { station } : {}),
    tab: String(tab),
    ...(typeof base === 'string' ? { base } : {}),
  };
}

const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && (value as number) >= 0;

/** The steps to undo and redo as they are kept. */
export interface KeptHistory {
  readonly past: readonly Step[];
  readonly present: Step;
  readonly future: readonly Step[];
  /** Which of all steps, past first, the file on disk holds; −1 for none. */
  readonly savedStep: number;
}

const stepsOf = ({ past, present, future }: Pick<History, 'past' | 'present' | 'future'>): readonly Step[] => [
  ...past,
  present,
  ...future,
];

export const keptHistory = (history: History, saved: unknown): KeptHistory => ({
  past: history.past,
  present: history.present,
  future: history.future,
  savedStep: stepsOf(history).findIndex((step) => step.written === saved),
});

/**
 * The history before a document was closed in front of what was done since it was opened again.
 * @param now begins with the document as it was kept.
 * @returns `saved`: what the file on disk holds, if one of the steps is it.
 */
export function continueHistory(before: unknown, now: History): { history: History; saved?: unknown } | undefined {
  if (!isKeptHistory(before)) return undefined;
  const saved = stepsOf(before)[before.savedStep]?.written;
  const opened = (now.past[0] ?? now.present).written;
  const isSame = JSON.stringify(opened) === JSON.stringify(before.present.written);
  // Kept a moment before the document itself: what came after it is one step more.
  const past = isSame ? before.past : [...before.past, before.present];
  if (isSame && now.past.length === 0)
    return { history: { past, present: before.present, future: before.future }, saved };
  return { history: { ...now, past: [...past, ...now.past] }, saved };
}

const isStep = (value: unknown): value is Step => isRecord(value) && isRecord(value.written) && 'label' in value;

function isKeptHistory(value: unknown): value is KeptHistory {
  if (!isRecord(value)) return false;
  const { past, present, future } = value;
  return Array.isArray(past) && past.every(isStep) && isStep(present) && Array.isArray(future) && future.every(isStep);
}
