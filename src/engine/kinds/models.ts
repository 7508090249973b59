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
import { SOILS, type SoilName, soilOverGround } from '../parts/earth/soil.ts';
import { audioLoad } from '../parts/load/load.ts';
import type { Load } from '../parts/load/model.ts';
import type { Hertz, OhmMetres } from '../units/quantities.ts';
import type { AerialDescription } from './aerials/aerial-schema.ts';
import { type ByKind, byKind, type Of } from './by-kind.ts';
import type { CoilDescription } from './coils/coil-schema.ts';
import { wireOf } from './coils/wire-of.ts';
import type { DetectorDescription } from './detectors/detector-schema.ts';
import type { EarthDescription } from './earths/earth-schema.ts';
import type { LoadDescription } from './loads/load-schema.ts';
import { earthAsMeasured, givenJunction, givenLoad, tuningEnds } from './measured/parts-as-measured.ts';
import { coilAsMeasured } from './measured/winding-as-measured.ts';
import type { TuningDescription } from './tunings/tuning-schema.ts';

/** From what a description says of a part to the part's model: field names differ where a builder's words do. */

/** Enough for the parts of a set and of its trials. */
const MOST_KEPT = 24;

/**
 * A model made once for a description, and for others that say the same: reading checks that it can be built, every
 * what-if shares most parts, and while one part is edited the models of the others serve again.
 */
function once<D extends object, M>(make: (description: D) => M): (description: D) => M {
  const byDescription = new WeakMap<D, M>();
  const byText = new Map<string, M>();
  return (description) => {
    let model = byDescription.get(description);
    if (model !== undefined) return model;
    const text = JSON.stringify(description);
    model = byText.get(text) ?? make(description);
    byDescription.set(description, model);
    byText.delete(text);
    byText.set(text, model);
    if (byText.size > MOST_KEPT) byText.delete(byText.keys().next().value as string);
    return model;
  };
}

export type WireAerialDescription = Exclude<
  AerialDescription,
  { kind: 'frame' | 'ferrite rod' | 'measured' | 'impedance' }
>;

const bentOver = (aerial: Of<AerialDescription, 'inverted-L' | 'T'>): WireAerialShape => ({
  shape: aerial.kind,
  height: aerial.height,
  length: aerial.length,
  base: aerial.base,
  wires: aerial.wires,
  spacing: aerial.spacing,
  wire: { diameter: aerial.wire },
});

const HANGING: ByKind<WireAerialDescription, WireAerialShape> = {
  bent: ({ points, wire }) => ({
    shape: 'bent',
    points: points as [number, number, number][],
    wire: { diameter: wire },
  }),
  horizontal: ({ height, length, wire }) => ({ shape: 'horizontal', height, length, wire: { diameter: wire } }),
  vertical: ({ height, base, wire }) => ({ shape: 'vertical', height, base, wire: { diameter: wire } }),
  sloping: ({ height, length, farHeight, base, wire }) => ({
    shape: 'sloping',
    height,
    length,
    farHeight,
    base,
    wire: { diameter: wire },
  }),
  'inverted-L': bentOver,
  T: bentOver,
};

/** How a described wire aerial hangs. */
export const wireShape = (aerial: WireAerialDescription): WireAerialShape => byKind(HANGING, aerial);

/** @throws RangeError for sizes that cannot be built. */
export const wireAerialModel = once((aerial: WireAerialDescription): AerialModel => wireAerial(wireShape(aerial)));

/** @throws RangeError when two points are given at one frequency. */
export const impedanceModel = once(
  (aerial: Extract<AerialDescription, { kind: 'impedance' }>): MeasuredImpedance => measuredImpedance(aerial.points),
);

/** A named soil brings its own figures; otherwise the resistivity as given, or what is usual over the ground. */
function soilOf({ soil, soilResistivity }: { soil: string; soilResistivity?: number }) {
  if (soil === 'as its resistivity' && soilResistivity !== undefined) return { soil: undefined, soilResistivity };
  if (soil !== 'as its resistivity' && soil !== 'as the place') return { soil, soilResistivity: undefined };
  const usual = soilOverGround();
  const by = (soilResistivity ?? usual.resistivity) / usual.resistivity;
  return {
    soil: undefined,
    soilResistivity: usual.resistivity * by,
    soilResistivityRange: [usual.range[0] * by, usual.range[1] * by] as const,
  };
}

const rodsOrPlateOf = (buried: Of<EarthDescription, 'rod' | 'rods' | 'plate'>, at: EarthConditions): EarthModel =>
  earth({ ...buried, ...soilOf(buried), ...at, shape: buried.kind } as Parameters<typeof earth>[0]);

const wiresOf = (
  wires: Of<EarthDescription, 'buried wire' | 'radials' | 'counterpoise'>,
  at: EarthConditions,
): EarthModel =>
  earth({
    ...wires,
    ...soilOf(wires),
    ...at,
    shape: wires.kind,
    wire: { diameter: wires.wire },
  } as Parameters<typeof earth>[0]);

/** What an earth meets in a set. */
export interface EarthConditions {
  /** That its resistance is stated for. */
  readonly frequency: Hertz;
  /** Of its soil as it usually is, where that is drier or wetter than described, Ω·m. */
  readonly usualResistivity?: OhmMetres;
}

/** In medium wave, where nothing of a set says more. */
const MEDIUM_WAVE: EarthConditions = { frequency: 1e6 };

const EARTHS: ByKind<EarthDescription, EarthModel, [EarthConditions]> = {
  measured: (given) => earth({ shape: 'pipe' in given ? 'water pipe' : 'measured', resistance: given.resistance }),
  rod: rodsOrPlateOf,
  rods: rodsOrPlateOf,
  plate: rodsOrPlateOf,
  'buried wire': wiresOf,
  radials: wiresOf,
  counterpoise: wiresOf,
};

/** Resistivity of the soil that a described earth lies in, Ω·m. */
export const resistivityOf = (earth: Exclude<EarthDescription, { kind: 'measured' }>): number =>
  earth.soil === 'as its resistivity' || earth.soil === 'as the place'
    ? (earth.soilResistivity ?? soilOverGround().resistivity)
    : SOILS[earth.soil as SoilName].resistivity;

const keptEarth = once(
  ({ described, conditions }: { readonly described: EarthDescription; readonly conditions: EarthConditions }) =>
    earthAsMeasured(byKind(EARTHS, described, conditions), described.measured?.resistance),
);

/**
 * An earth of a set, what was measured of it before all.
 * @param conditions default those at 1 MHz
 * @throws RangeError for sizes that cannot be built.
 */
export const earthModel = (described: EarthDescription, conditions: EarthConditions = MEDIUM_WAVE): EarthModel =>
  keptEarth({ described, conditions });

/** @throws RangeError when it cannot be as described. */
export const tuningModel = once(
  (tuning: TuningDescription): VariableCapacitor =>
    variableCapacitor({ ...tuning, measured: tuningEnds(tuning.measured) } as Parameters<typeof variableCapacitor>[0]),
);

/** @throws RangeError when it cannot be as described. */
export const loadModel = once(
  (load: LoadDescription): Load => audioLoad(givenLoad(load) as Parameters<typeof audioLoad>[0]),
);

const LIBRARY_IDS: ByKind<DetectorDescription, string> = {
  galena: ({ spot }) => `galena-${spot}`,
  mineral: ({ mineral }) => mineral.replace(/\s+/g, '-'),
  germanium: ({ make }) => (make === 'gold-bonded' ? 'gold-bonded-germanium' : 'germanium'),
  schottky: ({ type }) => type,
  silicon: ({ kind }) => kind,
  exponential: ({ kind }) => kind,
  valve: ({ kind }) => kind,
  measured: ({ kind }) => kind,
};

/** Which of the library's devices a description means; its kind where it brings its own figures. */
export const detectorId = (detector: DetectorDescription): string => byKind(LIBRARY_IDS, detector);

/** A device of the library, with whatever of its figures the description states. */
const fromLibrary = (detector: Of<DetectorDescription, 'galena' | 'mineral' | 'germanium' | 'schottky' | 'silicon'>) =>
  detectorByKind(detectorId(detector), {
    ...detector,
    leakage: detector.leakage === undefined ? undefined : 1 / detector.leakage,
  });

const DETECTORS: ByKind<DetectorDescription, Detector> = {
  galena: fromLibrary,
  mineral: fromLibrary,
  germanium: fromLibrary,
  schottky: fromLibrary,
  silicon: fromLibrary,
  exponential: (detector) =>
    exponentialDetector({
      saturationCurrent: detector.saturationCurrent,
      ideality: detector.ideality,
      seriesResistance: detector.seriesResistance,
      leakage: detector.leakage === undefined ? undefined : 1 / detector.leakage,
      junctionCapacitance: detector.junctionCapacitance,
      temperature: detector.temperature,
    }),
  valve: ({ heaterVoltage, ratedHeaterVoltage, junctionCapacitance }) =>
    detectorByKind('valve', { heaterVoltage, ratedHeaterVoltage, junctionCapacitance }),
  measured: ({ points, junctionCapacitance }) => measuredDetector({ points, junctionCapacitance }),
};

/** @throws RangeError for values no device has. */
export const detectorModel = once(
  (detector: DetectorDescription): Detector => byKind(DETECTORS, givenJunction(detector)),
);

type WoundDescription = Exclude<CoilDescription, { shape: 'measured' }>;

const wound = (coil: WoundDescription, more: object = {}): CoilModel =>
  makeCoil({ ...coil, ...more, wire: wireOf(coil.wire) } as CoilSpec);

const COILS: ByKind<CoilDescription, CoilModel> = {
  solenoid: (coil) => wound(coil),
  'bank-wound': (coil) => wound(coil),
  multilayer: (coil) => wound(coil, { layerPitch: coil.layerSpacing }),
  spiral: (coil) => wound(coil),
  spider: (coil) => wound(coil),
  basket: (coil) => wound(coil),
  core: (coil) => wound(coil),
  measured: makeCoil,
};

/** @throws RangeError for a coil that cannot be wound. */
export const coilModel = once((coil: CoilDescription): CoilModel => coilAsMeasured(byKind(COILS, coil), coil.measured));
