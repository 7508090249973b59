import { boundary } from '../../numerics/roots.ts';
import type { AveragedDetector } from '../../parts/detector/averaged.ts';
import { steadyDetector } from '../../parts/detector/steady.ts';
import type { Ohms, Volts } from '../../units/quantities.ts';
import { workingPoint } from './working-point.ts';

/**
 * How a detector's output follows the carrier across it. A faint carrier is always detected by square law. Into a load
 * much lower than its own resistance the output may then grow faster still, until the carrier reaches the bend; in the
 * end it follows the carrier: linear detection.
 */
export type DetectionLaw = 'square' | 'faster than square' | 'between' | 'linear';

/** A detector with its load, for any carrier across it. */
export interface LawOfDetector {
  /** The output grows as this power of the carrier across the detector. */
  exponentAt(carrier: Volts): number;
  /** The carrier above which that exponent stays below 1.5: half way from square law to linear detection. */
  readonly linearFrom: Volts;
  lawAt(carrier: Volts): DetectionLaw;
}

const HALF_WAY = 1.5;
const SQUARE_UP_TO = 2.25;
const SQUARE_DOWN_TO = 1.8;
const STRAIGHT_BELOW = 1.2;
/** Of the carriers looked at: the step from one to the next, and the greatest, V. */
const STEP = 1.2;
const GREATEST: Volts = 300;
const NO_SOURCE = { re: 0, im: 0 };

interface Known {
  readonly dcResistance: Ohms;
  readonly bias: Volts;
  readonly law: LawOfDetector;
}
/** The law last found for a detector: stations and sets that share detector and load share it. */
const known = new WeakMap<AveragedDetector, Known>();

/**
 * The law of a detector with what its mean current flows through, the carrier across it held fixed: what the tuned
 * circuit does when it is loaded is no part of it.
 */
export function lawOfDetector(averaged: AveragedDetector, dcResistance: Ohms, bias: Volts = 0): LawOfDetector {
  const last = known.get(averaged);
  if (last?.dcResistance === dcResistance && last.bias === bias) return last.law;
  const law = findLaw(averaged, dcResistance, bias);
  known.set(averaged, { dcResistance, bias, law });
  return law;
}

function findLaw(averaged: AveragedDetector, dcResistance: Ohms, bias: Volts): LawOfDetector {
  const at = (openCircuit: Volts) =>
    steadyDetector({ averaged, openCircuit, sourceImpedance: NO_SOURCE, dcResistance, bias });
  const standing = at(0).directVoltage;
  const exponentAt = (carrier: Volts): number =>
    workingPoint(averaged, at(carrier), NO_SOURCE, dcResistance, carrier, standing).fieldExponent;
  const samples = sampleUpward(exponentAt, averaged.detector.slopeVoltage / 10);
  const straight = lastAbove(samples, STRAIGHT_BELOW);
  const fasterEnds = lastAbove(samples, SQUARE_UP_TO);
  const firstOff = samples.findIndex(({ exponent }) => exponent < SQUARE_DOWN_TO || exponent > SQUARE_UP_TO);
  const squareEnds = firstOff < 0 ? GREATEST : samples[Math.max(0, firstOff - 1)].carrier;
  return {
    exponentAt,
    linearFrom: closer(lastAbove(samples, HALF_WAY), exponentAt),
    lawAt: (carrier) =>
      carrier >= straight * STEP
        ? 'linear'
        : carrier <= squareEnds
          ? 'square'
          : carrier <= fasterEnds
            ? 'faster than square'
            : 'between',
  };
}

interface ExponentSample {
  readonly carrier: Volts;
  readonly exponent: number;
}

/** The exponent at one carrier after another, until it is linear detection. */
function sampleUpward(exponentAt: (carrier: Volts) => number, faintest: Volts): ExponentSample[] {
  const samples: ExponentSample[] = [];
  for (let carrier = faintest; carrier < GREATEST; carrier *= STEP) {
    const exponent = exponentAt(carrier);
    samples.push({ carrier, exponent });
    if (exponent < STRAIGHT_BELOW) break;
  }
  return samples;
}

/** The greatest carrier sampled whose exponent is above a figure; 0 where none is. */
const lastAbove = (samples: readonly ExponentSample[], figure: number): Volts =>
  samples.findLast(({ exponent }) => exponent > figure)?.carrier ?? 0;

/** Where the exponent passes half way between a carrier sampled and the next. */
function closer(from: Volts, exponentAt: (carrier: Volts) => number): Volts {
  if (!(from > 0)) return from;
  const [low, high] = boundary((v) => exponentAt(v) > HALF_WAY, from, from * STEP, STEP ** (1 / 1024), 'logarithmic');
  return Math.sqrt(low * high);
}
