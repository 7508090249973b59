import type { StageId } from '../../engine/reception/types.ts';
import { wordsOf } from '../editing/schema-at.ts';

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

/** Where on the page a place of the description is edited: "coils[0].turns" is on the tuned circuit's workbench. */
export function stagePlace(path: string): { readonly stage: StageId; readonly words: string } {
  const keys = path.split(/[.[\]]+/).filter(Boolean);
  const stage =
    keys[0] === 'load' && (keys[1] === 'bypass' || keys[1] === 'equalizer') ? 'audio' : (STAGES[keys[0]] ?? 'field');
  const words = keys
    .map((key) => (/^\d+$/.test(key) ? `no. ${Number(key) + 1}` : wordsOf(key).toLowerCase()))
    .join(', ');
  return { stage, words: words ? words.charAt(0).toUpperCase() + words.slice(1) : 'The whole description' };
}
