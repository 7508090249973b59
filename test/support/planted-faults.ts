import type { SetCircuit } from '../../src/engine/built/set-circuit.ts';
import type { Answered } from '../../src/engine/faults/answered.ts';
import { circuitWith, nuisances, planted } from '../../src/engine/faults/cases.ts';
import { answersOf, type PossibleCheck } from '../../src/engine/faults/checks.ts';
import { type Diagnosis, diagnose } from '../../src/engine/faults/diagnose.ts';
import { MISREAD } from '../../src/engine/faults/drawn-cases.ts';
import { type PartFault, remedyClass } from '../../src/engine/faults/fault.ts';
import type { FaultModel } from '../../src/engine/faults/fault-model.ts';
import { circuitWithBoth } from '../../src/engine/faults/pairs.ts';
import { marginsOf, setShows } from '../../src/engine/faults/shown.ts';
import { uniform } from '../../src/engine/numerics/random.ts';
import { roughCopy } from './rough-copy.ts';
import { toldApart } from './told-apart.ts';

/** One fault planted in a copy of a set, and how the search for it went. */
export interface Played {
  readonly fault: string;
  /** Place of the true fault in the ranking, from 1; those that all checks together do not tell apart are one. */
  readonly rank: number;
  /** Place of what mends it among remedies on parts, from 1. */
  readonly remedyRank: number;
  /** Checks taken after the description. */
  readonly checks: number;
  /** Stated probability of the first fault and of those that count as one with it, beside what is stated of pairs. */
  readonly stated: number;
  readonly diagnosis: Diagnosis;
  readonly answered: readonly Answered[];
}

/** What nobody needs to be asked for. */
const TOLD: ReadonlySet<string> = new Set(['hum', 'swings-within-minutes']);
/** As many as are asked for in a terminal. */
export const MOST_CHECKS = 16;
const LEFT_OUT = 0.25;
const REFUSED = 0.07;

/** Two faults are one where every check that the set allows, all together, tells them apart less often than this. */
const TOLD_APART = 2 / 3;

/** Of places that matter to a report no more than these are compared. */
const COMPARED = 3;

/** Whether nobody can tell two faults apart. */
const isOneIn =
  (model: FaultModel) =>
  (a: PartFault, b: PartFault): boolean =>
    a === b || toldApart(model, model.faults.indexOf(a), model.faults.indexOf(b)) < TOLD_APART;

/** Place of the true fault among all, from 1: faults that nobody can tell apart are one. */
function placeOfCause(model: FaultModel, { causes }: Diagnosis, truth: PartFault): number {
  const isOne = isOneIn(model);
  const before: PartFault[] = [];
  for (const { fault } of faultsByProbability(causes)) {
    if (fault === truth || (before.length < COMPARED && isOne(fault, truth))) break;
    if (before.length >= COMPARED || !before.some((other) => isOne(other, fault))) before.push(fault);
  }
  return before.length + 1;
}

/** Of faults less likely than this it is not asked whether they are one with the first. */
const HARDLY = 0.005;

/** What is stated of the first fault being the true one, by the same rule as its place is counted. */
function statedOfFirst(model: FaultModel, { causes }: Diagnosis): number {
  const isOne = isOneIn(model);
  const all = faultsByProbability(causes);
  return all.reduce(
    (sum, { fault, probability }) => sum + (probability >= HARDLY && isOne(all[0].fault, fault) ? probability : 0),
    0,
  );
}

const faultsByProbability = (causes: Diagnosis['causes']) =>
  causes.flatMap(({ faults }) => faults).sort((a, b) => b.probability - a.probability);

/** A fault drawn by its weight. */
function drawnFault(faults: readonly PartFault[], random: () => number): PartFault {
  const total = faults.reduce((sum, { weight }) => sum + weight, 0);
  let at = random() * total;
  return faults.find(({ weight }) => (at -= weight) <= 0) ?? faults[faults.length - 1];
}

/**
 * Plant a fault by its weight, describe what is heard with omissions, then answer each check that is proposed, with
 * noise of its own and misreadings.
 * @param wider multiplies the deviations believed
 */
export function play(model: FaultModel, seed: number, wider: number): Played {
  const random = uniform(seed);
  const fault = drawnFault(model.faults, random);
  const { diagnosis, answered, checks } = searched(model, [fault], circuitWith(model.built, fault), wider, random);
  const { causes, pairs } = diagnosis;
  const rank = placeOfCause(model, diagnosis, fault);
  const remedyRank = causes.findIndex(({ faults: [{ fault: one }] }) => remedyClass(one) === remedyClass(fault)) + 1;
  const single = 1 - pairs.reduce((sum, { probability }) => sum + probability, 0);
  const stated = single * statedOfFirst(model, diagnosis);
  return { fault: fault.id, rank, remedyRank, checks, stated, diagnosis, answered };
}

/** Two faults planted in a copy of a set, and what was made of them. */
export interface PlayedPair {
  readonly faults: readonly [PartFault, PartFault];
  readonly checks: number;
  readonly diagnosis: Diagnosis;
  readonly answered: readonly Answered[];
}

/**
 * The same with two faults of different parts, of different remedies.
 * @param asked checks answered after the search has ended, by their ids: a person who goes on measuring
 */
export function playPair(
  model: FaultModel,
  seed: number,
  wider: number,
  asked: (check: PossibleCheck) => boolean = () => false,
): PlayedPair {
  const random = uniform(seed);
  const real = model.faults.filter(({ remedy }) => remedy !== 'none');
  for (;;) {
    const [a, b] = [drawnFault(real, random), drawnFault(real, random)];
    if (a.part === b.part || remedyClass(a) === remedyClass(b)) continue;
    try {
      const circuit = circuitWithBoth(model.built, a, b);
      return { faults: [a, b], ...searched(model, [a, b], circuit, wider, random, asked) };
    } catch (problem) {
      if (!(problem instanceof RangeError)) throw problem;
    }
  }
}

/**
 * A fault planted by its weight in a copy of a set, ready to be asked about.
 * @param wider multiplies the deviations believed
 */
export function plantedAnswers(model: FaultModel, seed: number, wider: number) {
  const random = uniform(seed);
  const fault = drawnFault(model.faults, random);
  return { fault, answerTo: answering(model, [fault], circuitWith(model.built, fault), wider, random) };
}

/** Answers to checks of a set with faults planted, with noise and misreadings. */
function answering(
  { bench, sound }: FaultModel,
  faults: readonly PartFault[],
  circuit: SetCircuit,
  wider: number,
  random: () => number,
): (check: PossibleCheck) => number {
  const seed = Math.floor(random() * 2 ** 32);
  const nuisance = nuisances(circuit, seed, bench.stations.length, wider)();
  const copy = roughCopy(circuit, seed, wider);
  const severe = faults.map((fault) => ({ fault, severity: random() }));
  const plantedOf = (some: typeof severe) => planted(copy, some, bench.stations, nuisance);
  const shown = {
    ...setShows(plantedOf(severe), bench, nuisance.meter),
    mended: severe.map((one) => marginsOf(plantedOf(severe.filter((other) => other !== one)), bench)),
  };
  return (check) => {
    if (random() < MISREAD) return Math.floor(random() * check.answers);
    const p = answersOf(check, shown, sound, bench, faults);
    let left = random();
    const k = p.findIndex((share) => (left -= share) <= 0);
    return k < 0 ? p.length - 1 : k;
  };
}

function searched(
  model: FaultModel,
  faults: readonly PartFault[],
  circuit: SetCircuit,
  wider: number,
  random: () => number,
  asked: (check: PossibleCheck) => boolean = () => false,
) {
  const { bench } = model;
  const answerTo = answering(model, faults, circuit, wider, random);
  const answered: Answered[] = [];
  for (const one of model.checks) {
    const isTold =
      one.check.kind === 'loudness' ||
      one.check.kind === 'dial' ||
      (one.check.kind === 'sign' && TOLD.has(one.check.sign)) ||
      (one.check.kind === 'width' && one.check.station === bench.stations[0]);
    if (isTold && random() > LEFT_OUT) answered.push({ check: one.id, answer: answerTo(one) });
  }
  const impossible = new Set<string>();
  let checks = 0;
  let diagnosis = diagnose(model, answered, impossible);
  while (diagnosis.next && checks < MOST_CHECKS) {
    const { check } = diagnosis.next;
    if (random() < REFUSED) impossible.add(check.id);
    else {
      answered.push({ check: check.id, answer: answerTo(check) });
      checks++;
    }
    diagnosis = diagnose(model, answered, impossible);
  }
  const more = model.checks.filter((check) => asked(check) && !answered.some((one) => one.check === check.id));
  for (const check of more) answered.push({ check: check.id, answer: answerTo(check) });
  return { diagnosis: more.length > 0 ? diagnose(model, answered, impossible) : diagnosis, answered, checks };
}
