import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { QuantityKind } from '../../../../engine/units/parse.ts';
import type { Exchange, ExchangedPart, SetDifference } from '../../../../engine/vary/compare-sets.ts';
import { bandSpan, kHz } from '../../figures.ts';
import { counted, listOf } from '../grammar.ts';
import { setLetter } from '../set-letter.ts';

const PARTS: Record<ExchangedPart, string> = {
  aerial: 'the aerial',
  earth: 'the earth',
  coils: 'the coils',
  tuning: 'the tuning capacitor',
  arrangement: 'the arrangement',
  detector: 'the detector',
  load: 'the load',
  'coils-arrangement': 'the coils and how they are connected',
  'aerial-coils-arrangement': 'the aerial, the coils and how they are connected',
};

interface SettingWords {
  readonly name: string;
  readonly kind?: QuantityKind | 'turns';
  readonly more: string;
  readonly less: string;
}
const sized = (name: string, kind?: SettingWords['kind'], more = 'larger', less = 'smaller'): SettingWords => ({
  name,
  kind,
  more,
  less,
});

/** Settings of an arrangement, by their key in the description. */
const SETTINGS: Readonly<Record<string, SettingWords>> = {
  detectorTap: sized('detector tap', 'turns', 'higher', 'lower'),
  aerialTap: sized('aerial tap', 'turns', 'higher', 'lower'),
  seriesCapacitor: sized('series capacitor', 'capacitance'),
  parallelCapacitor: sized('parallel capacitor', 'capacitance'),
  distance: sized('distance between the coils', 'length'),
  coupling: sized('coupling', 'ratio', 'closer', 'looser'),
  tilt: sized('angle between the coils', 'angle'),
  fewest: sized('fewest turns of the slider', 'turns'),
  traps: sized('wave traps'),
  aerialTuning: sized('aerial tuning'),
  ganged: sized('ganging'),
  elements: sized('list of elements'),
};

const settingWords = (key: string): SettingWords => SETTINGS[key] ?? sized(key);

const figure = (value: unknown, kind?: SettingWords['kind']): string | undefined => {
  if (value === undefined) return 'none';
  if (typeof value !== 'number') return undefined;
  if (kind === 'turns') return counted(value, 'turn', 'turns');
  return kind === undefined ? formatNumber(value, 3) : formatQuantity(value, kind, 3);
};

/** "the higher detector tap", "the coils". */
export function exchangeName({ part, setting }: Pick<Exchange, 'part' | 'setting'>): string {
  if (!setting) return PARTS[part];
  const { name, more, less } = settingWords(setting.key);
  if (typeof setting.from !== 'number' || typeof setting.to !== 'number') return `the ${name}`;
  return `the ${setting.to > setting.from ? more : less} ${name}`;
}

const dB = (level: number): string => formatQuantity(Math.abs(level), 'level', 2).replace('+', '');
const widthWords = (ratio: number): string =>
  Math.abs(Math.log(ratio)) < 0.005 ? 'bandwidth unchanged' : `bandwidth times ${formatNumber(ratio, 2)}`;

/** Smaller differences are not heard. */
const SAME_LEVEL = 0.5;
const SAME_WIDTH = 1.05;

function loudnessWords(level: number, than: string): string {
  if (Math.abs(level) < SAME_LEVEL) return `as loud as ${than}`;
  return `${dB(level)} ${level > 0 ? 'louder' : 'quieter'} than ${than}`;
}

function selectivityWords(bandwidth: number): string {
  const wider = Math.max(bandwidth, 1 / bandwidth);
  if (wider < SAME_WIDTH) return 'as selective';
  const isTwice = wider > 1.8 && wider < 2.25;
  if (isTwice) return bandwidth > 1 ? 'half as selective' : 'twice as selective';
  return `${bandwidth > 1 ? 'less' : 'more'} selective (${widthWords(bandwidth)})`;
}

/** What accounts for most of a difference: one piece for half of it or more, else two. */
function causes(exchanges: readonly Exchange[], total: number, of: (exchange: Exchange) => number): string {
  const same = exchanges.filter((one) => of(one) * total > 0).sort((a, b) => Math.abs(of(b)) - Math.abs(of(a)));
  const [most, next] = same;
  if (!most || Math.abs(of(most)) < 0.2 * Math.abs(total)) return '';
  if (Math.abs(of(most)) >= 0.6 * Math.abs(total) || !next) return `, mostly because of ${exchangeName(most)}`;
  return `, because of ${listOf([exchangeName(most), exchangeName(next)])}`;
}

const levelOf = ({ level = 0 }: Exchange): number => level;
const widthOf = ({ bandwidth = 1 }: Exchange): number => Math.log(bandwidth);

interface Named {
  readonly name: string;
  readonly frequency: number;
}

export const setsComparedText = {
  letter: setLetter,
  station: ({ name, frequency }: Named): string => `${name}, ${kHz(frequency)} kHz`,
  title: ({ name, frequency }: Named, place: string): string => `${name}, ${kHz(frequency)} kHz, at ${place}`,
  name: (index: number, name: string): string => `${setLetter(index)}  ${name}`,
  /** "B is 6 dB louder than A and half as selective, mostly because of the higher detector tap." */
  difference: (index: number, { level, bandwidth, exchanges }: SetDifference): string => {
    const set = setLetter(index);
    if (exchanges.length === 0) return `${set} has the same parts as A, and gives the same.`;
    if (level === undefined || bandwidth === undefined)
      return `${set} and A cannot be compared on this station: one of them does not tune to it.`;
    const louder = causes(exchanges, level, levelOf);
    const broader = causes(exchanges, Math.log(bandwidth), widthOf);
    const isLoud = Math.abs(level) >= SAME_LEVEL;
    const isBroad = Math.max(bandwidth, 1 / bandwidth) >= SAME_WIDTH;
    const [loudness, selectivity] = [loudnessWords(level, 'A'), selectivityWords(bandwidth)];
    if (isLoud && isBroad && louder !== broader)
      return `${set} is ${loudness}${louder}; it is ${selectivity}${broader}.`;
    return `${set} is ${loudness} and ${selectivity}${isLoud ? louder : isBroad ? broader : ''}.`;
  },
  /** A line for each piece that differs. */
  exchange: (exchange: Exchange): string => {
    const { setting, level, bandwidth } = exchange;
    const words = setting && settingWords(setting.key);
    const [to, from] = [figure(setting?.to, words?.kind), figure(setting?.from, words?.kind)];
    const name = exchangeName(exchange);
    const values = setting && to && from ? ` (${to} in place of ${from})` : '';
    if (level === undefined || bandwidth === undefined)
      return `${name}${values}: cannot be exchanged by itself, or the station is then out of range`;
    const loud = Math.abs(level) < 0.05 ? 'no change of level' : `${level > 0 ? '+' : '−'}${dB(level)}`;
    return `${name}${values}: ${loud}, ${widthWords(bandwidth)}`;
  },
  exchanged: (index: number): string =>
    `What ${setLetter(index)} has in place of A’s, each exchanged alone and retuned:`,
  moved: (indices: readonly number[]): string =>
    `${listOf(indices.map(setLetter))} ${indices.length === 1 ? 'has' : 'have'} another place or room in the description; here all are at the place of A.`,
  headings: { difference: 'Difference', path: 'Path', dials: 'Stations', parts: 'Parts' },
  rows: {
    stage: 'stage',
    heard: 'heard',
    scale: 'on the scale',
    loadedQ: 'loaded Q',
    bandwidth: 'bandwidth (−3 dB)',
    range: 'tuning range',
    part: 'part',
    aerial: 'aerial',
    earth: 'earth',
    coils: 'coils',
    tuning: 'tuning',
    arrangement: 'arrangement',
    detector: 'detector',
    load: 'load',
    station: 'station',
    frequency: 'kHz',
  },
  /** A part from the pieces of its label. */
  part: (pieces: readonly string[]): string => pieces.join(', '),
  coils: (coils: readonly string[]): string => coils.join('; ') || '—',
  outOfRange: 'out of range',
  /** Where and how a station is on a set's scale. */
  onScale: (degrees: number, verdict: string): string => `${Math.round(degrees)}°, ${verdict}`,
  tuningRange: bandSpan,
} as const;
