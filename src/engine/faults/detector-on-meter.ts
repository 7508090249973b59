import type { DetectorDescription } from '../kinds/detectors/detector-schema.ts';
import { detectorId, detectorModel } from '../kinds/models.ts';
import { root } from '../numerics/roots.ts';
import type { Detector } from '../parts/detector/detector.ts';
import { DETECTOR_KINDS, detectorByKind } from '../parts/detector/library.ts';
import { heatedThrough, heaterFor, heaterPower } from '../parts/detector/thermionic/heater.ts';
import type { Amperes, Ohms, Volts } from '../units/quantities.ts';
import { ohmsOfDevice } from './ohmmeter.ts';

/** A reading, and the lowest and highest of sound samples. */
export interface SampleReading {
  readonly value: number;
  readonly range: readonly [low: number, high: number];
}

/** What an ordinary meter shows across a detector by itself. */
export interface DetectorOnMeter {
  /** Ω, positive lead on the anode; infinite where nothing flows. */
  readonly forward: SampleReading;
  /** Ω, positive lead on the cathode. */
  readonly reverse: SampleReading;
  /** V on the diode range, positive lead on the anode; nothing where its current cannot be reached. */
  readonly drop?: SampleReading;
}

/** Current of a meter's diode range, A, and the voltage that it has for it, V. Common practice, no source. */
const TEST_CURRENT: Amperes = 1e-3;
const TEST_VOLTAGE: Volts = 2.5;

/** The device as described, and two at the ends of what its kind spreads over. */
function samplesOf(detector: DetectorDescription): readonly Detector[] {
  const middle = detectorModel(detector);
  const kind = DETECTOR_KINDS.find(({ id }) => id === detectorId(detector));
  if (!kind) return [middle];
  const { typical, spread } = kind;
  const given = detector as { readonly saturationCurrent?: Amperes; readonly seriesResistance?: Ohms };
  const factor = given.saturationCurrent === undefined ? spread.saturationCurrent : 1;
  const saturationCurrent = given.saturationCurrent ?? typical.saturationCurrent;
  const [lowSeries, highSeries] =
    given.seriesResistance === undefined ? spread.seriesResistance : [given.seriesResistance, given.seriesResistance];
  return [
    middle,
    detectorByKind(kind.id, {
      saturationCurrent: saturationCurrent * factor,
      seriesResistance: lowSeries,
      leakage: typical.leakage * spread.leakage,
    }),
    detectorByKind(kind.id, {
      saturationCurrent: saturationCurrent / factor,
      seriesResistance: highSeries,
      leakage: typical.leakage / spread.leakage,
    }),
  ];
}

const readingOf = ([value, ...others]: readonly number[]): SampleReading => ({
  value,
  range: [Math.min(value, ...others), Math.max(value, ...others)],
});

function dropOf(device: Detector): Volts {
  const excess = (v: Volts): number => device.current(v) - TEST_CURRENT;
  if (excess(0) >= 0) return 0;
  return excess(TEST_VOLTAGE) > 0 ? root(excess, 0, TEST_VOLTAGE, 1e-6) : Number.POSITIVE_INFINITY;
}

/**
 * What a meter shows across a detector with a wire off, over the samples of its kind.
 * @param detector as described; no valve, whose hot cathode is a source of its own
 * @returns Ω both ways with a usual digital ohmmeter, V with its diode range at 1 mA; ranges from the spread that the
 * library states of the kind, the value itself where a device is known by its own figures
 */
export function detectorOnMeter(detector: DetectorDescription): DetectorOnMeter {
  const samples = samplesOf(detector);
  const both = samples.map((device) => ohmsOfDevice(device));
  const drops = samples.map(dropOf);
  return {
    forward: readingOf(both.map(([forward]) => forward)),
    reverse: readingOf(both.map(([, reverse]) => reverse)),
    drop: drops.every(Number.isFinite) ? readingOf(drops) : undefined,
  };
}

/** A valve's heater as a meter shows it. */
export interface HeaterOnMeter {
  /** Ω at room temperature, the heater off. */
  readonly cold: Ohms;
  /** A at the voltage of the set, warmed through. */
  readonly current: Amperes;
}

/**
 * Resistance of a heater when cold, and its current when hot.
 * @param voltage of the set's supply, V, above 0
 * @param rated voltage of the valve, V
 * @returns Ω and A of a small valve with as much heater power as the library's
 */
export function heaterOnMeter(voltage: Volts, rated: Volts): HeaterOnMeter {
  const heater = heaterFor(rated);
  return {
    cold: 1 / heaterPower(heater, 1, heater.roomTemperature),
    current: heaterPower(heater, voltage, heatedThrough(voltage, heater).wire) / voltage,
  };
}
