import {
  formatQuantity,
  type MeasurableFigure,
  measurableFigures,
  nextMeasurements,
  propertyOf,
  type ReadingsRead,
  type ReadingsResult,
  readMeasurements,
  readReadings,
  readValue,
  receiveRanged,
  resultsOf,
  type SetDescription,
  type UsedValue,
  usedValues,
  type WrittenDescription,
  withValueAt,
  writeText,
} from '../../engine/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import {
  agreementText,
  type CommandOptions,
  causesText,
  cliNotes,
  figureName,
  fittedText,
  jsonText,
  measureAnswer,
  measurementName,
  nextMeasurementText,
  problemSentence,
  propertyNames,
  unfitText,
  warningSentences,
} from '../../outputs/words/index.ts';
import { filesAndOptions } from '../arguments.ts';
import { chooseStation } from '../choose-station.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError, type Io } from '../command.ts';
import { readWrittenSet } from '../read-set.ts';
import { timeOfDay } from '../time-of-day.ts';

const OPTIONS = {
  use: { type: 'boolean' },
  out: { type: 'string' },
  station: { type: 'string' },
  json: { type: 'boolean' },
} as const satisfies CommandOptions<'measure'>;

export const measure: Command = {
  name: 'measure',
  options: OPTIONS,
  examples: [
    'faintwave measure examples/medium-wave-galena.json',
    'faintwave measure examples/medium-wave-galena.json examples/readings/medium-wave-galena.json',
    'faintwave measure examples/medium-wave-galena.json examples/readings/medium-wave-galena.json --use --out measured.json',
  ],
  async run(args, io) {
    const { values, positionals } = filesAndOptions(args, OPTIONS);
    const [file, readings] = positionals;
    const { set, written } = await readWrittenSet(file, io);
    const kept = written.readings ?? [];
    const added = readings === undefined ? [] : writtenOf(await read(readings, io));
    const all = [...kept, ...added];
    const result =
      all.length > 0 ? resultsOf(set, checked(readMeasurements(all), measureAnswer.keptReadings)) : undefined;
    const used = result && usedValues(result);
    const measured = used && withUsed({ ...written, readings: all }, used);
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
    if (result) printResult(result, io);
    else printMeasured(measurableFigures(set), io);
    io.out(`\n${measureAnswer.next}\n`);
    for (const one of next) io.out(`  ${nextMeasurementText(one)}\n`);
    if (next.length === 0) io.out(`  ${measureAnswer.nothingNext}\n`);
    if (values.use && used && values.out !== undefined)
      io.out(`\n${measureAnswer.used(used.length)}\n${cliNotes.written(values.out)}\n`);
    return 0;
  },
};

const read = async (file: string, io: Io) => checked(readReadings(await io.read(file)), file);
const writtenOf = (measurements: readonly { readonly written: unknown }[]) => measurements.map((one) => one.written);

/** @throws InputError with every problem, a line each. */
function checked(result: ReadingsRead, file: string) {
  if (result.ok) return result.measurements;
  const lines = result.problems.map((problem) => {
    const sentence = 'unfit' in problem ? `${problem.path}: ${unfitText(problem.unfit)}` : problemSentence(problem);
    return problem.line === undefined ? sentence : measureAnswer.problemLine(problem.line, sentence);
  });
  throw new InputError(
    `${measureAnswer.inReadings(file, lines.length)}\n${lines.map((line) => `  ${line}`).join('\n')}`,
  );
}

function setOf(written: WrittenDescription | undefined): SetDescription | undefined {
  const read = written && readValue(written);
  return read?.ok ? read.set : undefined;
}

/** The measurements that would narrow the answer of a station most. */
function nextOf(set: SetDescription, wanted: string | undefined) {
  if (set.place.stations.length === 0) return nextMeasurements(set, { frequency: 1e6 });
  const when = { time: timeOfDay({}, set.place), coast: packagedCoastFor(set.place) };
  const also = wanted === undefined ? undefined : chooseStation(set.place.stations, wanted);
  const reception = receiveRanged(set, { ...when, also: also === undefined ? undefined : [also] });
  const station = reception.stations[also ?? reception.best[0] ?? 0];
  return nextMeasurements(set, station);
}

/** A description with measured values put in, written as people write them. */
const withUsed = (written: WrittenDescription, used: readonly UsedValue[]): WrittenDescription =>
  used.reduce((base, { path, property, value, error, at, method, date }) => {
    const { quantity, isAmount } = propertyOf(property);
    const text = (x: number, digits: number) =>
      quantity ? formatQuantity(x, quantity, digits) : Number(x.toPrecision(digits));
    return withValueAt(base, path, {
      value: text(value, 5),
      error: isAmount && quantity ? formatQuantity(error, quantity, 3) : formatQuantity(error, 'ratio', 3),
      ...(at !== undefined && TAKES_FREQUENCY.has(property) ? { at: formatQuantity(at, 'frequency', 5) } : {}),
      method,
      ...(date === undefined ? {} : { date }),
    });
  }, written);

/** Properties whose measured value says at which frequency. */
const TAKES_FREQUENCY: ReadonlySet<string> = new Set([
  'coil.inductance',
  'coil.q',
  'aerial.resistance',
  'aerial.effectiveHeight',
]);

function printResult({ results, joint }: ReadingsResult, io: Io): void {
  for (const { measurement, figures, warnings } of results) {
    const of = measurement.coil ?? measurement.station;
    io.out(
      `${measureAnswer.heading(measurementName(measurement.kind), of && clean(of), measurement.date && clean(measurement.date))}\n`,
    );
    for (const { name, measured, quantity, property, calculated, agreement, causes } of figures) {
      io.out(
        `  ${measureAnswer.figure(property ? propertyNames[property] : figureName(name), fittedText(measured, quantity))}\n`,
      );
      if (calculated && agreement)
        io.out(
          `    ${measureAnswer.beside(fittedText(calculated, quantity), agreementText(agreement, quantity === 'level'))}\n`,
        );
      if (causes.length > 0) io.out(`    ${causesText(causes)}\n`);
    }
    for (const warning of warningSentences(warnings)) io.out(`  ⚠ ${warning}\n`);
  }
  const moved = joint.figures.filter(
    ({ before, after }) => after.standardError / after.value < 0.95 * (before.standardError / before.value),
  );
  if (moved.length === 0) return;
  io.out(`\n${measureAnswer.together}\n`);
  for (const { property, before, after } of moved) {
    const { quantity } = propertyOf(property);
    io.out(
      `  ${measureAnswer.joint(propertyNames[property], fittedText(before, quantity), fittedText(after, quantity))}\n`,
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

function printMeasured(figures: readonly MeasurableFigure[], io: Io): void {
  const measured = figures.filter((one) => one.measured);
  if (measured.length === 0) io.out(`${measureAnswer.nothingMeasured}\n`);
  for (const one of measured) {
    const { quantity } = propertyOf(one.property);
    io.out(`${measureAnswer.figure(propertyNames[one.property], fittedText(one.measured!, quantity))}\n`);
    io.out(
      `  ${measureAnswer.beside(fittedText(one.calculated, quantity), agreementText(one.agreement!, quantity === 'level'))}\n`,
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
          sentence: agreementText(one.agreement, one.quantity === 'level'),
        },
      })),
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
