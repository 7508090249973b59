import { type MeasuredImpedance, measuredImpedance } from '../parts/aerial/measured.ts';
import type { WireAerialShape } from '../parts/aerial/shapes.ts';
import { type AerialModel, wireAerial } from '../parts/aerial/wire-aerial.ts';
import type { VariableCapacitor } from '../parts/capacitor/model.ts';
import { variableCapacitor } from '../parts/capacitor/variable.ts';
import { makeCoil } from '../parts/coil/coil.ts';
import type { CoilModel } from '../parts/coil/model.ts';
import type { CoilSpec } from '../parts/coil/spec.ts';
import type { Detector } from '../parts/detector/detector.ts';
import { exponentialDetector } from '../parts/detector/exponential.ts';
import { detectorByKind } from '../parts/detector/library.ts';
import { measuredDetector } from '../parts/detector/measured.ts';
import { type EarthModel, earth } from '../parts/earth/earth.ts';
import { audioLoad } from '../parts/load/load.ts';
import type { Load } from '../parts/load/model.ts';
import type { AerialDescription } from './aerials/aerial-schema.ts';
import type { CoilDescription } from './coils/coil-schema.ts';
import type { DetectorDescription } from './detectors/detector-schema.ts';
import type { EarthDescription } from './earths/earth-schema.ts';
import type { LoadDescription } from './loads/load-schema.ts';
import type { TuningDescription } from './tunings/tuning-schema.ts';

/** From what a description says of a part to the part's model: field names differ where a builder's words do. */

/** Enough for the parts of a set and of what is being tried beside it. */
const MOST_KEPT = 24;

/**
 * A model made once for a description, and for others that say the same: reading checks that it can be built, every
 * what-if shares most parts, and while one part is edited the others need no making anew.
 */
function once<D extends object, M>(make: (description: D) => M): (description: D) => M {
  const made = new WeakMap<D, M>();
  const alike = new Map<string, M>();
  return (description) => {
    let model = made.get(description);
    if (model !== undefined) return model;
    const text = JSON.stringify(description);
    model = alike.get(text) ?? make(description);
    made.set(description, model);
    alike.delete(text);
    alike.set(text, model);
    if (alike.size > MOST_KEPT) alike.delete(alike.keys().next().value as string);
    return model;
  };
}

export type WireAerialDescription = Exclude<
  AerialDescription,
  { kind: 'frame' | 'ferrite rod' | 'measured' | 'impedance' }
>;

/** How a described wire aerial hangs. */
export function wireShape(aerial: WireAerialDescription): WireAerialShape {
  const wire = { diameter: aerial.wire };
  switch (aerial.kind) {
    case 'bent':
      return { shape: 'bent', points: aerial.points as [number, number, number][], wire };
    case 'horizontal':
      return { shape: 'horizontal', height: aerial.height, length: aerial.length, wire };
    case 'vertical':
      return { shape: 'vertical', height: aerial.height, base: aerial.base, wire };
    case 'sloping':
      return {
        shape: 'sloping',
        height: aerial.height,
        length: aerial.length,
        farHeight: aerial.farHeight,
        base: aerial.base,
        wire,
      };
    case 'inverted-L':
    case 'T':
      return {
        shape: aerial.kind,
        height: aerial.height,
        length: aerial.length,
        base: aerial.base,
        wires: aerial.wires,
        spacing: aerial.spacing,
        wire,
      };
  }
}

/** @throws RangeError for sizes that cannot be built. */
export const wireAerialModel = once((aerial: WireAerialDescription): AerialModel => wireAerial(wireShape(aerial)));

/** @throws RangeError when two points are given at one frequency. */
export const impedanceModel = once(
  (aerial: Extract<AerialDescription, { kind: 'impedance' }>): MeasuredImpedance => measuredImpedance(aerial.points),
);

/** A named soil brings its own figures; otherwise the resistivity as given. */
const soilOf = ({ soil, soilResistivity }: { soil: string; soilResistivity: number }) =>
  soil === 'as its resistivity' ? { soil: undefined, soilResistivity } : { soil, soilResistivity: undefined };

/** @throws RangeError for sizes that cannot be built. */
export const earthModel = once((description: EarthDescription): EarthModel => {
  switch (description.kind) {
    case 'measured':
      return earth({
        shape: 'pipe' in description ? 'water pipe' : 'measured',
        resistance: description.resistance,
      });
    case 'rod':
    case 'rods':
      return earth({ ...description, ...soilOf(description), shape: description.kind } as Parameters<typeof earth>[0]);
    case 'plate':
      return earth({
        shape: 'plate',
        side: description.side,
        depth: description.depth,
        lie: description.lie,
        ...soilOf(description),
      } as Parameters<typeof earth>[0]);
    case 'buried wire':
    case 'radials':
    case 'counterpoise':
      return earth({
        ...description,
        ...soilOf(description),
        shape: description.kind,
        wire: { diameter: description.wire },
      } as Parameters<typeof earth>[0]);
  }
});

/** @throws RangeError when it cannot be as described. */
export const tuningModel = once(
  (tuning: TuningDescription): VariableCapacitor =>
    variableCapacitor(tuning as Parameters<typeof variableCapacitor>[0]),
);

/** @throws RangeError when it cannot be as described. */
export const loadModel = once((load: LoadDescription): Load => audioLoad(load as Parameters<typeof audioLoad>[0]));

/** Which of the library's devices a description means. */
export function detectorId(detector: DetectorDescription): string {
  switch (detector.kind) {
    case 'galena':
      return `galena-${detector.spot}`;
    case 'mineral':
      return detector.mineral.replace(/\s+/g, '-');
    case 'germanium':
      return detector.make === 'gold-bonded' ? 'gold-bonded-germanium' : 'germanium';
    case 'schottky':
      return detector.type;
    default:
      return detector.kind;
  }
}

/** @throws RangeError for values no device has. */
export const detectorModel = once((detector: DetectorDescription): Detector => {
  switch (detector.kind) {
    case 'measured':
      return measuredDetector({ points: detector.points, junctionCapacitance: detector.junctionCapacitance });
    case 'exponential':
      return exponentialDetector({
        saturationCurrent: detector.saturationCurrent,
        ideality: detector.ideality,
        seriesResistance: detector.seriesResistance,
        leakage: detector.leakage === undefined ? undefined : 1 / detector.leakage,
        junctionCapacitance: detector.junctionCapacitance,
        temperature: detector.temperature,
      });
    case 'valve':
      return detectorByKind('valve', {
        heaterVoltage: detector.heaterVoltage,
        ratedHeaterVoltage: detector.ratedHeaterVoltage,
        junctionCapacitance: detector.junctionCapacitance,
      });
    default:
      return detectorByKind(detectorId(detector), {
        ...detector,
        leakage: detector.leakage === undefined ? undefined : 1 / detector.leakage,
      });
  }
});

/** @throws RangeError for a coil that cannot be wound. */
export const coilModel = once((coil: CoilDescription): CoilModel => {
  if (coil.shape === 'measured') return makeCoil(coil);
  const { size, covering, metal, strands } = coil.wire;
  const wire = { diameter: size, covering, metal, strands };
  if (coil.shape === 'multilayer') return makeCoil({ ...coil, wire, layerPitch: coil.layerSpacing } as CoilSpec);
  return makeCoil({ ...coil, wire } as CoilSpec);
});
