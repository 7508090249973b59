import { magnitude } from '../../numerics/complex.ts';
import type { StationDescription } from '../../set/place.ts';
import type { Hertz, Volts } from '../../units/quantities.ts';
import type { FieldAtSite } from '../path/field.ts';
import { bearingOf, emfOf, type Receiver, TEST_TONE, type TunedStation } from '../path/receive-station.ts';
import type { Disturbance } from '../path/types.ts';
import { type CarrierAtDetector, disturbances } from './separation.ts';

/** A station as it arrives at the site, whatever the set is tuned to. */
export interface Arriving {
  readonly station: StationDescription;
  readonly field: FieldAtSite;
}

/** With the set tuned to one station, what each other one leaves at the detector, strongest first. */
export function besideStation(set: Receiver, wanted: TunedStation, others: readonly Arriving[]): Disturbance[] {
  const { circuit, network } = set;
  const g = 1 / wanted.steady.inputResistance;
  // A frame without a fixed direction is turned to the wanted station, away from others.
  const facing = bearingOf(wanted.station, wanted.field);
  const carrier = ({ station, field }: Arriving): CarrierAtDetector => ({
    ...sentBy(station),
    voltage:
      emfOf(circuit, station, field, facing) * network.at(station.frequency).level(g, wanted.position, wanted.other),
  });
  const audioLoad = Math.max(magnitude(set.audioLoadAt(TEST_TONE)), 1);
  return disturbances(
    { ...sentBy(wanted.station), voltage: wanted.steady.junctionVoltage },
    others.filter(({ station }) => station !== wanted.station).map(carrier),
    {
      slopeVoltage: circuit.averaged.detector.slopeVoltage,
      loadTime: (circuit.set.load.bypass + 30e-12) / (1 / audioLoad + g / 2),
    },
  );
}

const sentBy = ({ name, frequency, modulation }: StationDescription) => ({
  name,
  frequency,
  modulation: Math.min(modulation, 1),
});

/** Frequencies tried on each side of a response, and steps of its expected width between them. */
const OUTWARD = 40;
const STRIDE = 0.2;
const CLOSING = 10;

/** Between the points 3 dB under the top of what reaches the detector, the pointer left where it is for the station. */
export function measuredWidth(set: Receiver, s: TunedStation): Hertz {
  const f = s.station.frequency;
  const g = 1 / s.steady.inputResistance;
  const level = (at: Hertz): Volts => set.network.at(at).level(g, s.position, s.other);
  const expected = f / s.loadedQ;
  const step = STRIDE * Math.min(expected, 0.5 * f);
  const top = topNear(level, f, step);
  const low = edge(level, top, -step);
  const high = edge(level, top, step);
  return low === undefined || high === undefined ? expected : high - low;
}

/** The highest point uphill of a frequency, step by step. */
function topNear(level: (f: Hertz) => Volts, f: Hertz, step: Hertz): { at: Hertz; height: Volts } {
  let top = { at: f, height: level(f) };
  for (const way of [step, -step])
    for (let k = 0; k < OUTWARD && top.at + way > step; k++) {
      const height = level(top.at + way);
      if (!(height > top.height)) break;
      top = { at: top.at + way, height };
    }
  return top;
}

/** Where a response has fallen 3 dB below its top on one side; undefined where it does not within what is looked at. */
function edge(level: (f: Hertz) => Volts, top: { at: Hertz; height: Volts }, step: Hertz): Hertz | undefined {
  const threshold = top.height * Math.SQRT1_2;
  for (let k = 1; k <= OUTWARD; k++) {
    let outside = top.at + k * step;
    if (!(outside > 0)) return undefined;
    if (level(outside) > threshold) continue;
    let inside = outside - step;
    for (let n = 0; n < CLOSING; n++) {
      const middle = (inside + outside) / 2;
      if (level(middle) > threshold) inside = middle;
      else outside = middle;
    }
    return (inside + outside) / 2;
  }
  return undefined;
}
