import type { Disturbance, StationReception } from '../../../../engine/reception/path/types.ts';
import { printable } from '../../printable.ts';
import { plural } from '../grammar.ts';
import { verdictWords } from './verdicts.ts';

/** What another station does to the one wanted, in a word or two. */
export const interferenceWords: Readonly<Record<Disturbance['effect'], string>> = {
  none: 'clear',
  behind: 'heard behind it',
  interferes: 'interferes',
  masks: 'masks it',
};

/** A station by name and channel: "Radio Corvale (612 kHz)". */
const stationAt = ({ by, frequency }: Disturbance): string => `${printable(by)} (${Math.round(frequency / 1e3)} kHz)`;

const kilohertz = (f: number): string => `${(f / 1e3).toFixed(1)} kHz`;

const BY_PROGRAMME: Readonly<Record<Disturbance['effect'], (who: string, dB: string) => string>> = {
  none: (who, dB) => `${who} is ${dB} weaker and does not interfere.`,
  behind: (who, dB) => `${who} is heard behind it, ${dB} weaker.`,
  interferes: (who, dB) => `${who} interferes, only ${dB} weaker.`,
  masks: (who, dB) => `${who} is almost as loud, ${dB} weaker.`,
};

const BY_WHISTLE: Readonly<Record<Disturbance['effect'], (who: string, tone: string) => string>> = {
  none: (who, tone) => `The carriers of ${who} and this station beat at ${tone}; the whistle does not interfere.`,
  behind: (who, tone) => `The carriers of ${who} and this station beat: a whistle of ${tone} is heard behind it.`,
  interferes: (who, tone) => `The carriers of ${who} and this station beat: a whistle of ${tone} interferes.`,
  masks: (who, tone) => `The carriers of ${who} and this station beat: a whistle of ${tone} masks it.`,
};

/**
 * What another station does to the one wanted, in a sentence or two.
 * @param disturbance by which station, and how strong
 * @returns text
 */
export function interferenceSentence(disturbance: Disturbance): string {
  const { audioRatio, separation, effect, whistle } = disturbance;
  const who = stationAt(disturbance);
  const dB = `${Math.abs(Math.round(audioRatio))} dB`;
  // The beat tells, where the programme alone would do less.
  if (whistle !== undefined && separation < audioRatio) return BY_WHISTLE[effect](who, kilohertz(whistle));
  const sentence = audioRatio < 0 ? `${who} masks it, ${dB} stronger.` : BY_PROGRAMME[effect](who, dB);
  return whistle === undefined
    ? sentence
    : `${sentence} The two carriers beat: a whistle of ${kilohertz(whistle)} is heard.`;
}

const BEHIND: Readonly<Record<Disturbance['effect'], (by: string, alone: string) => string>> = {
  none: () => '',
  behind: (by) => `${by} heard behind it`,
  interferes: (by) => `interference from ${by}`,
  masks: (by, alone) => `by ${by}; ${alone} without it`,
};

/** In a few words, what else is heard with a station, and what it would be without; empty where nothing is. */
export function besideWords({
  verdict,
  heard,
  disturbance,
}: Pick<StationReception, 'verdict' | 'heard' | 'disturbance'>): string {
  if (!disturbance || verdict === 'not heard' || verdict === 'out of range') return '';
  return BEHIND[disturbance.effect](printable(disturbance.by), verdictWords[heard]);
}

/** What is said of the stations that are not listed beside one; undefined where all are. */
export const moreDisturbancesSentence = (more: number): string | undefined =>
  more > 0
    ? `${more} more ${plural(more, 'station is', 'stations are')} within 40 dB of it at the detector.`
    : undefined;
