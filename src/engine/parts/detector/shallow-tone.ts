import { add, type Complex, divide, magnitude, multiply, ONE, scale, subtract } from '../../numerics/complex.ts';
import type { Amperes } from '../../units/quantities.ts';
import type { DetectorSource } from './audio.ts';
import { type AveragedDetector, averagedCurrents } from './averaged.ts';
import type { SteadyDetection } from './steady.ts';

const conjugate = ({ re, im }: Complex): Complex => ({ re, im: -im });

/**
 * What shallow tones do about a carrier that is known: device, circuit and load along their slopes, without harmonics.
 * The limit of `audioDetection` for a small depth, at a small part of its work.
 * @param averaged device @param carrier as it stands open @param steady what the carrier alone does
 * @returns of a tone's sidebands, open voltages of the whole carrier's size, and its load (Ω): peak current of the tone
 *   through the load for each unit of depth, A
 */
export function shallowTones(averaged: AveragedDetector, carrier: DetectorSource, steady: SteadyDetection) {
  const out = averagedCurrents();
  const V = steady.junctionVoltage;
  averaged.at(V, steady.deviceVoltage, out);
  const byPhase = V > 0 ? out.fundamental / V : out.fundamentalByAmplitude;
  // A sideband's current by its own voltage, and by the mirror image of the other's.
  const own = (out.fundamentalByAmplitude + byPhase) / 2;
  const mirrored = (out.fundamentalByAmplitude - byPhase) / 2;
  const standing = multiply(carrier.openCircuit, steady.ratio);
  const size = magnitude(standing);
  const turn = size > 0 ? scale(standing, 1 / size) : ONE;

  return (upper: DetectorSource, lower: DetectorSource, load: Complex): Amperes => {
    const inside = add(ONE, scale(load, out.meanByDirect));
    // The tone across the load acts back on both sidebands.
    const back = divide(scale(load, (out.fundamentalByDirect * out.meanByAmplitude) / 2), inside);
    const byOwn = subtract({ re: own, im: 0 }, back);
    const byMirrored = subtract({ re: mirrored, im: 0 }, back);
    const zu = upper.impedance;
    const zl = conjugate(lower.impedance);
    const above = multiply(upper.openCircuit, conjugate(turn));
    const below = conjugate(multiply(lower.openCircuit, conjugate(turn)));
    const [a, b] = [add(ONE, multiply(zu, byOwn)), multiply(zu, byMirrored)];
    const [c, d] = [multiply(zl, byMirrored), add(ONE, multiply(zl, byOwn))];
    const determinant = subtract(multiply(a, d), multiply(b, c));
    const both = subtract(add(multiply(above, d), multiply(below, a)), add(multiply(below, b), multiply(above, c)));
    const envelope = divide(both, determinant);
    // Half the sum of two sidebands of half the depth each; its phasor's peak is twice that.
    return (out.meanByAmplitude * magnitude(divide(envelope, inside))) / 2;
  };
}
