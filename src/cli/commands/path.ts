import {
  assumedIn,
  audioLimits,
  hasRanges,
  nextMeasurements,
  placeOf,
  receiveRanged,
  type SetDescription,
  type StationReception,
  type Suggestion,
  suggest,
  suggestForWants,
  type Trials,
  trialsOf,
  valueAtPath,
  wantValuesOnBands,
} from '../../engine/index.ts';
import { clean, cleanLines, pathTable, stationsTable } from '../../outputs/tables/index.ts';
import {
  audioLimitSentences,
  budgetSentence,
  type CommandOptions,
  cautionTexts,
  chanceSentence,
  cliNotes,
  interferenceSentence,
  jsonText,
  measureAnswer,
  moreDisturbancesSentence,
  nextMeasurementText,
  pathAnswer,
  receptionSummary,
  stationSentence,
  suggestionWords,
  uncertaintyHeading,
  wantName,
  wantState,
  wantSuggestionWords,
  wantTexts,
  warningSentences,
  writtenReception,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { chooseStation } from '../choose-station.ts';
import { packagedCoastFor } from '../coast.ts';
import type { Command, Io } from '../command.ts';
import { readWrittenSet } from '../read-set.ts';
import { MOST_ADVISED, suggestionsFor } from '../suggestions.ts';
import { timeOfDay } from '../time-of-day.ts';
import { withWants } from '../wants.ts';

const OPTIONS = {
  station: { type: 'string' },
  all: { type: 'boolean' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  want: { type: 'string', multiple: true },
  keep: { type: 'string', multiple: true },
  json: { type: 'boolean' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'path'>;

export const path: Command = {
  name: 'path',
  options: OPTIONS,
  examples: [
    'faintwave path examples/medium-wave-galena.json',
    'faintwave path examples/long-wave-foil.json --station 198',
    "faintwave path examples/medium-wave-galena.json --want 'band 531-1602' --want 'most stations' --keep load",
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const read = await readWrittenSet(file, io, values.switch);
    const set = withWants(read, values);
    const assumed = assumedIn(read.written)
      .map((place) => ({ place, value: valueAtPath(read.written, placeOf(place)) }))
      .filter(({ value }) => value !== undefined);
    const when = { time: timeOfDay(values, set.place), coast: packagedCoastFor(set.place) };
    const also = values.station === undefined ? undefined : chooseStation(set.place.stations, values.station);
    const reception = receiveRanged(set, { ...when, also: also === undefined ? [] : [also] });
    const trials = trialsOf(set, when);
    if (values.json) {
      const onProgress = (share: number): void => io.progress('suggestions', share);
      const suggestions = suggestionsFor(trials, reception, { also, onProgress });
      const wants = wantsAnswer(trials);
      if (reception.stations.length > MOST_ADVISED)
        io.err(`${cliNotes.suggestionsFor(MOST_ADVISED, reception.stations.length)}\n`);
      io.data(`${jsonText({ ...writtenReception(reception), assumed, suggestions, ...wants })}\n`);
      return 0;
    }
    io.out(
      `${pathAnswer.title(clean(set.name), clean(set.place.name))}\n\n${cleanLines(receptionSummary(reception))}\n\n`,
    );
    if (assumed.length > 0) io.out(`${cleanLines(pathAnswer.assumed(assumed))}\n\n`);
    if (reception.stations.length === 0) return 0;
    printWants(trials, io);
    if (!values.all) {
      const index = also ?? chooseStation(reception.stations, values.station, reception.best[0]);
      printStation(set, reception.stations[index], (set.wants ?? []).length > 0 ? [] : suggest(trials, index), io);
      const limits = audioLimits(trials.now.receiver, trials.now.tuned(index));
      const sentences = audioLimitSentences({ ...limits, distortion: reception.stations[index].distortion }).map(
        (sentence) => `  ${sentence}`,
      );
      io.out(`${pathAnswer.audio}\n${sentences.join('\n')}\n\n`);
    }
    io.out(`${pathAnswer.stations}\n${stationsTable(reception.stations, io.width)}\n`);
    for (const warning of warningSentences(reception.warnings)) io.out(`\n⚠ ${warning}`);
    if (!values.all) io.out(`\n${reception.cautions.map(({ code }) => `! ${cautionTexts[code]}`).join('\n')}\n`);
    return 0;
  },
};

/** Wants with what the set gives of them, and what would serve them; nothing for a set that wants nothing. */
function wantsAnswer(trials: Trials) {
  if ((trials.now.set.wants ?? []).length === 0) return {};
  const suggestions = suggestForWants(trials).map((one) => ({ ...one, sentence: wantSuggestionWords(one) }));
  return { wants: wantValuesOnBands(trials), suggestionsForWants: suggestions };
}

function printWants(trials: Trials, io: Io): void {
  const { wants, suggestionsForWants } = wantsAnswer(trials);
  if (!wants) return;
  const lines = wants.map((value) => `  ${wantTexts.label(wantName(value.want), wantState(value))}`);
  io.out(`${wantTexts.iWant}\n${cleanLines(lines.join('\n'))}\n\n`);
  const advice = suggestionsForWants.map(({ sentence }) => `  ${clean(sentence)}`);
  const none = wants.every(({ isMet }) => isMet !== false) ? wantTexts.allMet : wantTexts.nothing;
  const order = advice.length > 1 ? `  ${wantTexts.order}\n` : '';
  io.out(`${wantTexts.suggestions}\n${order}${advice.length > 0 ? advice.join('\n') : `  ${none}`}\n\n`);
}

/** Measurements that are named under a station. */
const MOST_NEXT = 2;

function printStation(
  set: SetDescription,
  station: StationReception,
  suggestions: readonly Suggestion[],
  io: Io,
): void {
  io.out(`${clean(pathAnswer.station(station, stationSentence(station)))}\n${pathTable(station, io.width)}\n`);
  for (const d of station.disturbances.slice(0, 3)) io.out(`  ${clean(interferenceSentence(d))}\n`);
  if (hasRanges(station)) {
    const chance = chanceSentence(station);
    if (chance) io.out(`  ${chance}\n`);
    if (station.budget.length > 0)
      io.out(
        `${uncertaintyHeading}\n${station.budget
          .slice(0, 3)
          .map((item) => `  ${budgetSentence(item)}\n`)
          .join('')}`,
      );
    const next = nextMeasurements(set, station).slice(0, MOST_NEXT);
    if (next.length > 0)
      io.out(`${measureAnswer.next}\n${next.map((one) => `  ${nextMeasurementText(one)}\n`).join('')}`);
  }
  const more = moreDisturbancesSentence(station.moreDisturbances);
  if (more) io.out(`  ${more}\n`);
  if (suggestions.length > 0)
    io.out(`${pathAnswer.suggestions}\n${suggestions.map((one) => `  ${clean(suggestionWords(one))}`).join('\n')}\n`);
  for (const warning of warningSentences(station.warnings)) io.out(`⚠ ${warning}\n`);
  io.out('\n');
}
