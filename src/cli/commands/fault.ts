import {
  type Answered,
  answersTo,
  type BuiltSet,
  builtSet,
  contradictionsAmong,
  type Diagnosis,
  diagnose,
  type FaultModel,
  faultModel,
  NOT_POSSIBLE,
  OBSERVED_FORMAT,
  type ObservedAnswer,
  type PossibleCheck,
  readObserved,
  stationsObserved,
  writtenCheck,
} from '../../engine/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import {
  answerHelp,
  answerText,
  type CommandOptions,
  checkName,
  checkText,
  faultAnswer,
  faultCautionTexts,
  faultText,
  jsonText,
  ohmPlaceText,
  problemSentence,
  remedyTexts,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError, type Io } from '../command.ts';
import { readSet } from '../read-set.ts';
import { timeOfDay } from '../time-of-day.ts';

const OPTIONS = {
  observed: { type: 'string' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  json: { type: 'boolean' },
} as const satisfies CommandOptions<'fault'>;

/** How many causes are printed. */
const SHOWN = 5;
/** A cause less likely than this is not worth a line. */
const LEAST_SHOWN = 0.01;
/** How many checks are asked for after one another. */
const MOST_ASKED = 10;

export const fault: Command = {
  name: 'fault',
  options: OPTIONS,
  examples: [
    'faintwave fault examples/medium-wave-galena.json',
    'faintwave fault examples/medium-wave-galena.json --observed examples/observed/medium-wave-galena.json',
    'faintwave fault examples/medium-wave-galena.json --observed examples/observed/medium-wave-galena.json --json',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const set = await readSet(file, io);
    const built = builtSet(set);
    const observations = values.observed === undefined ? [] : await observed(values.observed, built, io);
    const model = faultModel(built, {
      time: timeOfDay(values, set.place),
      coast: packagedCoastFor(set.place),
      also: stationsObserved(observations),
    });
    const { answered, impossible } = answersTo(model, observations);
    if (values.json) {
      io.data(`${jsonText(asData(model, answered, impossible))}\n`);
      return 0;
    }
    io.out(`${faultAnswer.title(clean(set.name))}\n\n`);
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
  const found = diagnose(model, answered, impossible);
  printCauses(model, found, answered, io);
  for (const { check, answer } of contradicting(model, answered))
    io.out(`${faultAnswer.contradicts(checkName(check.check, model.built), answerText(check, answer))}\n`);
  printEnd(model, found, io);
  if (found.next) printNext(model, found.next, io);
}

function contradicting(model: FaultModel, answered: readonly Answered[]) {
  return contradictionsAmong(model, answered).map(({ check: id, probability }) => ({
    check: checkOf(model, id),
    answer: answered.find(({ check }) => check === id)!.answer,
    probability,
  }));
}

const checkOf = (model: FaultModel, id: string): PossibleCheck => model.checks.find((check) => check.id === id)!;

const faultTexts = ({ built }: FaultModel, { faults }: Diagnosis['causes'][number]): string[] => [
  ...new Set(
    faults.filter((one) => one.probability > 0.1 * faults[0].probability).map((one) => faultText(one.fault, built)),
  ),
];

function printCauses(model: FaultModel, { causes }: Diagnosis, answered: readonly Answered[], io: Io): void {
  io.out(`${faultAnswer.causes}\n`);
  for (const [rank, cause] of causes.slice(0, SHOWN).entries()) {
    if (rank > 0 && cause.probability < LEAST_SHOWN) break;
    io.out(`  ${faultAnswer.cause(cause.probability, faultTexts(model, cause))}\n`);
    if (answered.length > 0) printFits(model, cause, answered, io);
    if (rank > 0) continue;
    io.out(`    ${faultAnswer.remedy(remedyTexts[cause.faults[0].fault.remedy])}\n`);
    for (const caution of cause.faults[0].fault.cautions)
      io.out(`    ${faultAnswer.caution(faultCautionTexts[caution])}\n`);
  }
}

/** Answers a cause makes so much likelier, or less likely, than all causes together. */
const FITS = 1.5;
const FITS_NOT = 0.4;
const MOST_FITS = 3;

function printFits(
  model: FaultModel,
  { fits }: Diagnosis['causes'][number],
  answered: readonly Answered[],
  io: Io,
): void {
  const text = (id: string): string => {
    const check = checkOf(model, id);
    const answer = answered.find((one) => one.check === id)!.answer;
    return faultAnswer.observed(checkName(check.check, model.built), answerText(check, answer));
  };
  const best = fits.filter(({ ratio }) => ratio > FITS).sort((a, b) => b.ratio - a.ratio);
  const worst = fits.filter(({ ratio }) => ratio < FITS_NOT).sort((a, b) => a.ratio - b.ratio);
  if (best.length > 0) io.out(`    ${faultAnswer.fits(best.slice(0, MOST_FITS).map(({ check }) => text(check)))}\n`);
  if (worst.length > 0)
    io.out(`    ${faultAnswer.fitsNot(worst.slice(0, MOST_FITS).map(({ check }) => text(check)))}\n`);
}

function printNext(model: FaultModel, { check, ifSound, ifCause }: NonNullable<Diagnosis['next']>, io: Io): void {
  io.out(`\n${faultAnswer.next}\n  ${checkText(check.check, model.built)}\n`);
  io.out(`  ${faultAnswer.expect(answerText(check, ifSound), answerText(check, ifCause))}\n`);
  for (const caution of check.cautions) io.out(`  ${faultAnswer.caution(faultCautionTexts[caution])}\n`);
}

function printEnd(model: FaultModel, { state, tied, causes }: Diagnosis, io: Io): void {
  if (state === 'open') return;
  io.out(`\n${state === 'known' ? faultAnswer.known : faultAnswer.tied}\n`);
  if (tied.length > 0)
    io.out(`${faultAnswer.tiedWith(tied.map((rank) => faultTexts(model, causes[rank]).join('; ')))}\n`);
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
      const entry = { ...writtenCheck(check.check, model.built), answer: text };
      const read = readObserved(JSON.stringify({ format: OBSERVED_FORMAT, observed: [entry] }), model.built);
      if (!read.ok) {
        io.out(`${faultAnswer.notUnderstood(answerHelp(check.check))}\n`);
        continue;
      }
      // Written and read again, one of two stations with the same name and frequency would be the other.
      const { answered: more, impossible: not } = answersTo(
        model,
        read.observations.map(({ answer }) => ({ check: check.check, answer })),
      );
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
    const { next } = diagnose(model, answered, impossible);
    if (!next) break;
    printNext(model, next, io);
    const before = answered.length;
    goesOn = await inquire(next.check);
    if (goesOn && answered.length === before) impossible.add(next.check.id);
  }
  io.out('\n');
  printDiagnosis(model, answered, impossible, io);
}

function asData(model: FaultModel, answered: readonly Answered[], impossible: ReadonlySet<string>) {
  const { built, bench, sound } = model;
  const found = diagnose(model, answered, impossible);
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
    causes: found.causes.map(({ probability, faults, fits }) => ({
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
    state: found.state,
    tied: found.tied,
    contradictions: contradicting(model, answered).map(({ check, answer, probability }) => ({
      ...writtenCheck(check.check, built),
      probability,
      sentence: faultAnswer.contradicts(checkName(check.check, built), answerText(check, answer)),
    })),
    next: found.next && {
      ...writtenCheck(found.next.check.check, built),
      information: found.next.information,
      minutes: found.next.check.effort,
      sentence: checkText(found.next.check.check, built),
      answers: `${answerHelp(found.next.check.check)}, ${NOT_POSSIBLE}`,
      ifSound: answerText(found.next.check, found.next.ifSound),
      ifCause: answerText(found.next.check, found.next.ifCause),
      cautions: found.next.check.cautions.map((caution) => faultCautionTexts[caution]),
    },
  };
}
