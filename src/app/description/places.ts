import { type StageId, valueAtPath } from '../../engine/index.ts';
import { labelAt } from './schema-at.ts';

/** What a stage's workbench is called. */
export const WORKBENCH_TITLES: Readonly<Record<StageId, string>> = {
  field: 'The field: where you are and what is on the air',
  aerial: 'Aerial and earth',
  'tuned circuit': 'Tuned circuit',
  detector: 'Detector',
  audio: 'After the detector',
  phones: 'Phones',
  ear: 'At the ear',
};

/** What the stage of the phones is called by what is there in their place. */
export const loadTitle = (kind: string | undefined): string =>
  kind === 'amplifier' ? 'Amplifier' : kind === 'crystal earpiece' ? 'Earpiece' : WORKBENCH_TITLES.phones;

const STAGES: Readonly<Record<string, StageId>> = {
  place: 'field',
  aerial: 'aerial',
  earth: 'aerial',
  coils: 'tuned circuit',
  tuning: 'tuned circuit',
  arrangement: 'tuned circuit',
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
export function fieldWords(path: string, written?: unknown): string {
  const keys = keysOf(path);
  if (keys.length === 0) return 'The whole description';
  const words = keys.flatMap((key, i) => {
    // A list is named by the one of it that is meant.
    if (typeof keys[i + 1] === 'number') return [];
    const at = keys.slice(0, i + 1);
    if (typeof key !== 'number') return [labelAt(written, at)];
    const list = labelAt(written, keys.slice(0, i));
    const name = valueAtPath(written, [...at, 'name']);
    return [typeof name === 'string' && name ? `“${name}”` : `${list} no. ${key + 1}`];
  });
  return words.join(' › ');
}

/** What problems call a place of the description: its label, in quotation marks. */
export const nameOf =
  (written: unknown) =>
  (path: string): string =>
    `“${fieldWords(path, written)}”`;

const keysOf = (path: string): (string | number)[] =>
  path
    .split(/[.[\]]+/)
    .filter(Boolean)
    .map((key) => (/^\d+$/.test(key) ? Number(key) : key));
