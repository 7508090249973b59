import { ImpossibleValues } from '../../facts/impossible-values.ts';
import type { Amperes, Farads, Kelvins, Ohms, Siemens, Volts } from '../../units/quantities.ts';
import type { Detector } from './detector.ts';
import { type ExponentialOptions, exponentialDetector } from './exponential.ts';
import { cathodeTemperature, heaterFor, SMALL_VALVE_HEATER } from './thermionic/heater.ts';
import { thermionicDetector } from './thermionic/thermionic.ts';

type Range = readonly [low: number, high: number];

/** How far nine samples in ten of a kind lie from the typical one. */
export interface KindSpread {
  /** ×/÷. */
  readonly saturationCurrent: number;
  /** ±. */
  readonly ideality: number;
  /** Low and high, Ω, about the typical one. */
  readonly seriesResistance: Range;
  /** ×/÷. */
  readonly leakage: number;
  /** Who says so of the series resistance and of the rest; undefined: common practice, no source. */
  readonly source: { readonly seriesResistance?: string; readonly rest?: string };
}

const factorOf = (middle: Ohms, factor: number): Range => [middle / factor, middle * factor];
const SHEETS = 'makers’ data sheets and simulation models';

/**
 * A spot of a mineral. No measured curve with figures could be read, neither of galena nor of the others: papers and
 * handbooks give the gap of natural lead sulphide (0.37 eV) and pictures of curves, the rest is common practice.
 */
const spotSpread = (seriesResistance: Ohms): KindSpread => ({
  saturationCurrent: 4,
  ideality: 0.3,
  seriesResistance: factorOf(seriesResistance, 2.5),
  leakage: 4,
  source: {},
});

/** What is known of one kind of junction: usual figures, how far samples stray, and who says so. */
export interface DetectorKind {
  readonly id: string;
  readonly family: 'galena' | 'mineral' | 'germanium' | 'schottky' | 'silicon' | 'valve';
  readonly typical: {
    readonly saturationCurrent: Amperes;
    readonly ideality: number;
    readonly seriesResistance: Ohms;
    readonly leakage: Siemens;
    readonly junctionCapacitance: Farads;
    readonly energyGap: number;
  };
  /** Least and greatest that anybody reports. */
  readonly range: { readonly saturationCurrent: Range; readonly ideality: Range };
  readonly spread: KindSpread;
  readonly reverseLimit?: Volts;
  /** Bias that wakes it, where it needs one. */
  readonly usualBias?: Volts;
  /** Whether a knock moves it off its working point. */
  readonly knocks: boolean;
  readonly source: string;
  readonly provenance: 'looked up' | 'from memory' | 'ranges from memory, figures chosen within them';
}

const mineralCapacitance = 5e-12;
const OHMS = (ohms: number): Siemens => 1 / ohms;
const MEMORY = 'ranges from memory, figures chosen within them';
const SHEET = 'HSMS-280x/281x/282x/285x/286x data sheets, SPICE tables (Hewlett-Packard / Agilent, 1997–1999)';

const galena = (
  quality: 'good' | 'fair' | 'poor',
  [saturationCurrent, ideality, seriesResistance, leak]: readonly [number, number, number, number],
): DetectorKind => ({
  id: `galena-${quality}`,
  family: 'galena',
  typical: {
    saturationCurrent,
    ideality,
    seriesResistance,
    leakage: OHMS(leak),
    junctionCapacitance: mineralCapacitance,
    energyGap: 0.37,
  },
  range: { saturationCurrent: [1e-7, 1e-5], ideality: [1.3, 2.5] },
  spread: spotSpread(seriesResistance),
  knocks: true,
  source:
    'Collected hobby measurements, low confidence; gap of natural lead sulphide 0.37 eV (1954); no measured curve with figures was found',
  provenance: MEMORY,
});

const mineral = (
  id: string,
  typical: Omit<DetectorKind['typical'], 'junctionCapacitance'>,
  range: DetectorKind['range'],
  rest: Partial<DetectorKind> = {},
): DetectorKind => ({
  id,
  family: 'mineral',
  typical: { ...typical, junctionCapacitance: mineralCapacitance },
  range,
  spread: spotSpread(typical.seriesResistance),
  knocks: true,
  source: 'Descriptions of such detectors in early handbooks, low confidence',
  provenance: MEMORY,
  ...rest,
});

const schottkySpread = (Rs: Ohms): KindSpread => ({
  saturationCurrent: 1.7,
  ideality: 0.03,
  seriesResistance: factorOf(Rs, 1.4),
  leakage: 1,
  source: { seriesResistance: SHEETS, rest: SHEETS },
});

const schottky = (type: string, Is: number, n: number, Rs: number, Cj: number, reverseLimit: number): DetectorKind => ({
  id: type,
  family: 'schottky',
  typical: {
    saturationCurrent: Is,
    ideality: n,
    seriesResistance: Rs,
    leakage: 0,
    junctionCapacitance: Cj,
    energyGap: 0.69,
  },
  range: { saturationCurrent: [Is / 2, Is * 2], ideality: [1.03, 1.12] },
  spread: schottkySpread(Rs),
  reverseLimit,
  knocks: false,
  source: SHEET,
  provenance: 'looked up',
});

/** Every kind the library knows, best known families first. Values at 25 °C. */
export const DETECTOR_KINDS: readonly DetectorKind[] = [
  galena('good', [1.5e-6, 1.4, 60, 400e3]),
  galena('fair', [3e-6, 1.8, 200, 60e3]),
  galena('poor', [6e-6, 2.4, 600, 12e3]),
  mineral(
    'iron-pyrites',
    { saturationCurrent: 2e-6, ideality: 2, seriesResistance: 300, leakage: OHMS(50e3), energyGap: 0.95 },
    { saturationCurrent: [2e-7, 2e-5], ideality: [1.5, 3] },
  ),
  mineral(
    'zincite-bornite',
    { saturationCurrent: 1e-6, ideality: 1.7, seriesResistance: 250, leakage: OHMS(150e3), energyGap: 0.8 },
    { saturationCurrent: [1e-7, 1e-5], ideality: [1.4, 2.5] },
  ),
  mineral(
    'carborundum',
    { saturationCurrent: 5e-9, ideality: 5, seriesResistance: 3000, leakage: OHMS(1e6), energyGap: 2 },
    { saturationCurrent: [5e-10, 5e-8], ideality: [3, 8] },
    {
      usualBias: 0.8,
      knocks: false,
      source:
        'A curve-tracer picture of a sealed carborundum detector (20 µA and 0.5 V a division: a gradual bend, unmoved by tapping) and a note that it wants about 1 V of bias; figures chosen to match, low confidence',
    },
  ),
  mineral(
    'silicon-crystal',
    { saturationCurrent: 2e-7, ideality: 1.9, seriesResistance: 400, leakage: OHMS(80e3), energyGap: 1.11 },
    { saturationCurrent: [2e-8, 2e-6], ideality: [1.5, 2.5] },
  ),
  {
    id: 'germanium',
    family: 'germanium',
    typical: {
      saturationCurrent: 8e-7,
      ideality: 1.2,
      seriesResistance: 75,
      leakage: OHMS(3e6),
      junctionCapacitance: 1e-12,
      energyGap: 0.67,
    },
    range: { saturationCurrent: [1e-7, 5e-6], ideality: [1, 1.6] },
    // 0.65, 1.05 and 1.9 V at 10 mA, least, usual and greatest, less 0.29 V of the junction.
    spread: {
      saturationCurrent: 4,
      ideality: 0.15,
      seriesResistance: [35, 160],
      leakage: 3,
      source: { seriesResistance: 'forward voltage at 10 mA in makers’ data sheets' },
    },
    reverseLimit: 30,
    knocks: false,
    source: 'Circuit-simulation libraries and hobby measurements',
    provenance: MEMORY,
  },
  {
    id: 'gold-bonded-germanium',
    family: 'germanium',
    typical: {
      saturationCurrent: 2e-6,
      ideality: 1.08,
      seriesResistance: 5,
      leakage: OHMS(2e6),
      junctionCapacitance: 2e-12,
      energyGap: 0.67,
    },
    range: { saturationCurrent: [5e-7, 5e-6], ideality: [1, 1.2] },
    spread: { saturationCurrent: 3, ideality: 0.08, seriesResistance: factorOf(5, 2), leakage: 3, source: {} },
    reverseLimit: 25,
    knocks: false,
    source: 'Circuit-simulation libraries and hobby measurements',
    provenance: MEMORY,
  },
  schottky('HSMS-2850', 3e-6, 1.06, 25, 0.18e-12, 3.8),
  schottky('HSMS-2860', 5e-8, 1.08, 5, 0.18e-12, 7),
  schottky('HSMS-2820', 2.2e-8, 1.08, 5, 0.7e-12, 15),
  schottky('HSMS-2810', 4.8e-9, 1.08, 10, 1.1e-12, 25),
  schottky('HSMS-2800', 3e-8, 1.08, 30, 1.6e-12, 75),
  {
    id: '1N5711',
    family: 'schottky',
    typical: {
      saturationCurrent: 1e-8,
      ideality: 1.05,
      seriesResistance: 20,
      leakage: 0,
      junctionCapacitance: 2e-12,
      energyGap: 0.69,
    },
    range: { saturationCurrent: [3e-9, 3e-8], ideality: [1.02, 1.1] },
    spread: schottkySpread(20),
    reverseLimit: 70,
    knocks: false,
    source: 'Behaviour near 0 V; the common library fit (315 nA, n = 2.03) is made at milliamperes and is wrong here',
    provenance: 'from memory',
  },
  {
    id: 'silicon',
    family: 'silicon',
    typical: {
      saturationCurrent: 4e-9,
      ideality: 1.9,
      seriesResistance: 0.7,
      leakage: 0,
      junctionCapacitance: 0.95e-12,
      energyGap: 1.11,
    },
    range: { saturationCurrent: [2e-9, 6e-9], ideality: [1.7, 2] },
    spread: {
      saturationCurrent: 1.8,
      ideality: 0.1,
      seriesResistance: factorOf(0.7, 1.4),
      leakage: 1,
      source: { seriesResistance: SHEETS, rest: SHEETS },
    },
    reverseLimit: 75,
    usualBias: 0.2,
    knocks: false,
    source:
      'Makers’ simulation models of the 1N4148 and 1N914 (Is 5.84 nA, n 1.94, Rs 0.70 Ω, Cj 0.95 pF; Is 5 nA, n 2.0)',
    provenance: 'looked up',
  },
];

/** What a sample on the bench may change. Left out: usual for its kind. */
export interface DetectorOverrides {
  readonly saturationCurrent?: Amperes;
  readonly ideality?: number;
  readonly seriesResistance?: Ohms;
  readonly leakage?: Siemens;
  readonly junctionCapacitance?: Farads;
  /** Of the room; default 300 K. Valves: not used. */
  readonly temperature?: Kelvins;
  /** Valves only; default the rated voltage. */
  readonly heaterVoltage?: Volts;
  /** Valves only; default 6.3 V. */
  readonly ratedHeaterVoltage?: Volts;
}

const LIBRARY_TEMPERATURE = 298.15;

/** Ids of `detectorByKind`, the valve last. */
export const DETECTOR_IDS: readonly string[] = [...DETECTOR_KINDS.map((kind) => kind.id), 'valve'];

/**
 * A device by its kind. A saturation current given in `overrides` is taken as measured at the working temperature; the
 * library's own are carried from 25 °C to it.
 * @param id one of `DETECTOR_IDS`
 * @param overrides figures to take in place of the library's, SI
 * @returns a device: its current (A) by voltage (V)
 * @throws RangeError for an unknown kind or a value outside its range.
 */
export function detectorByKind(id: string, overrides: DetectorOverrides = {}): Detector {
  if (id === 'valve') {
    const rated = overrides.ratedHeaterVoltage ?? SMALL_VALVE_HEATER.ratedVoltage;
    const heater = heaterFor(rated);
    return thermionicDetector({
      temperature: cathodeTemperature(overrides.heaterVoltage ?? rated, heater),
      capacitance: overrides.junctionCapacitance,
      leakage: overrides.leakage,
    });
  }
  const kind = DETECTOR_KINDS.find((k) => k.id === id);
  if (!kind) throw new ImpossibleValues({ code: 'detector.unknown', detector: id, detectors: DETECTOR_IDS });
  const { typical } = kind;
  const temperature = overrides.temperature ?? 300;
  const options: ExponentialOptions = {
    saturationCurrent: overrides.saturationCurrent ?? typical.saturationCurrent,
    ideality: overrides.ideality ?? typical.ideality,
    seriesResistance: overrides.seriesResistance ?? typical.seriesResistance,
    leakage: overrides.leakage ?? typical.leakage,
    junctionCapacitance: overrides.junctionCapacitance ?? typical.junctionCapacitance,
    temperature,
    measuredAt: overrides.saturationCurrent === undefined ? LIBRARY_TEMPERATURE : temperature,
    energyGap: typical.energyGap,
    reverseLimit: kind.reverseLimit,
  };
  return exponentialDetector(options);
}
