import {
  type AudioLimits,
  audioLimits,
  effectiveHeight,
  type FieldOptions,
  fieldsAtSite,
  loaded,
  type Receiver,
  receiver,
  receiveStation,
  type SetDescription,
  setCircuit,
} from '../../engine/index.ts';
import type { BandResponse, DetectorCurve, QCurves, ResonanceCurve } from '../../outputs/plots/index.ts';
import { detectorShortNames } from '../../outputs/words/index.ts';

/** What the plots of the tuned circuit and the detector are drawn from. */
export interface Curves {
  /** What the detector and what follows it do to the programme. */
  readonly audio: AudioLimits;
  readonly resonance: ResonanceCurve;
  readonly band: BandResponse;
  /** A plot for each coil. */
  readonly q: readonly QCurves[];
  readonly detector: DetectorCurve;
}

const CURVE_POINTS = 121;
const BAND_POINTS = 161;
const Q_POINTS = 25;
const DETECTOR_POINTS = 161;

const decibels = (x: number): number => 20 * Math.log10(Math.max(x, 1e-15));

/**
 * The set tuned to one station: what it passes beside it and across the band, and where its detector works.
 * @param covered ends of what the set tunes to, Hz.
 * @returns undefined where there is no such station.
 */
export function curvesFor(
  set: SetDescription,
  index: number,
  covered: readonly [number, number],
  options: FieldOptions = {},
): Curves | undefined {
  const wanted = set.place.stations[index];
  if (!wanted) return undefined;
  const ready = receiver(setCircuit(set), fieldsAtSite(set.place, options));
  const tuned = receiveStation(ready, wanted);
  const { position, other, steady } = tuned;
  const conductance = 1 / steady.inputResistance;
  /** Volts at the detector for a volt in the aerial, with the set left where it is. */
  const passed = (frequency: number): number => loaded(ready.network.at(frequency).at(position, other), conductance);
  // For a field alike at all frequencies, so that the aerial's own slope is in it.
  const level = (frequency: number): number => decibels(passed(frequency) * effectiveHeight(ready.circuit, frequency));
  const { stations } = set.place;
  const span = Math.min(wanted.frequency / 3, Math.max(30e3, (1.8 * wanted.frequency) / tuned.loadedQ));
  return {
    audio: audioLimits(ready, tuned),
    resonance: {
      station: wanted,
      points: sampled(wanted.frequency - span, wanted.frequency + span, CURVE_POINTS, (frequency) => ({
        frequency,
        level: level(frequency),
      })),
      loadedQ: tuned.loadedQ,
      neighbours: stations.filter((one) => one !== wanted),
    },
    band: {
      points: sampled(covered[0], covered[1], BAND_POINTS, (frequency) => ({ frequency, level: level(frequency) })),
      stations: stations.map((one) => ({
        name: one.name,
        frequency: one.frequency,
        level: level(one.frequency) + decibels(ready.fieldOf(one).fieldStrength),
      })),
      wanted: index,
    },
    q: ready.circuit.coils.map((coil, i) => ({
      covered,
      coils: [
        {
          name: ready.circuit.set.coils[i].name,
          points: sampled(covered[0] * 0.8, covered[1] * 1.2, Q_POINTS, (frequency) => {
            const [low, high] = coil.model.qRangeAt(frequency);
            return { frequency, q: coil.model.qAt(frequency), low, high };
          }),
        },
      ],
    })),
    detector: {
      curves: [
        {
          name: ready.circuit.detector.label,
          shorter: detectorShortNames(ready.circuit.set.detector),
          points: deviceCurve(ready, swing(steady.junctionVoltage)),
        },
      ],
      operating: {
        voltage: steady.deviceVoltage,
        amplitude: steady.junctionVoltage,
        current: steady.directCurrent,
      },
    },
  };
}

/** Volts either side of nothing that show the bend and the whole swing. */
const swing = (amplitude: number): number => Math.min(5, Math.max(0.12, amplitude * 2.5));

const deviceCurve = ({ circuit }: Receiver, reach: number) =>
  sampled(-reach, reach, DETECTOR_POINTS, (voltage) => ({ voltage, current: circuit.detector.current(voltage) }));

function sampled<T>(from: number, to: number, count: number, make: (x: number) => T): T[] {
  return Array.from({ length: count }, (_, i) => make(from + ((to - from) * i) / (count - 1)));
}
