import {
  type Answered,
  answersTo,
  type BuiltSet,
  builtSet,
  type FaultModel,
  faultModel,
  NOT_POSSIBLE,
  type ObservedAnswer,
  type PossibleCheck,
  readAnswer,
  readObserved,
  stationsObserved,
  writtenCheck,
} from '../../engine/index.ts';
import { faultSearch, type ShownNext } from '../../outputs/faults/index.ts';
import { faultSheet, sheetSvg, sheetsPdf } from '../../outputs/sheets/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import {
  answerHelp,
  answerText,
  type CommandOptions,
  callProblems,
  checkName,
  checkText,
  cliNotes,
  faultAnswer,
  faultCautionTexts,
  faultText,
  jsonText,
  namedOnBand,
  ohmPlaceText,
  problemSentence,
  remedyTexts,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError, type Io } from '../command.ts';
import { endingOf } from '../ending.ts';
import { paperOption } from '../paper-option.ts';
import { pdfFonts } from '../pdf-fonts.ts';
import { readSet } from '../read-set.ts';
import { timeOfDay } from '../time-of-day.ts';

const OPTIONS = {
  observed: { type: 'string' },
  sheet: { type: 'string' },
  paper: { type: 'string' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  json: { type: 'boolean' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'fault'>;

/** How many checks are asked for after one another. */
const MOST_ASKED = 16;

export const fault: Command = {
  name: 'fault',
  options: OPTIONS,
  examples: [
    'faintwave fault examples/medium-wave-galena.json',
    'faintwave fault examples/medium-wave-galena.json --observed examples/observed/medium-wave-galena.json',
    'faintwave fault examples/medium-wave-galena.json --observed examples/observed/medium-wave-galena.json --json',
    'faintwave fault examples/medium-wave-galena.json --sheet faults.pdf',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const ending = values.sheet === undefined ? undefined : endingOf(values.sheet, ['pdf', 'svg'], '--sheet');
    for (const option of ['observed', 'json'] as const)
      if (ending !== undefined && values[option] !== undefined)
        throw new InputError(callProblems.notWithSheet(`--${option}`));
    if (ending === undefined && values.paper !== undefined) throw new InputError(callProblems.needsSheet('--paper'));
    const paper = paperOption(values.paper);
    const set = await readSet(file, io, values.switch);
    const when = { time: timeOfDay(values, set.place), coast: packagedCoastFor(set.place) };
    if (values.sheet !== undefined) {
      const sheet = faultSheet(set, when, paper);
      const title = clean(faultAnswer.title(namedOnBand(set).name));
      await io.write(
        values.sheet,
        ending === 'svg' ? sheetSvg(sheet) : await sheetsPdf([sheet], { title, fonts: pdfFonts() }),
      );
      io.err(`${cliNotes.written(values.sheet)}\n`);
      return 0;
    }
    const built = builtSet(set);
    const observations = values.observed === undefined ? [] : await observed(values.observed, built, io);
    const model = faultModel(built, {
      ...when,
      also: stationsObserved(observations),
    });
    const { answered, impossible } = answersTo(model, observations);
    if (values.json) {
      io.data(`${jsonText(asData(model, answered, impossible))}\n`);
      return 0;
    }
    io.out(`${faultAnswer.title(clean(namedOnBand(set).name))}\n\n`);
    if (values.observed === undefined) printReadings(model, io);
    if (io.ask && values.observed === undefined) await searchWith(io.ask, model, io);
    else printDiagnosis(model, answered, impossible, io);
    return 0;
  },
};

/** @throws InputError with every problem, a line each. */
async function observed(file: string, built: BuiltSet, io: Io): Promise<readonly ObservedAnswer[]> {
  const read = readObserved(await io.read(file), built);
  if (read.ok) return read.observations;
  const lines = read.problems.map((problem) => `  ${problemSentence(problem)}`);
  throw new InputError(`${faultAnswer.problems(file, lines.length)}\n${lines.join('\n')}`);
}

function printReadings({ built, bench, sound, checks }: FaultModel, io: Io): void {
  io.out(`${faultAnswer.readings}\n`);
  bench.places.forEach((place, i) => {
    io.out(`  ${faultAnswer.reading(ohmPlaceText(place, built), faultAnswer.ohms(sound.ohms[i]))}\n`);
  });
  for (const { check } of checks) {
    if (check.kind !== 'volts') continue;
    io.out(`${faultAnswer.playing}\n`);
    io.out(`  ${faultAnswer.reading(checkName(check, built), faultAnswer.volts(sound.directVoltage))}\n`);
  }
  io.out('\n');
}

function printDiagnosis(
  model: FaultModel,
  answered: readonly Answered[],
  impossible: ReadonlySet<string>,
  io: Io,
): void {
  const { causes, pairs, next, end, tied, contradictions } = faultSearch(model, answered, impossible);
  io.out(`${pairs.length > 0 ? faultAnswer.causesIfOne : faultAnswer.causes}\n`);
  causes.forEach(({ probability, faults, remedy, cautions, fits, fitsNot }, rank) => {
    io.out(`  ${faultAnswer.cause(probability, faults)}\n`);
    if (fits.length > 0) io.out(`    ${faultAnswer.fits(fits)}\n`);
    if (fitsNot.length > 0) io.out(`    ${faultAnswer.fitsNot(fitsNot)}\n`);
    if (rank > 0) return;
    io.out(`    ${faultAnswer.remedy(remedy)}\n`);
    for (const caution of cautions) io.out(`    ${faultAnswer.caution(caution)}\n`);
  });
  if (pairs.length > 0) io.out(`${faultAnswer.pairs}\n`);
  for (const { probability, faults } of pairs) io.out(`  ${faultAnswer.pair(probability, faults)}\n`);
  for (const { text } of contradictions) io.out(`${text}\n`);
  if (end !== undefined) io.out(`\n${end}\n`);
  if (tied !== undefined) io.out(`${tied}\n`);
  if (next) printNext(next, io);
}

function printNext({ text, expect, cautions }: ShownNext, io: Io): void {
  io.out(`\n${faultAnswer.next}\n  ${text}\n  ${expect}\n`);
  for (const caution of cautions) io.out(`  ${faultAnswer.caution(caution)}\n`);
}

/** Ask for what is heard, then for one check after another, until the cause is known. */
async function searchWith(ask: NonNullable<Io['ask']>, model: FaultModel, io: Io): Promise<void> {
  const answered: Answered[] = [];
  const impossible = new Set<string>();
  const inquire = async (check: PossibleCheck): Promise<boolean> => {
    for (;;) {
      const text = (await ask(faultAnswer.ask(answerHelp(check.check))))?.trim();
      if (text === undefined || text === 'end') return false;
      if (text === '') return true;
      const read = readAnswer(check.check, text, model.built);
      if (!read.ok) {
        io.out(`${faultAnswer.notUnderstood(answerHelp(check.check))}\n`);
        continue;
      }
      const { answered: more, impossible: not } = answersTo(model, read.observations);
      answered.push(...more);
      for (const id of not) impossible.add(id);
      return true;
    }
  };
  let goesOn = true;
  for (const check of model.checks) {
    if (check.check.kind !== 'loudness' || !goesOn) continue;
    io.out(`${checkText(check.check, model.built)}\n`);
    goesOn = await inquire(check);
  }
  for (let k = 0; k < MOST_ASKED && goesOn; k++) {
    const { next } = faultSearch(model, answered, impossible);
    if (!next) break;
    printNext(next, io);
    const before = answered.length;
    goesOn = await inquire(next.check);
    if (goesOn && answered.length === before) impossible.add(next.check.id);
  }
  io.out('\n');
  printDiagnosis(model, answered, impossible, io);
}

function asData(model: FaultModel, answered: readonly Answered[], impossible: ReadonlySet<string>) {
  const { built, bench, sound } = model;
  const { diagnosis, contradictions } = faultSearch(model, answered, impossible);
  const stations = built.set.place.stations;
  return {
    expected: {
      readings: bench.places.map((place, i) => ({
        place,
        ohms: Number.isFinite(sound.ohms[i]) ? sound.ohms[i] : null,
      })),
      directVoltage: model.checks.some(({ check }) => check.kind === 'volts') ? sound.directVoltage : undefined,
      stations: bench.stations.map((index, i) => ({
        name: stations[index].name,
        frequency: stations[index].frequency,
        margin: sound.margins[i],
        scale: sound.within[i] ? sound.scale[i] : null,
      })),
    },
    causes: diagnosis.causes.map(({ probability, faults, fits }) => ({
      probability,
      remedy: faults[0].fault.remedy,
      sentence: remedyTexts[faults[0].fault.remedy],
      faults: faults.map(({ fault: one, probability: share }) => ({
        id: one.id,
        code: one.code,
        part: one.part,
        turns: one.turns,
        probability: share,
        sentence: faultText(one, built),
        cautions: one.cautions.map((caution) => faultCautionTexts[caution]),
      })),
      fits,
    })),
    pairs: diagnosis.pairs.map(({ probability, faults }) => ({
      probability,
      faults: faults.map((one) => ({
        id: one.id,
        code: one.code,
        part: one.part,
        turns: one.turns,
        remedy: one.remedy,
        sentence: faultText(one, built),
      })),
    })),
    state: diagnosis.state,
    tied: diagnosis.tied,
    contradictions: contradictions.map(({ check: id, probability, text }) => ({
      ...writtenCheck(model.checks.find((check) => check.id === id)!.check, built),
      probability,
      sentence: text,
    })),
    next: diagnosis.next && {
      ...writtenCheck(diagnosis.next.check.check, built),
      information: diagnosis.next.information,
      minutes: diagnosis.next.check.effort,
      sentence: checkText(diagnosis.next.check.check, built),
      answers: `${answerHelp(diagnosis.next.check.check)}, ${NOT_POSSIBLE}`,
      ifSound: answerText(diagnosis.next.check, diagnosis.next.ifSound),
      ifCause: answerText(diagnosis.next.check, diagnosis.next.ifCause),
      cautions: diagnosis.next.check.cautions.map((caution) => faultCautionTexts[caution]),
    },
  };
}
