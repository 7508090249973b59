import { placeOf, type StageId, valueAtPath } from '../../engine/index.ts';
import { problemWords, setWords } from '../../outputs/words/index.ts';
import { labelAt } from './schema-at.ts';

/** What the stage of the phones is called by what is there in their place. */
export const loadTitle = (kind: string | undefined): string =>
  kind === 'amplifier' || kind === 'crystal earpiece' ? setWords.loads[kind] : setWords.workbenches.phones;

const STAGES: Readonly<Record<string, StageId>> = {
  place: 'field',
  aerial: 'aerial',
  earth: 'aerial',
  coils: 'tuned circuit',
  tuning: 'tuned circuit',
  arrangement: 'tuned circuit',
  bands: 'tuned circuit',
  detector: 'detector',
  load: 'phones',
  ear: 'ear',
};

/** On which workbench a place of the description is edited: "coils[0].turns" is on the tuned circuit's. */
export function stageOf(path: string): StageId {
  const [part, field] = keysOf(path);
  return part === 'load' && (field === 'bypass' || field === 'equalizer') ? 'audio' : (STAGES[part] ?? 'field');
}

/** "tuning.maximum" as the page labels it: "Tuning capacitor › Meshed". */
export function fieldPath(path: string, written?: unknown): string {
  const keys = keysOf(path);
  if (keys.length === 0) return problemWords.wholeDescription;
  const words = keys.flatMap((key, i) => {
    // A list is named by the one of it that is meant.
    if (typeof keys[i + 1] === 'number') return [];
    const at = keys.slice(0, i + 1);
    if (typeof key !== 'number') return [labelAt(written, at)];
    const list = labelAt(written, keys.slice(0, i));
    const name = valueAtPath(written, [...at, 'name']);
    return [typeof name === 'string' && name ? problemWords.quoted(name) : problemWords.itemOf(list, key + 1)];
  });
  return problemWords.path(words);
}

/** What problems call a place of the description: its label, in quotation marks. */
export const nameOf =
  (written: unknown) =>
  (path: string): string =>
    problemWords.quoted(fieldPath(path, written));

/** "coils[0].turns" as keys and places in lists. */
export const keysOf = placeOf;
