import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { Outlook, Suggestion } from '../../../../engine/vary/suggest.ts';
import { bandwidthText } from '../../figures.ts';
import { listOf } from '../grammar.ts';
import { settingsWords } from './settings.ts';
import { stationsChanged } from './stations-changed.ts';

const decibels = (level: number): string => formatQuantity(level, 'level');
/** Of a station over another: no sign where it stands above. */
const over = (clearance: number): string => `${formatNumber(Math.round(clearance), 3)} dB`;

/** Both sidebands of a programme, Hz: a circuit narrower than this takes treble, and widening it is the cure. */
const PROGRAMME = 9e3;
const treble = (before: number, after: number): string =>
  Math.min(before, after) >= PROGRAMME ? '' : after > before ? '; less treble loss' : '; more treble loss';

/** What a change of clearance does is less than one can read of it: then it is for the loudness. */
const isAsClear = ({ wish, before, after }: Suggestion): boolean =>
  wish === 'clearance' && over(before.clearance) === over(after.clearance);

/** What a change does to a station besides what it is for. */
function consequences(suggestion: Suggestion): string[] {
  const { wish, before, after, ...heard } = suggestion;
  const quieter = before.level - after.level;
  const isBesides = wish === 'clearance' && !isAsClear(suggestion);
  return [
    ...(isBesides && quieter >= 1 ? [`${formatNumber(Math.round(quieter))} dB quieter`] : []),
    ...(isBesides && quieter <= -1 ? [`${formatNumber(Math.round(-quieter))} dB louder`] : []),
    ...(after.bandwidth > 1.2 * before.bandwidth || after.bandwidth < before.bandwidth / 1.2
      ? [
          `bandwidth ${bandwidthText(after.bandwidth)} (now ${bandwidthText(before.bandwidth)}${treble(before.bandwidth, after.bandwidth)})`,
        ]
      : []),
    ...stationsChanged(heard),
  ];
}

/** What a suggestion is for, in figures: "+4.6 dB"; "clearance 14 dB (now −1 dB)"; "within reach of the dial". */
export function suggestionEffect(suggestion: Suggestion): string {
  const { wish, gain, before, after } = suggestion;
  if (wish === 'reach')
    return after.heard === 'not heard' ? 'within reach of the dial, not heard' : 'within reach of the dial';
  if (isAsClear(suggestion)) return decibels(after.level - before.level);
  if (wish === 'clearance') return clearanceWords(before, after);
  return `${decibels(gain ?? 0)}`;
}

const clearanceWords = (before: Outlook, after: Outlook): string =>
  Number.isFinite(after.clearance)
    ? `clearance ${over(after.clearance)} (now ${over(before.clearance)})`
    : `clear of all others (now ${over(before.clearance)})`;

/**
 * One suggestion: "Detector tap at 13 turns (now 18): +0.8 dB, bandwidth 22 kHz (now 33 kHz)".
 * @param suggestion as `suggest` has it
 * @returns one line of text
 */
export const suggestionWords = (suggestion: Suggestion): string =>
  `${settingsWords(suggestion)}: ${[suggestionEffect(suggestion), ...consequences(suggestion)].join(', ')}`;

/** What else it changes, for better or worse, for a line of its own; nothing where that is nothing much. */
export const suggestionEffects = (suggestion: Suggestion): string | undefined => {
  const all = consequences(suggestion);
  return all.length > 0 ? listOf(all) : undefined;
};
