import type { BuiltSet } from '../built/built-set.ts';
import { receiveOnDial } from '../reception/dial/dial.ts';
import { type FieldOptions, fieldsAtSite } from '../reception/path/field.ts';
import { receiver, type TunedStation } from '../reception/path/receive-station.ts';
import { listeningTime } from '../set/listening-time.ts';
import type { Decibels, Ratio } from '../units/quantities.ts';
import { circuitWith, nuisances, planted, seedOfSet } from './cases.ts';
import { checksOf, type PossibleCheck } from './checks.ts';
import { faultsOfSet } from './dictionary.ts';
import { answerShares, drawnCase, HEARERS, marginsWithNothingWrong, SPREADS, shownToHearers } from './drawn-cases.ts';
import { type PartFault, remedyClass, signAt } from './fault.ts';
import { isByEar } from './heard-signs.ts';
import { ohmPlacesOf } from './ohmmeter.ts';
import { type SetShows, setShows, type TestBench } from './shown.ts';

/** Cases drawn of each fault. */
const USUAL_CASES = 32;
/** Stations listened for: more tell little more. */
const MOST_STATIONS = 4;

/** Over the threshold a station is heard clearly; where there are few such, fainter ones tell something too. */
const CLEAR: Decibels = 10;
const FAINT: Decibels = 3;

/** A set's faults with what each shows, ready to be asked. */
export interface FaultModel {
  readonly built: BuiltSet;
  readonly bench: TestBench;
  readonly faults: readonly PartFault[];
  readonly checks: readonly PossibleCheck[];
  /** What the set shows with nothing wrong. */
  readonly sound: SetShows;
  /** What it shows with each fault at its middle severity. */
  readonly typical: readonly SetShows[];
  /** Of each case: its fault, and how likely it is beforehand. */
  readonly faultOf: Int32Array;
  readonly prior: Float64Array;
  /** Of each check: probability of each answer, case by case, misreadings included. */
  readonly answers: ReadonlyMap<string, Float32Array>;
  /** Remedies on parts: faults of one class are one cause. */
  readonly classes: readonly string[];
  /** Of each fault. */
  readonly classOf: readonly number[];
  /** Of each check: probability of each answer, class by class, before anything is observed. */
  readonly byClass: ReadonlyMap<string, Float64Array>;
}

/** When and where the stations are heard, and how many cases are drawn. */
export interface FaultModelOptions extends FieldOptions {
  /** Of each fault; default 32. */
  readonly cases?: number;
  /** Places in the description of stations listened for in any case. */
  readonly also?: readonly number[];
  /** Told after each fault how much of the work is done, 0…1. */
  readonly onProgress?: (done: Ratio) => void;
}

/** Stations to listen for: the lowest, the highest and the loudest of those heard, apart on the dial. */
function stationsToHear(built: BuiltSet, options: FieldOptions): readonly number[] {
  const { set, circuit } = built;
  const ready = receiver(circuit, fieldsAtSite(set.place, options));
  const heard = set.place.stations
    .map((station, index) => ({
      index,
      frequency: station.frequency,
      ...levelOf(() => receiveOnDial(ready, station)),
    }))
    .sort((a, b) => Number(b.within) - Number(a.within) || b.margin - a.margin);
  const clear = heard.filter(({ within, margin }) => within && margin > CLEAR);
  if (clear.length <= MOST_STATIONS) {
    const fainter = heard.filter(({ within, margin }) => within && margin > FAINT && margin <= CLEAR);
    const all = [...clear, ...fainter.slice(0, MOST_STATIONS - clear.length)];
    return inOrder(all.length > 0 ? all : heard.slice(0, 2));
  }
  const byFrequency = [...clear].sort((a, b) => a.frequency - b.frequency);
  const chosen = new Set([clear[0], byFrequency[0], byFrequency[byFrequency.length - 1]]);
  const middle = Math.sqrt(byFrequency[0].frequency * byFrequency[byFrequency.length - 1].frequency);
  const fromMiddle = (f: number): number => Math.abs(Math.log(f / middle));
  for (const one of [...clear].sort((a, b) => fromMiddle(a.frequency) - fromMiddle(b.frequency)))
    if (chosen.size < MOST_STATIONS) chosen.add(one);
  return inOrder([...chosen]);
}

const inOrder = (list: readonly { readonly index: number; readonly frequency: number }[]): readonly number[] =>
  [...list].sort((a, b) => a.frequency - b.frequency).map(({ index }) => index);

function levelOf(receive: () => TunedStation): { within: boolean; margin: number } {
  try {
    const { within, heard } = receive();
    return { within, margin: heard.margin };
  } catch (problem) {
    if (problem instanceof RangeError) return { within: false, margin: Number.NEGATIVE_INFINITY };
    throw problem;
  }
}

/** What is set up to plant faults in: stations, fields, places of readings. */
function benchOf(built: BuiltSet, options: FieldOptions, also: readonly number[]): TestBench {
  const { stations } = built.set.place;
  const heard = [...new Set([...stationsToHear(built, options), ...also])];
  return {
    circuit: built.circuit,
    stations: heard.sort((a, b) => stations[a].frequency - stations[b].frequency),
    fieldOf: fieldsAtSite(built.set.place, options),
    places: ohmPlacesOf(built),
  };
}

/**
 * Every fault of a set drawn with its severities and with what is not known of the set and its listener.
 * @param built the set as built
 * @param options time and coastline as of `receive`; cases of each fault
 * @returns what `diagnose` ranks by; the same for the same set
 * @throws RangeError for parts that cannot be built
 */
export function faultModel(
  built: BuiltSet,
  { cases = USUAL_CASES, also = [], onProgress, ...options }: FaultModelOptions = {},
): FaultModel {
  const bench = benchOf(built, options, also);
  const faults = faultsOfSet(built, bench.stations, options.time ?? listeningTime(built.set.place)).filter((fault) =>
    isBuildable(built, fault),
  );
  const { stations } = bench;
  const sound = setShows(planted(built.circuit, [], stations), bench);
  const checks = checksOf(built, bench, sound);
  const total = faults.length * cases * HEARERS;
  const answers = new Map(checks.map(({ id, answers: n }) => [id, new Float32Array(total * n)] as const));
  const draws = SPREADS.map((spread, k) => nuisances(built.circuit, seedOfSet(built) + k, stations.length, spread));
  // The same for each fault: what a fault costs is its difference from the same set without it.
  const drawn = Array.from({ length: cases }, (_, j) => drawnCase(draws[j % SPREADS.length]));
  const withNothingWrong = drawn.map((own) => marginsWithNothingWrong(bench, own));
  const faultOf = new Int32Array(total);
  const prior = new Float64Array(total);
  const typical: SetShows[] = [];
  const weights = faults.reduce((sum, { weight }) => sum + weight, 0);
  faults.forEach((fault, k) => {
    const circuit = circuitWith(built, fault);
    typical.push(setShows(planted(circuit, [{ fault, severity: 0.5 }], stations), bench));
    for (let j = 0; j < cases; j++) {
      const severity = (j + 0.5) / cases;
      const spread = SPREADS[j % SPREADS.length];
      const mended = () => [withNothingWrong[j]];
      const seenBy = shownToHearers(bench, circuit, [{ fault, severity }], drawn[j], mended, spread, 1 / cases);
      const sharesFor = (check: PossibleCheck, h: number) =>
        answerShares(check, seenBy[h], sound, bench, [fault], spread);
      const forAnyone = new Map(checks.filter(isForAnyone).map((check) => [check, sharesFor(check, 0)] as const));
      for (const h of seenBy.keys()) {
        const i = (k * cases + j) * HEARERS + h;
        faultOf[i] = k;
        prior[i] = fault.weight / weights / cases / HEARERS;
        for (const check of checks)
          answers.get(check.id)!.set(forAnyone.get(check) ?? sharesFor(check, h), i * check.answers);
      }
    }
    onProgress?.((k + 1) / faults.length);
  });
  const classes = classesOf(faults);
  const classOf = faults.map((fault) => classes.indexOf(remedyClass(fault)));
  return {
    built,
    bench,
    faults,
    checks,
    sound,
    typical,
    faultOf,
    prior,
    answers,
    classes,
    classOf,
    byClass: new Map(checks.map((check) => [check.id, meansByClass(check, answers.get(check.id)!)] as const)),
  };

  function meansByClass({ answers: n }: PossibleCheck, table: Float32Array): Float64Array {
    const means = new Float64Array(classes.length * n);
    const sums = new Float64Array(classes.length);
    for (let i = 0; i < total; i++) {
      const k = classOf[faultOf[i]];
      sums[k] += prior[i];
      for (let a = 0; a < n; a++) means[k * n + a] += prior[i] * table[i * n + a];
    }
    return means.map((sum, at) => sum / sums[Math.floor(at / n)]);
  }
}

/** Whether every listener gives a check the same answers: meters and eyes do not hear. */
const isForAnyone = ({ check }: PossibleCheck): boolean =>
  check.kind === 'ohms' || check.kind === 'volts' || (check.kind === 'sign' && !isByEar(signAt(check.sign).code));

/** A tap on a turn that another arrangement of them does not leave is no way in which this set was built. */
function isBuildable(built: BuiltSet, fault: PartFault): boolean {
  try {
    circuitWith(built, fault);
    return true;
  } catch (problem) {
    if (problem instanceof RangeError) return false;
    throw problem;
  }
}

const classesOf = (faults: readonly PartFault[]): readonly string[] => [...new Set(faults.map(remedyClass))];
