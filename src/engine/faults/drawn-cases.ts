import type { SetCircuit } from '../built/set-circuit.ts';
import { normalQuantile } from '../numerics/normal.ts';
import type { Decibels, Ratio } from '../units/quantities.ts';
import { COMMON_LEVEL, type Nuisance, planted, STATION_LEVEL } from './cases.ts';
import { answersOf, type PossibleCheck } from './checks.ts';
import type { PartFault } from './fault.ts';
import { ohmReadings } from './ohmmeter.ts';
import { type Hearer, marginsOf, type SetShows, setShows, shownTo, type TestBench } from './shown.ts';

/**
 * How wide the draws are against what is believed. That is not known well itself: cases of either width stand side by side,
 * and answers that do not go with the one raise the other.
 */
export const SPREADS = [1, 2.2] as const;
/** One width between them, where there are too few cases for both. */
export const MIDDLE_SPREAD = 1.5;
/** Listeners and makings of the coil of each case: they cost no circuit. */
export const HEARERS = 8;
/** A share of answers is wrong or misread, whatever the fault. */
export const MISREAD = 0.03;

/** A fault with its severity, 0…1. */
export interface SevereFault {
  readonly fault: PartFault;
  readonly severity: Ratio;
}

/**
 * Draws of what is not known for one case.
 * @param draw one of them
 * @returns the circuit's, and after it one for each listener
 */
export const drawnCase = (draw: () => Nuisance): readonly Nuisance[] => Array.from({ length: 1 + HEARERS }, draw);

/**
 * How loud a case's stations are with no fault.
 * @param bench stations and fields
 * @param drawn of the case
 * @returns dB above the threshold, for the usual listener
 */
export const marginsWithNothingWrong = (bench: TestBench, [own]: readonly Nuisance[]): readonly Decibels[] =>
  marginsOf(planted(bench.circuit, [], bench.stations, ofCircuit(own, isCoilTuned(bench))), bench);

/**
 * What a set with faults shows to some listeners, with what else is not known.
 * @param bench stations, fields and places of readings
 * @param circuit of the set as really built
 * @param faults planted one after the other
 * @param drawn of what is not known, from `drawnCase`
 * @param mended margins with one of the faults mended, of what is shown with all
 * @param spread that it is drawn with
 * @param step from one severity to the next case's
 * @returns one for each listener
 */
export function shownToHearers(
  bench: TestBench,
  circuit: SetCircuit,
  faults: readonly SevereFault[],
  [own, ...hearers]: readonly Nuisance[],
  mended: (shown: SetShows) => SetShows['mended'],
  spread: Ratio,
  step: Ratio,
): readonly SetShows[] {
  const isWhole = isCoilTuned(bench);
  const { meter, ...nuisance } = ofCircuit(own, isWhole);
  const set = planted(circuit, faults, bench.stations, { ...nuisance, meter });
  const ohmsAt = (by: Ratio): Float64Array => {
    const other = faults.map(({ fault, severity }) => ({ fault, severity: severity + by }));
    return ohmReadings(
      planted(circuit, other, bench.stations, { ...nuisance, meter }),
      bench.places,
      bench.circuit,
      meter,
    );
  };
  const alone = setShows(set, bench, meter);
  const shown = { ...alone, mended: mended(alone), ohmsBetween: [-step / 3, step / 3].map(ohmsAt) };
  return hearers.map((hearer, h) => shownTo(shown, set, bench, ofHearer(hearer, isWhole, h, spread)));
}

const isCoilTuned = ({ circuit }: TestBench): boolean => circuit.assembly.tuning.length === 0;

/**
 * How likely each answer to a check is with a case, misreadings included.
 * @param check asked
 * @param shown what the set shows
 * @param asCalculated what it shows with nothing wrong
 * @param bench stations and places
 * @param faults planted, for signs
 * @param spread that the case is drawn with
 * @returns probabilities that add up to 1
 */
export function answerShares(
  check: PossibleCheck,
  shown: SetShows,
  asCalculated: SetShows,
  bench: TestBench,
  faults: readonly PartFault[],
  spread: Ratio,
): Float64Array {
  const p = answersOf(check, shown, asCalculated, bench, faults, spread * STATION_LEVEL);
  return p.map((share) => (1 - MISREAD) * share + MISREAD / p.length);
}

/** Of what is not known, what a circuit must be solved for. */
const ofCircuit = (nuisance: Nuisance, isWhole: boolean): Nuisance => ({
  ...nuisance,
  ...(isWhole ? {} : { inductance: 1, strays: 0 }),
  level: 0,
  stations: nuisance.stations.map(() => 0),
});

/** And what makes another listener of the same circuit; levels by strata, so that few serve. */
const ofHearer = ({ inductance, strays }: Nuisance, isWhole: boolean, h: number, spread: Ratio): Hearer => ({
  level: spread * COMMON_LEVEL * normalQuantile((h + 0.5) / HEARERS),
  ...(isWhole ? { inductance: 1, strays: 0 } : { inductance, strays }),
});
