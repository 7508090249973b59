import { changedDetector } from '../../src/engine/built/changed-parts.ts';
import type { SetCircuit } from '../../src/engine/built/set-circuit.ts';
import { editedElements, withDevice } from '../../src/engine/faults/planting.ts';
import type { Element } from '../../src/engine/network/elements.ts';
import { PART } from '../../src/engine/network/part-ids.ts';
import { gaussian, uniform } from '../../src/engine/numerics/random.ts';
import { textHash } from '../../src/engine/numerics/text-hash.ts';
import type { Ratio } from '../../src/engine/units/quantities.ts';

/** σ of the natural logarithm of each value; common practice, no source. */
const FIXED_PART = 0.05;
/** Of coils but the one that is tuned: the search draws that one's. */
const COIL_CAPACITANCE = 0.2;
const WIRE = 0.03;
const DEVICE_LEAKAGE = 0.5;
const DEVICE_RESISTANCE = 0.3;
/** σ of the slope of a device's law, in units of n. */
const IDEALITY = 0.05;
/** Share of the flux between stretches of coils that is missing at one σ. */
const LOST_FLUX = 0.01;

/**
 * A set as somebody else would calculate or build it: tolerances of fixed parts, wire and flux of coils, capacitance of coils
 * that are not tuned, and the law of the detector are others, none of which a search for faults draws.
 * @param circuit of a set
 * @param seed of the copy
 * @param wider multiplies all deviations
 * @returns the copy; the same whichever position of the pointer is asked for
 */
export function roughCopy(circuit: SetCircuit, seed: number, wider: Ratio): SetCircuit {
  // The stretches of a coil change with the position of a slider: they share their deviations.
  const drawn = (id: string): number => wider * gaussian(uniform(seed ^ textHash(id.replace(/:[\d.]+-[\d.]+/g, ''))))();
  const times = (id: string, deviation: number): Ratio => Math.exp(deviation * drawn(id));
  const { tuningCoil } = circuit;
  const tuned = tuningCoil && 'id' in tuningCoil ? tuningCoil.id : PART.loop;
  const deviationOf = ({ owner }: Extract<Element, { kind: 'capacitor' }>): number =>
    owner.role !== 'self-capacitance' ? FIXED_PART : owner.part === tuned ? 0 : COIL_CAPACITANCE;
  const changed = (e: Element): Element => {
    switch (e.kind) {
      case 'mutual':
        return { ...e, mutual: e.mutual * Math.max(0, 1 - LOST_FLUX * Math.abs(drawn(e.id))) };
      case 'capacitor':
        return { ...e, capacitance: e.capacitance * times(e.id, deviationOf(e)) };
      case 'resistor':
        return typeof e.resistance === 'number' && e.owner.role === 'part'
          ? { ...e, resistance: e.resistance * times(e.id, FIXED_PART) }
          : e;
      case 'inductor': {
        const { resistance } = e;
        const wire = times(e.id, WIRE);
        return typeof resistance === 'number'
          ? { ...e, resistance: wire * resistance }
          : { ...e, resistance: (f) => (f > 0 ? 1 : wire) * resistance(f) };
      }
      default:
        return e;
    }
  };
  const device = changedDetector(circuit.detector, {
    ideality: IDEALITY * drawn('ideality'),
    leakage: times('leakage', DEVICE_LEAKAGE),
    seriesResistance: times('series resistance', DEVICE_RESISTANCE),
  });
  return withDevice(
    editedElements(circuit, (list) => list.map(changed)),
    device,
  );
}
