import {
  add,
  type Complex,
  complex,
  divide,
  hypotenuse,
  magnitude,
  multiply,
  reciprocal,
  scale,
  subtract,
} from '../../numerics/complex.ts';
import type { DetectorSource } from '../../parts/detector/audio.ts';
import { steadyDetector } from '../../parts/detector/steady.ts';
import { type Decibels, decibels, type Ohms, type Ratio, type Siemens, type Volts } from '../../units/quantities.ts';
import type { CarrierLaw } from './carrier-law.ts';
import { type CarrierBalance, slopesByCarriers, strikeBalance, type TwoCarriers } from './two-carriers.ts';

/** A station's carrier and the sidebands of its tone, seen from the detector; open voltages of the whole carrier's size. */
export interface ReceivedProgramme {
  readonly carrier: DetectorSource;
  readonly upper: DetectorSource;
  readonly lower: DetectorSource;
  readonly depth: Ratio;
}

export interface TwoProgrammes {
  readonly law: CarrierLaw;
  readonly own: ReceivedProgramme;
  readonly other: ReceivedProgramme;
  readonly isOtherBelow: boolean;
  readonly dcResistance: Ohms;
  /** Load at the frequency of the beat, Ω. */
  readonly beatLoad: Complex;
  readonly bias: Volts;
  /** Size of the load at the tones, Ω. */
  readonly audioLoad: Ohms;
  /** What the detector loads the circuit with at the wanted carrier alone: where to begin, S. */
  readonly conductance: Siemens;
}

/** Points of the quadrature in both tones, and whether one lies opposite to that before it. */
const MOMENTS: readonly (readonly [own: number, other: number, isOpposite: boolean])[] = [
  [1, 1, false],
  [-1, -1, true],
  [1, -1, false],
  [-1, 1, true],
];

/**
 * Wanted over unwanted tone behind a detector that two modulated carriers meet. While beat and carriers are fast against
 * the tones, each moment of both tones is a balance of its own: direct voltage by the depths that the loaded circuit
 * leaves of both, each sideband by its own gain; a tone is what of it follows that tone, by Gauss–Chebyshev quadrature of
 * two points for each (exact for a cubic). The audio load is the same to both and falls out.
 * @returns dB; undefined where a balance is not struck
 */
export function toneRatio(pair: TwoProgrammes, balance: CarrierBalance): Decibels | undefined {
  const { law, own, other } = pair;
  const z1 = own.carrier.impedance;
  const z2 = other.carrier.impedance;
  const E1 = magnitude(own.carrier.openCircuit);
  const E2 = magnitude(other.carrier.openCircuit);
  const carriers: TwoCarriers = {
    law,
    own: E1,
    other: E2,
    source: [imageOf(z1, z2), z1, z2],
    dcResistance: pair.dcResistance,
    beatLoad: pair.isOtherBelow ? complex(pair.beatLoad.re, -pair.beatLoad.im) : pair.beatLoad,
    bias: pair.bias,
  };
  begin(pair, balance, E1, E2);
  if (!strikeBalance(carriers, balance)) return undefined;
  const { x, kept } = balance;
  const deep = [depthOf(own, law, complex(x[2], x[3]), E1), depthOf(other, law, complex(x[4], x[5]), E2)];
  const { middle, byOwn, byOther, off } = kept;
  middle.set(x);
  // About the mean the direct voltage moves along the load for audio.
  const audioLoad = Math.max(pair.audioLoad, 1);
  const moving = {
    ...carriers,
    dcResistance: audioLoad,
    bias: pair.bias - (pair.dcResistance - audioLoad) * balance.mean,
  };
  if (!slopesByCarriers(moving, balance, byOwn, byOther)) return undefined;
  let [first, second] = [0, 0];
  // Of two moments on opposite sides of the mean, the second begins with what the first was off the straight line.
  for (const [a, b, isOpposite] of MOMENTS) {
    const [moved1, moved2] = [a * Math.SQRT1_2 * deep[0] * E1, b * Math.SQRT1_2 * deep[1] * E2];
    if (!isOpposite) off.fill(0);
    for (let k = 0; k < x.length; k++) {
      const straight = middle[k] + moved1 * byOwn[k] + moved2 * byOther[k];
      x[k] = straight + off[k];
      off[k] = -straight;
    }
    if (!strikeBalance({ ...moving, own: E1 + moved1, other: E2 + moved2 }, balance)) return undefined;
    for (let k = 0; k < x.length; k++) off[k] += x[k];
    first += a * balance.mean;
    second += b * balance.mean;
  }
  const ratio = decibels(Math.abs(first / second));
  return Number.isFinite(ratio) ? ratio : undefined;
}

/** Both carriers as the wanted one's conductance leaves them, and the direct voltage of a carrier as high as both: no current to begin with is beyond the answer's. */
function begin(
  { law, own, other, dcResistance, bias, conductance }: TwoProgrammes,
  { x }: CarrierBalance,
  E1: Volts,
  E2: Volts,
) {
  const loadedVoltage = (E: Volts, z: Complex) => divide(complex(E), add(complex(1), scale(z, conductance)));
  const V1 = loadedVoltage(E1, own.carrier.impedance);
  const V2 = loadedVoltage(E2, other.carrier.impedance);
  const steady = steadyDetector({
    averaged: law.averaged,
    openCircuit: magnitude(V1) + magnitude(V2),
    sourceImpedance: complex(0),
    dcResistance: dcResistance + law.directResistance,
    bias,
  });
  x.fill(0);
  x.set([V1.re, V1.im, V2.re, V2.im, steady.deviceVoltage], 2);
}

/** Depth of a programme at the detector, its sidebands past the loaded circuit. @param voltage of the carrier E, V. */
function depthOf(
  { carrier, upper, lower, depth }: ReceivedProgramme,
  law: CarrierLaw,
  voltage: Complex,
  E: Volts,
): Ratio {
  const inside = add(carrier.impedance, complex(law.carrierResistance));
  const current = divide(subtract(complex(E), voltage), multiply(inside, voltage));
  const reaches = ({ openCircuit, impedance }: DetectorSource): Complex =>
    divide(openCircuit, add(complex(1), multiply(current, add(impedance, complex(law.carrierResistance)))));
  const whole = reaches(carrier);
  const u = divide(reaches(upper), whole);
  const l = divide(reaches(lower), whole);
  return (depth * hypotenuse(u.re + l.re, u.im - l.im)) / 2;
}

/** Impedance on the far side of the wanted carrier: about it the admittance of a tuned circuit is nearly straight. */
function imageOf(own: Complex, other: Complex): Complex {
  if (!(magnitude(own) > 1e-6 && magnitude(other) > 1e-6)) return own;
  const [y1, y2] = [reciprocal(own), reciprocal(other)];
  return reciprocal(complex(Math.max(2 * y1.re - y2.re, Math.min(y1.re, y2.re)), 2 * y1.im - y2.im));
}
