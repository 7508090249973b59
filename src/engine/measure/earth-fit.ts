import { type Warning, warning } from '../facts/warning.ts';
import { rodFactor } from '../parts/earth/rods.ts';
import { type Fitted, fitted, reachOf } from './fitted.ts';
import { UnfitReadings } from './unfit.ts';

/** Resistances between the earth (1) and two auxiliary ones, Ω. */
export interface ThreeElectrodes {
  readonly oneTwo: number;
  readonly oneThree: number;
  readonly twoThree: number;
  /** Standard error of each as a share of it. Default 3 %. */
  readonly error?: number;
  /** Of rods alike, and where they stand; without them what they share of the soil is not corrected for. Metres. */
  readonly rods?: {
    readonly length: number;
    readonly diameter: number;
    readonly oneTwo: number;
    readonly oneThree: number;
    readonly twoThree: number;
  };
}

export interface EarthFit {
  readonly resistance: Fitted;
  readonly warnings: readonly Warning[];
}

const ERROR = 0.03;
/** A larger standard error, as a share, makes a poor measurement. */
const POOR = 0.3;
/** More, in Ω, a rod of 1.2 m has only in soil above about 400 Ω·m, which displacement carries a radio frequency through. */
const OF_DRY_SOIL = 300;

/**
 * Resistance of an earth by three electrodes: R1 = (R12 + R13 − R23)/2. Electrodes near each other share soil; for rods
 * of known size and distance that is put right: R1 is low by ρ/2π·(1/d12 + 1/d13 − 1/d23), and ρ follows from R1 by
 * Dwight's formula for a rod.
 * @returns resistance (Ω) with its standard error and range by the error given
 * @throws UnfitReadings where the resistance comes out at 0 or less
 */
export function fitThreeElectrodes({ oneTwo, oneThree, twoThree, error = ERROR, rods }: ThreeElectrodes): EarthFit {
  const raw = (oneTwo + oneThree - twoThree) / 2;
  if (!(raw > 0)) throw new UnfitReadings({ code: 'earth.not-above-zero' });
  const shared = rods
    ? (1 / rods.oneTwo + 1 / rods.oneThree - 1 / rods.twoThree) / (2 * Math.PI * rodFactor(rods.length, rods.diameter))
    : 0;
  if (!(shared < 0.5)) throw new UnfitReadings({ code: 'earth.too-near' });
  const factor = 1 / (1 - shared);
  const s = (error / 2) * Math.hypot(oneTwo, oneThree, twoThree);
  return {
    resistance: fitted(raw * factor, s * factor, reachOf()),
    warnings: [
      ...(s > POOR * raw ? [warning('measure.auxiliary-earths-poor', { share: s / raw })] : []),
      ...(rods ? [] : [warning('measure.electrodes-share-soil')]),
      ...(raw * factor > OF_DRY_SOIL ? [warning('measure.earth-of-dry-soil', { resistance: raw * factor })] : []),
    ],
  };
}

export interface EarthComparison {
  /** Voltages on the tuned circuit with the earth and with the one it is compared with, retuned; in one unit. */
  readonly level: number;
  readonly otherLevel: number;
  /** Of the aerial's whole circuit with the earth, and its standard error, Ω. */
  readonly circuitResistance: number;
  readonly circuitError: number;
  /** Of the other earth, and its standard error, Ω; without it only the difference follows. */
  readonly otherResistance?: number;
  readonly otherError?: number;
  /** Standard error of each level as a share of it. Default 2 %. */
  readonly levelError?: number;
}

export interface EarthComparisonFit {
  /** By how much the other earth has more resistance, Ω. */
  readonly difference: Fitted;
  readonly resistance?: Fitted;
}

const LEVEL_ERROR = 0.02;

/**
 * An earth against another by the level of a station: the current is as the whole resistance of the aerial's circuit,
 * R'/R = level/level'.
 * @returns resistances (Ω), each with its standard error and range by the errors given
 */
export function fitEarthComparison({
  level,
  otherLevel,
  circuitResistance,
  circuitError,
  otherResistance,
  otherError = 0,
  levelError = LEVEL_ERROR,
}: EarthComparison): EarthComparisonFit {
  const ratio = level / otherLevel;
  const s = Math.hypot((ratio - 1) * circuitError, Math.SQRT2 * levelError * circuitResistance * ratio);
  const difference = circuitResistance * (ratio - 1);
  return {
    difference: fitted(difference, s, reachOf()),
    ...(otherResistance !== undefined && {
      resistance: fitted(otherResistance - difference, Math.hypot(s, otherError), reachOf()),
    }),
  };
}
