import {
  type CautionCode,
  MEASUREMENTS,
  type MeasuredFigure,
  type MeasurementKind,
  measurableFigures,
  measuredFigures,
  measuringCautions,
  methodCautions,
  nextMeasurements,
  predictedForReadings,
  propertyOf,
  type ReadingsProblem,
  type ReadingsResult,
  readReadings,
  readValue,
  receiveRanged,
  type SetDescription,
  suspectPlaces,
  type UsedValue,
  type WrittenDescription,
  withReadings,
  writeText,
} from '../../engine/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import {
  benchCard,
  benchCardWords,
  type CommandOptions,
  causesText,
  cautionTexts,
  cliNotes,
  differenceText,
  equipmentNames,
  fittedText,
  jsonText,
  measureAnswer,
  measuredName,
  measurementName,
  nextMeasurementText,
  propertyNames,
  warningSentences,
} from '../../outputs/words/index.ts';
import { filesAndOptions } from '../arguments.ts';
import { chooseStation } from '../choose-station.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError, type Io } from '../command.ts';
import { problemsOfFile } from '../problems-of-file.ts';
import { readWrittenSet } from '../read-set.ts';
import { readingsText } from '../readings-file.ts';
import { readingsProblem } from '../readings-problem.ts';
import { timeOfDay } from '../time-of-day.ts';
import { wrongOption } from '../wrong-option.ts';

const OPTIONS = {
  use: { type: 'boolean' },
  kind: { type: 'string' },
  coil: { type: 'string' },
  how: { type: 'string' },
  out: { type: 'string' },
  station: { type: 'string' },
  json: { type: 'boolean' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'measure'>;

export const measure: Command = {
  name: 'measure',
  options: OPTIONS,
  examples: [
    'faintwave measure examples/medium-wave-galena.json',
    'faintwave measure examples/medium-wave-galena.json examples/readings/medium-wave-galena.json',
    'faintwave measure examples/medium-wave-galena.json examples/readings/medium-wave-galena.json --use --out measured.json',
    'faintwave measure examples/medium-wave-galena.json ringing.wav --coil main',
    'faintwave measure examples/medium-wave-galena.json coil.s1p --kind analyser-coil --coil main',
    'faintwave measure examples/medium-wave-galena.json --how dial',
  ],
  async run(args, io) {
    const { values, positionals } = filesAndOptions(args, OPTIONS);
    const [file, readings] = positionals;
    const { set, written } = await readWrittenSet(file, io, values.switch);
    if (values.how !== undefined) {
      const kind = kindOf(values.how, '--how');
      if (values.json) io.data(`${jsonText(cardData(kind, set))}\n`);
      else printCard(kind, set, io);
      return 0;
    }
    const former = written.readings ?? [];
    const taken = readings === undefined ? [] : await read(readings, set, values, io);
    const added = writtenOf(taken);
    const all = [...former, ...added];
    const merged =
      all.length > 0 ? withReadings(set, written, all, predictedForReadings(set, written, all, predicted)) : undefined;
    if (merged && !merged.ok) throw refusal(merged.problems, measureAnswer.keptReadings);
    const { result, used, written: measured } = merged ?? {};
    const next = nextOf(setOf(measured) ?? set, values.station);
    if (values.use && measured) {
      const description = writeText(measured);
      if (values.out === undefined) {
        io.data(description);
        return 0;
      }
      await io.write(values.out, description);
    }
    if (values.json) {
      io.data(`${jsonText(asData(set, result, used, next))}\n`);
      return 0;
    }
    io.out(`${measureAnswer.title(clean(set.name))}\n\n`);
    if (result) printResult(result, set.place, io);
    else printMeasured(measuredFigures(set), io);
    io.out(`\n${measureAnswer.next}\n`);
    for (const one of next) io.out(`  ${nextMeasurementText(one)}\n`);
    if (next.length === 0) io.out(`  ${measureAnswer.nothingNext}\n`);
    printCautions(new Set(next.flatMap(({ method }) => methodCautions(method, set))), io);
    if (values.use && used && values.out !== undefined)
      io.out(`\n${measureAnswer.used(used.length)}\n${cliNotes.written(values.out)}\n`);
    return 0;
  },
};

/** Readings of a file, or what an instrument wrote into one. @throws InputError with every problem. */
async function read(file: string, set: SetDescription, { kind, coil }: { kind?: string; coil?: string }, io: Io) {
  const of = kind === undefined ? undefined : kindOf(kind, '--kind');
  const { text, problems } = await readingsText(file, { kind: of, coil }, io);
  const result = readReadings(text, of, set);
  const all = [...problems, ...(result.ok ? [] : result.problems.map(readingsProblem))];
  if (all.length > 0) throw new InputError(problemsOfFile(file, all));
  if (!result.ok) return [];
  if (result.notRead) io.err(`${cliNotes.note(measureAnswer.columnsNotRead(result.notRead))}\n`);
  return result.measurements;
}
const writtenOf = (measurements: readonly { readonly written: unknown }[]) => measurements.map((one) => one.written);

/** Every problem, a line each. */
const refusal = (problems: readonly ReadingsProblem[], file: string): InputError =>
  new InputError(problemsOfFile(file, problems.map(readingsProblem)));

function setOf(written: WrittenDescription | undefined): SetDescription | undefined {
  const read = written && readValue(written);
  return read?.ok ? read.set : undefined;
}

/** Stations of a set as received now, with ranges. */
const predicted = (set: SetDescription, stations: readonly number[]) =>
  receiveRanged(set, { time: timeOfDay({}, set.place), coast: packagedCoastFor(set.place), stations }).stations;

/** The measurements that would narrow the answer of a station most. */
function nextOf(set: SetDescription, target: string | undefined) {
  if (set.place.stations.length === 0) return nextMeasurements(set, { frequency: 1e6 });
  const when = { time: timeOfDay({}, set.place), coast: packagedCoastFor(set.place) };
  const also = target === undefined ? undefined : chooseStation(set.place.stations, target);
  const reception = receiveRanged(set, { ...when, also: also === undefined ? undefined : [also] });
  const station = reception.stations[also ?? reception.best[0] ?? 0];
  return nextMeasurements(set, station);
}

function printResult({ results, joint }: ReadingsResult, { stations }: SetDescription['place'], io: Io): void {
  for (const { measurement, figures, warnings } of results) {
    const of = measurement.coil ?? measurement.station;
    io.out(
      `${measureAnswer.heading(measurementName(measurement.kind), of && clean(of), measurement.date && clean(measurement.date))}\n`,
    );
    for (const { name, measured, at, quantity, property, calculated, agreement, causes, sizes } of figures) {
      io.out(`  ${measureAnswer.figure(measuredName({ property, name, at }), fittedText(measured, quantity))}\n`);
      if (calculated && agreement)
        io.out(
          `    ${measureAnswer.beside(fittedText(calculated, quantity), differenceText({ agreement, quantity, sizes }))}\n`,
        );
      if (causes.length > 0) io.out(`    ${causesText(causes)}\n`);
    }
    for (const { index, read, frequency, station } of suspectPlaces(measurement, stations))
      io.out(`  ⚠ ${measureAnswer.suspect(index + 1, read, frequency, station && clean(station))}\n`);
    // A misread station is named with what stands there instead.
    const others = warnings.filter(({ code }) => code !== 'measure.reading-misread');
    for (const warning of warningSentences(others)) io.out(`  ⚠ ${warning}\n`);
  }
  const moved = joint.figures.filter(
    ({ before, after }) => after.standardError / after.value < 0.95 * (before.standardError / before.value),
  );
  if (moved.length === 0) return;
  io.out(`\n${measureAnswer.together}\n`);
  for (const { property, at, before, after } of moved) {
    const { quantity } = propertyOf(property);
    io.out(
      `  ${measureAnswer.joint(measuredName({ property, at }), fittedText(before, quantity), fittedText(after, quantity))}\n`,
    );
  }
  io.out(
    `${
      joint.chiSquare > joint.highestOfAgreement && joint.furthest
        ? measureAnswer.disagree(propertyNames[joint.furthest.property], joint.furthest.deviations)
        : measureAnswer.agree
    }\n`,
  );
}

const KINDS: readonly string[] = ['value', ...Object.keys(MEASUREMENTS)];
const isKind = (id: string): id is MeasurementKind | 'value' => KINDS.includes(id);

/** @throws InputError for what is no kind of measurement. */
function kindOf(written: string, option: string): MeasurementKind | 'value' {
  if (!isKind(written)) throw wrongOption(option, { code: 'one of', choices: KINDS }, written);
  return written;
}

/** How a measurement is made. */
function printCard(kind: MeasurementKind | 'value', set: SetDescription, io: Io): void {
  const { about, steps, writeDown, trap } = benchCard(kind);
  io.out(`${measurementName(kind)}\n\n${about}\n`);
  const takes = kind === 'value' ? [] : MEASUREMENTS[kind].equipment;
  if (takes.length > 0) io.out(`${benchCardWords.takes(equipmentNames(takes))}\n`);
  io.out(`\n${steps.map((step, i) => `  ${i + 1}. ${step}\n`).join('')}`);
  io.out(`\n${benchCardWords.writeDown(writeDown)}\n${benchCardWords.trap(trap)}\n`);
  printCautions(new Set(measuringCautions(kind, set)), io);
}

const cardData = (kind: MeasurementKind | 'value', set: SetDescription) => ({
  kind,
  equipment: kind === 'value' ? [] : MEASUREMENTS[kind].equipment,
  ...benchCard(kind),
  cautions: [...new Set(measuringCautions(kind, set))].map((code) => cautionTexts[code]),
});

function printCautions(codes: ReadonlySet<CautionCode>, io: Io): void {
  if (codes.size === 0) return;
  io.out(`\n${benchCardWords.cautions}\n`);
  for (const code of codes) io.out(`  ${cautionTexts[code]}\n`);
}

function printMeasured(measured: readonly MeasuredFigure[], io: Io): void {
  if (measured.length === 0) io.out(`${measureAnswer.nothingMeasured}\n`);
  for (const { property, at, calculated, measured: value, agreement, sizes } of measured) {
    const { quantity } = propertyOf(property);
    io.out(`${measureAnswer.figure(measuredName({ property, at }), fittedText(value, quantity))}\n`);
    io.out(
      `  ${measureAnswer.beside(fittedText(calculated, quantity), differenceText({ agreement, quantity, sizes }))}\n`,
    );
  }
}

function asData(
  set: SetDescription,
  result: ReadingsResult | undefined,
  used: readonly UsedValue[] | undefined,
  next: ReturnType<typeof nextMeasurements>,
) {
  return {
    figures: measurableFigures(set),
    results: result?.results.map(({ measurement, figures, warnings }) => ({
      kind: measurement.kind,
      coil: measurement.coil,
      station: measurement.station,
      date: measurement.date,
      figures: figures.map((one) => ({
        ...one,
        agreement: one.agreement && {
          ...one.agreement,
          sentence: differenceText({ agreement: one.agreement, quantity: one.quantity, sizes: one.sizes }),
        },
      })),
      suspects: suspectPlaces(measurement, set.place.stations),
      warnings: warningSentences(warnings),
    })),
    together: result && {
      figures: result.joint.figures,
      correlations: Array.from(result.joint.correlations),
      chiSquare: result.joint.chiSquare,
      highestOfAgreement: Number.isFinite(result.joint.highestOfAgreement) ? result.joint.highestOfAgreement : null,
      furthest: result.joint.furthest,
    },
    used,
    next: next.map((one) => ({ ...one, sentence: nextMeasurementText(one) })),
  };
}
