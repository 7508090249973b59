import type { Hearing, OutOfRange, StationReception } from '../../../../engine/reception/path/types.ts';
import { formatNumber } from '../../../../engine/units/format.ts';
import { wholeKHz } from '../../figures.ts';
import { interferenceSentence } from './interference.ts';
import { intelligibilityWords, roomWords, verdictTitles, verdictWords } from './verdicts.ts';

const kilohertz = (f: number): string => `${wholeKHz(f)} kHz`;
const level = (dB: number): string => `${formatNumber(Math.round(dB), 4)} dB SPL`;

/** Below this, dB SPL, there is no sound. */
const SILENT = -60;

/** Why a station cannot be tuned in, and what would reach it. */
export const outOfRangeWords = ({ side, end }: OutOfRange): string =>
  side === 'below'
    ? `below the low end of the dial, ${kilohertz(end)}: more turns or more capacitance are needed`
    : `above the high end of the dial, ${kilohertz(end)}: fewer turns or a smaller stray capacitance are needed`;

/** How a programme is heard with no other station. */
export function hearingSentence({
  loudness,
  level: spl,
  margin,
  marginInSilence,
  room,
  intelligibility,
}: Hearing): string {
  const where = roomWords(room);
  if (loudness === 'not heard') {
    if (!(spl > SILENT)) return 'Not heard: no sound reaches the ear.';
    const short = `${Math.max(1, Math.round(-margin))} dB`;
    return marginInSilence >= 0
      ? `Not heard: ${short} below the hearing threshold ${where}, above it in silence.`
      : `Not heard: ${short} below the hearing threshold ${where}.`;
  }
  const above = `${Math.round(margin)} dB above the hearing threshold ${where}`;
  return intelligibility === undefined
    ? `${verdictTitles[loudness]}: ${level(spl)}, ${above}.`
    : `${verdictTitles[loudness]}: ${level(spl)}, ${above}; ${intelligibilityWords(intelligibility)}.`;
}

/**
 * How a station comes through, in a sentence or two.
 * @param options verdict, levels and what disturbs it
 * @returns text
 */
export function stationSentence({
  verdict,
  heard,
  hearing,
  outOfRange,
  disturbance,
}: Pick<StationReception, 'verdict' | 'heard' | 'hearing' | 'outOfRange' | 'disturbance'>): string {
  if (outOfRange) return `Out of range: ${outOfRangeWords(outOfRange)}.`;
  if (!hearing) return `${verdictTitles[verdict]}.`;
  if (!disturbance || heard === 'not heard') return hearingSentence(hearing);
  return verdict === 'masked'
    ? `Masked: ${interferenceSentence(disturbance)} Without it the station would be ${verdictWords[heard]}, at ${level(hearing.level)}.`
    : `${hearingSentence(hearing)} ${interferenceSentence(disturbance)}`;
}
