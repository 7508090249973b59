import type { Warning } from '../facts/warning.ts';
import type { DetectorDescription } from '../kinds/detectors/detector-schema.ts';
import { usualDescription } from '../kinds/detectors/usual-of.ts';
import { detectorId, detectorModel } from '../kinds/models.ts';
import { magnitude } from '../numerics/complex.ts';
import { maximum } from '../numerics/minimum.ts';
import { type DetectorMerit, detectorMerit } from '../parts/detector/detector-merits.ts';
import { operatingPoint } from '../reception/curves.ts';
import { type DetectionLaw, lawOfDetector } from '../reception/detection/detection-law.ts';
import type { FieldOptions } from '../reception/path/field.ts';
import {
  type Receiver,
  TEST_TONE,
  type TunedStation,
  toneSource,
  toneThrough,
} from '../reception/path/receive-station.ts';
import type { Verdict } from '../reception/path/types.ts';
import type { SetDescription } from '../set/description.ts';
import type { FigureId } from '../uncertainty/figures.ts';
import { rangedAbout } from '../uncertainty/ranged-reception.ts';
import {
  type Amperes,
  type Decibels,
  decibels,
  type Ohms,
  powerDecibels,
  type Ratio,
  type Volts,
} from '../units/quantities.ts';

import { bestSetting } from './match.ts';
import { type Trial, type Trials, trialsOf } from './trial.ts';

/** Of the path of a station: medians. */
interface DetectionFigures {
  readonly directVoltage: Volts;
  readonly carrierVoltage: Volts;
  readonly inputResistance: Ohms;
  readonly loadedQ: number;
  readonly distortion: Ratio;
}

/** One detector in this set, on this station. */
export interface DetectorOnStation extends DetectionFigures {
  readonly description: DetectorDescription;
  readonly bias: Volts;
  /** The one the set has. */
  readonly isOwn: boolean;
  readonly soundPressureLevel: Decibels;
  /** Against the detector the set has. */
  readonly difference: Decibels;
  readonly heard: Verdict;
  /** Zero-signal resistance at its bias. */
  readonly resistance: Ohms;
  /** Carrier across it at which square law has half turned into linear detection, with this load. */
  readonly squareLawEnds: Volts;
  /** Output grows with the carrier across it to this power here: 2 in square law, 1 when it follows the envelope straight. */
  readonly carrierExponent: number;
  readonly law: DetectionLaw;
  /** Output grows with the field to this power here; the loading of the tuned circuit has its part in it. */
  readonly fieldExponent: number;
  /** What it takes off the voltage of the tuned circuit it sits on; at least 0. */
  readonly loading: Decibels;
  /** What the carrier sweeps on its curve, about where, and the mean current there. */
  readonly operating: { readonly voltage: Volts; readonly amplitude: Volts; readonly current: Amperes };
  /** Its curve, rising voltage, over all that any detector compared is swept over, and at least from −0.1 to 0.1 V. */
  readonly curve: readonly { readonly voltage: Volts; readonly current: Amperes }[];
  /** How good it is for faint signals, at its bias. */
  readonly merit: Pick<DetectorMerit, 'resistance' | 'figure'>;
  /** The best tap of its own, by the search that answers every other asker; undefined where there is no tap to choose. */
  readonly bestTap?: BestTap;
  /** Plain resistance in place of the load that takes the most audio power at this tap, and what that gains in power. */
  readonly bestLoad: { readonly resistance: Ohms; readonly gain: Decibels };
  readonly warnings: readonly Warning[];
}

/** A detector at its own best tap; the other figures are of the tap as wired now. */
export interface BestTap {
  readonly turns: number;
  /** Of what is best for the station as things stand: loudness, or clearance where others disturb. */
  readonly of: 'loudness' | 'clearance';
  readonly gain: Decibels;
  readonly soundPressureLevel: Decibels;
  readonly heard: Verdict;
  /** Over the worst of the others, dB. */
  readonly clearance: Decibels;
}

/** Those a builder is likely to have, as descriptions. */
export const USUAL_DETECTORS: readonly DetectorDescription[] = [
  'galena-good',
  'galena-fair',
  'galena-poor',
  'iron-pyrites',
  'zincite-bornite',
  'carborundum',
  'germanium',
  'gold-bonded-germanium',
  'HSMS-2850',
  '1N5711',
  'silicon',
  'valve',
].map((id) => usualDescription(id)!);

/**
 * The same station through any detectors, everything else unchanged, loudest first.
 * @param set as read
 * @param station its place in the list, from 0
 * @param candidates detectors as read; default one of each kind
 * @param tap whether to look for each one's best tap.
 * @param options time and coastline
 * @returns level (dB SPL), audio (V) and best tap of each
 */
export function compareDetectorsOn(
  set: SetDescription,
  station: number,
  candidates?: readonly DetectorDescription[],
  tap = true,
  options: FieldOptions = {},
): DetectorOnStation[] {
  if (!set.place.stations[station]) throw new RangeError(`there is no station ${station}`);
  const own = trialsOf(set, options);
  const now = own.now.medians.figures(station);
  const tried = withOwn(set, candidates).map((description) => {
    // The set's own detector keeps the set itself, so that its answers are those of every other asker.
    const trials = description === set.detector ? own : own.about({ ...set, detector: description });
    const ready = trials.now.receiver;
    const s = { ...trials.now.tuned(station), circuit: ready.circuit };
    const { level, verdict } = trials.now.medians.figures(station);
    return { description, trials, ready, s, level, verdict, ...detectionAsBuilt(trials.now, station) };
  });
  // All that any of them is swept over, so that no one's place is missing from another's curve.
  const swept = tried.map(({ operating }) => operating);
  const lowest = Math.min(-LEAST_REACH, ...swept.map(({ voltage, amplitude }) => 1.1 * (voltage - amplitude)));
  const highest = Math.max(LEAST_REACH, ...swept.map(({ voltage, amplitude }) => 1.1 * (voltage + amplitude)));
  return tried
    .map(({ description, trials, ready, s, level, verdict, figures, operating }): DetectorOnStation => {
      const { detector, bias } = s.circuit;
      const merit = detectorMerit(detector, bias);
      const law = lawOfDetector(s.circuit.averaged, ready.dcResistance, bias);
      return {
        description,
        bias,
        isOwn: description === set.detector && !candidates,
        soundPressureLevel: level,
        difference: level - now.level,
        heard: verdict,
        ...figures,
        resistance: merit.resistance,
        squareLawEnds: law.linearFrom,
        carrierExponent: law.exponentAt(figures.carrierVoltage),
        law: law.lawAt(figures.carrierVoltage),
        fieldExponent: s.work.fieldExponent,
        loading: Math.max(0, -decibels(Math.max(magnitude(s.steady.ratio), 1e-9))),
        operating,
        curve: Array.from({ length: CURVE_POINTS }, (_, k) => {
          // Closer together near zero, where the bend is.
          const t = (2 * k) / (CURVE_POINTS - 1) - 1;
          const voltage = (t < 0 ? -lowest : highest) * t * Math.sqrt(Math.abs(t));
          return { voltage, current: detector.current(voltage) };
        }),
        merit: { resistance: merit.resistance, figure: merit.figure },
        bestTap: tap ? bestTapOf(trials, station) : undefined,
        bestLoad: bestLoad(ready, s),
        warnings: [...detector.warnings, ...s.steady.warnings],
      };
    })
    .sort((a, b) => b.soundPressureLevel - a.soundPressureLevel);
}

/** What the detector does in sets built like this one: medians, which the path of a station has too. */
function detectionAsBuilt(
  { receiver, tuned, drawnStation }: Trial,
  station: number,
): { readonly figures: DetectionFigures; readonly operating: DetectorOnStation['operating'] } {
  const now = tuned(station);
  const { steady, loadedQ, distortion } = now;
  const all = drawnStation(station);
  const median = (now: number, id: FigureId): number => (all ? rangedAbout(now, all.figure(id)).median : now);
  const carrierVoltage = median(steady.junctionVoltage, 'detectorVoltage');
  const directVoltage = median(steady.directVoltage, 'directVoltage');
  return {
    figures: {
      directVoltage,
      carrierVoltage,
      inputResistance: median(steady.inputResistance, 'detectorInputResistance'),
      loadedQ: median(loadedQ, 'loadedQ'),
      distortion: median(distortion, 'distortion'),
    },
    operating: operatingPoint(receiver, now, { detectorVoltage: carrierVoltage, directVoltage }),
  };
}

/** Left to choose, the usual ones, and the set's own where it is none of them: measured, another spot, another heater. */
function withOwn(set: SetDescription, detectors?: readonly DetectorDescription[]): readonly DetectorDescription[] {
  if (detectors) return detectors;
  const figures = (d: DetectorDescription): string => {
    const { slopeVoltage, currentScale, seriesResistance, junctionCapacitance } = detectorModel(d);
    return JSON.stringify([
      detectorId(d),
      slopeVoltage,
      currentScale,
      seriesResistance,
      junctionCapacitance,
      d.bias ?? 0,
      d.wiring,
    ]);
  };
  const own = figures(set.detector);
  return USUAL_DETECTORS.some((d) => figures(d) === own) ? USUAL_DETECTORS : [set.detector, ...USUAL_DETECTORS];
}

const CURVE_POINTS = 121;
/** A curve is drawn this far both ways at least. */
const LEAST_REACH: Volts = 0.1;

/** The plain load that takes most of the tone, the tap left as it is. */
function bestLoad(ready: Receiver, s: TunedStation): DetectorOnStation['bestLoad'] {
  const source = toneSource(ready, s);
  const tone = { tone: TEST_TONE, depth: Math.min(s.station.modulation, 1) };
  const power = (R: Ohms): number =>
    toneThrough({ ...ready, dcResistance: R, audioLoadAt: () => ({ re: R, im: 0 }) }, source, tone).audioPower;
  const resistance = Math.exp(maximum((log) => power(Math.exp(log)), Math.log(100), Math.log(1e7), 3e-4).x);
  return { resistance, gain: powerDecibels(power(resistance) / Math.max(s.audioPower, 1e-30)) };
}

function bestTapOf(trials: Trials, station: number): BestTap | undefined {
  const best = bestSetting(trials, station, 'arrangement.detectorTap');
  if (best === undefined || typeof best.value !== 'number') return undefined;
  const { level, heard, clearance } = best.after;
  return { turns: best.value, of: best.of, gain: best.gain, soundPressureLevel: level, heard, clearance };
}
