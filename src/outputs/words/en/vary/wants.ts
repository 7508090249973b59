import { type ByKind, byKind } from '../../../../engine/kinds/by-kind.ts';
import type { Verdict } from '../../../../engine/reception/path/types.ts';
import type { Want } from '../../../../engine/set/wants.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import type { WantEffect, WantSuggestion } from '../../../../engine/vary/suggest-for-wants.ts';
import type { HeardChange } from '../../../../engine/vary/suggestion-order.ts';
import type { WantValue } from '../../../../engine/vary/want-values.ts';
import { bandSpan } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { counted } from '../grammar.ts';
import { settingsWords } from './settings.ts';
import { ORDER_FOR_STATION, ORDER_FOR_WANTS, stationsChanged } from './stations-changed.ts';

const hertz = (f: number): string => formatQuantity(f, 'frequency', 2);
/** One decimal below 10 dB. */
const size = (dB: number): string => (Math.abs(dB) < 9.95 ? Math.abs(dB).toFixed(1) : Math.abs(dB).toFixed(0));
const level = (dB: number): string => `${dB < 0 ? '−' : ''}${size(dB)} dB`;
const change = (dB: number): string => `${dB < 0 ? '−' : '+'}${size(dB)} dB`;

const NAMES: ByKind<Want, string> = {
  loudest: ({ station }) => `${station} as loud as possible`,
  clear: ({ station, from, by }) => `${station} clear of ${from} by ${level(by)}`,
  band: ({ from, to }) => `${bandSpan(from, to)} covered`,
  'most stations': () => 'as many stations as possible',
  speech: ({ station, bandwidth }) => `clear speech from ${station}, up to ${hertz(bandwidth)}`,
  'fewest parts': () => 'as few parts as possible',
};

/** What is wanted: "Radio Alder clear of Radio Beech by 30 dB". */
export const wantName = (want: Want): string => byKind(NAMES, want);

const OUT_OF_RANGE = 'out of range';
const NOT_HEARD_WITH_IT = 'not heard with it';
const clearanceWords = (dB: number): string =>
  !Number.isFinite(dB) ? NOT_HEARD_WITH_IT : dB < 0 ? `${size(dB)} dB above it` : `${size(dB)} dB below`;

const FIGURES: ByKind<Want, string, [WantValue]> = {
  loudest: (_, { figure = 0 }) => `${level(figure)} SPL`,
  clear: (_, { figure = 0 }) => clearanceWords(figure),
  band: (_, { covered = [0, 0] }) => bandSpan(covered[0], covered[1]),
  'most stations': (_, { figure = 0 }) => counted(figure, 'station', 'stations'),
  speech: (_, { figure = 0 }) => hertz(figure),
  'fewest parts': (_, { figure = 0 }) => counted(figure, 'part', 'parts'),
};

const UNHEARD: Readonly<Partial<Record<Verdict, string>>> = {
  'not heard': 'not heard',
  masked: 'masked by another station',
};
/** Why the station is not heard; undefined where it is. */
const unheardAs = ({ verdict }: WantValue): string | undefined => verdict && UNHEARD[verdict];

/** A level is that of a station that is heard; any other figure stands beside the verdict. */
function figureWords(value: WantValue): string {
  const { want } = value;
  const unheard = unheardAs(value);
  const figure = byKind(FIGURES, want, value);
  if (unheard === undefined) return figure;
  if (want.kind === 'loudest') return unheard;
  return want.kind === 'clear' ? `${figure}, ${want.station} ${unheard}` : `${figure}, ${unheard}`;
}

/** What a set gives of a want: "14 dB below"; "470–1582 kHz"; "out of range"; "not heard"; of one with bands "14 dB below on Long wave". */
export const wantFigure = (value: WantValue): string =>
  value.figure === undefined || value.verdict === 'out of range'
    ? OUT_OF_RANGE
    : `${figureWords(value)}${value.band === undefined ? '' : ` on ${printable(value.band)}`}`;

/** Met, not met, or the figure alone where the want sets no limit: "✓ 43 dB SPL". */
export const wantState = (value: WantValue): string =>
  value.isMet === undefined ? wantFigure(value) : `${value.isMet ? '✓' : '✗'} ${wantFigure(value)}`;

/** For those who do not see the mark. */
export const wantMetWords = ({ isMet }: WantValue): string | undefined =>
  isMet === undefined ? undefined : isMet ? 'met' : 'not met';

/** Less is the same, dB. */
const SAME = 0.05;

const EFFECTS: ByKind<Want, string, [WantEffect]> = {
  loudest: ({ station }, { before, after }) =>
    before.figure === undefined || after.figure === undefined || isOtherwiseHeard(before, after)
      ? moved(station, before, after)
      : Math.abs(after.figure - before.figure) < SAME
        ? `${station} as loud as before`
        : `${station} ${change(after.figure - before.figure)}`,
  clear: ({ from }, { before, after }) =>
    wantFigure(before) === wantFigure(after)
      ? `${from} still ${wantFigure(after)}`
      : before.figure === undefined ||
          after.figure === undefined ||
          !Number.isFinite(before.figure + after.figure) ||
          isOtherwiseHeard(before, after) ||
          before.figure < 0 ||
          after.figure < 0
        ? moved(from, before, after)
        : `${from} ${size(before.figure)} → ${size(after.figure)} dB below`,
  band: ({ from, to }, { before, after }) =>
    after.isMet
      ? `range ${bandSpan(from, to)} ${before.isMet ? 'still covered' : 'now covered'}`
      : wantFigure(before) === wantFigure(after)
        ? `range still ${wantFigure(after)}`
        : `range ${wantFigure(before)} → ${wantFigure(after)}`,
  'most stations': (_, effect) => countEffect(effect),
  speech: ({ station }, { before, after }) =>
    wantFigure(before) === wantFigure(after)
      ? `audio bandwidth of ${station} still ${wantFigure(after)}`
      : `audio bandwidth of ${station} ${wantFigure(before)} → ${wantFigure(after)}`,
  'fewest parts': (_, effect) => countEffect(effect),
};

const isOtherwiseHeard = (before: WantValue, after: WantValue): boolean =>
  (unheardAs(before) === undefined) !== (unheardAs(after) === undefined);

const countEffect = ({ before, after }: WantEffect): string =>
  before.figure === after.figure ? `still ${wantFigure(after)}` : `${before.figure ?? 0} → ${wantFigure(after)}`;

const moved = (what: string, before: WantValue, after: WantValue): string =>
  `${what} ${wantFigure(before)} → ${wantFigure(after)}`;

/** What a change does to a want: "Radio Beech 14 → 22 dB below"; "range 531–1602 kHz still covered". */
const wantEffect = (effect: WantEffect): string => byKind(EFFECTS, effect.after.want, effect);

/** A smaller change of a level is within what building to the same plan twice gives, dB. */
const WORTH_SAYING = 0.5;

/** What a suggestion does to all wants, in their order, to other loudness, and to the stations that are heard. */
export const wantEffects = ({
  effects,
  loudness,
  ...heard
}: Pick<WantSuggestion, 'effects' | 'loudness' | keyof HeardChange>): string =>
  [
    ...effects.map(wantEffect),
    ...loudness
      .filter((one) => Math.abs(one.change) >= WORTH_SAYING)
      .map((one) => `${one.station} ${change(one.change)}`),
    ...stationsChanged(heard),
  ].join(', ');

const TRADE_OFF = 'Trade-off, as nothing else brings one of the wants nearer';

/** One suggestion: "Distance of the coils 40 mm (now 10 mm): Radio Alder −0.1 dB, Radio Beech 14 → 22 dB below". */
export const wantSuggestionWords = (suggestion: WantSuggestion): string =>
  `${suggestion.isTradeOff ? `${TRADE_OFF}: ` : ''}${settingsWords(suggestion)}: ${wantEffects(suggestion)}`;

/** The line of wants on the page, and in the answer of a command. */
export const wantTexts = {
  iWant: 'I want',
  keep: 'Keep',
  add: 'Add a want',
  edit: (want: string): string => `Edit: ${want}`,
  remove: 'Remove this want',
  done: 'Done',
  removeKept: (part: string): string => `Do not keep: ${part}`,
  keepPart: 'Keep: suggestions leave this part as it is',
  station: 'Station',
  from: 'Clear of',
  suggestions: 'Suggestions for what you want',
  order: ORDER_FOR_WANTS,
  orderForStation: ORDER_FOR_STATION,
  trying: 'Trying changes…',
  best: (what: string): string => `Best: ${what}.`,
  tryIt: 'Try',
  tryBest: (what: string): string => `Try the best: ${what}`,
  allMet: 'All wants are met; none of the changes tried gives more.',
  nothing: 'None of the changes tried serves these wants.',
  tradeOff: TRADE_OFF,
  label: (want: string, state: string): string => `${want}: ${state}`,
  added: 'wants',
} as const;
