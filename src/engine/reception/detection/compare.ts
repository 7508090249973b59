import { setCircuit } from '../../built/set-circuit.ts';
import type { Warned } from '../../facts/warning.ts';
import type { DetectorDescription } from '../../kinds/detectors/detector-schema.ts';
import { detectorModel } from '../../kinds/models.ts';
import { magnitude } from '../../numerics/complex.ts';
import { maximum } from '../../numerics/minimum.ts';
import { detectorMerit } from '../../parts/detector/compare.ts';
import type { SetDescription } from '../../set/description.ts';
import {
  type Amperes,
  type Decibels,
  decibels,
  type Ohms,
  powerDecibels,
  type Ratio,
  type Volts,
} from '../../units/quantities.ts';
import { type FieldOptions, fieldsAtSite } from '../path/field.ts';
import {
  type Receiver,
  receiver,
  receiveStation,
  seenBy,
  TEST_TONE,
  type TunedStation,
  toneThrough,
} from '../path/receive-station.ts';
import type { HeardWord } from '../path/types.ts';
import { type DetectionLaw, lawOfDetector } from './detection-law.ts';

/** One detector in this set, on this station. */
export interface DetectorOnStation {
  readonly description: DetectorDescription;
  readonly label: string;
  readonly soundPressureLevel: Decibels;
  /** Against the detector the set has. */
  readonly difference: Decibels;
  readonly heard: HeardWord;
  readonly directVoltage: Volts;
  readonly carrierVoltage: Volts;
  readonly inputResistance: Ohms;
  readonly loadedQ: number;
  readonly distortion: Ratio;
  /** Zero-signal resistance at its bias. */
  readonly resistance: Ohms;
  /** Carrier across it at which square law has half turned into straight detection, with this load. */
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
  /** Its curve near zero, rising voltage, to the greatest swing of all compared. */
  readonly curve: readonly { readonly voltage: Volts; readonly current: Amperes }[];
  /** What it is good for, in a sentence. */
  readonly merit: string;
  /** Turns to tap it at for the loudest sound, and what that gains; undefined where the arrangement has no tap to choose. */
  readonly bestTap?: { readonly turns: number; readonly gain: Decibels };
  /** Plain resistance in place of the load that takes the most audio power at this tap, and what that gains in power. */
  readonly bestLoad: { readonly resistance: Ohms; readonly gain: Decibels };
  readonly warnings: readonly Warned[];
}

const room = { temperature: 300.15, wiring: 'single' } as const;

/** Those a builder is likely to have, as descriptions. */
export const USUAL_DETECTORS: readonly DetectorDescription[] = [
  { kind: 'galena', spot: 'good', ...room },
  { kind: 'galena', spot: 'fair', ...room },
  { kind: 'galena', spot: 'poor', ...room },
  { kind: 'mineral', mineral: 'iron pyrites', ...room },
  { kind: 'mineral', mineral: 'zincite-bornite', ...room },
  { kind: 'mineral', mineral: 'carborundum', bias: 0.8, ...room },
  { kind: 'germanium', make: 'point contact', ...room },
  { kind: 'germanium', make: 'gold-bonded', ...room },
  { kind: 'schottky', type: 'HSMS-2850', ...room },
  { kind: 'schottky', type: '1N5711', ...room },
  { kind: 'silicon', ...room },
  { kind: 'valve', heaterVoltage: 6.3, ratedHeaterVoltage: 6.3, wiring: 'single' },
];

const SHARES = [0.1, 0.15, 0.22, 0.32, 0.45, 0.63, 0.8, 1];

/** The same station through any detectors, all else as it is, loudest first. @param tap whether to look for each one's best tap. */
export function compareDetectorsOn(
  set: SetDescription,
  station: number,
  candidates?: readonly DetectorDescription[],
  tap = true,
  options: FieldOptions = {},
): DetectorOnStation[] {
  const wanted = set.place.stations[station];
  if (!wanted) throw new RangeError(`there is no station ${station}`);
  const fieldOf = fieldsAtSite(set.place, options);
  const on = (changed: SetDescription): TunedStation & { circuit: ReturnType<typeof setCircuit> } => {
    const circuit = setCircuit(changed);
    return { ...receiveStation(receiver(circuit, fieldOf), wanted), circuit };
  };
  const now = on(set).heard.spl;
  const tried = withOwn(set, candidates).map((description) => {
    const changed = { ...set, detector: description };
    return { description, changed, s: on(changed) };
  });
  const reach = Math.min(5, Math.max(0.1, ...tried.map(({ s }) => 1.3 * s.steady.junctionVoltage)));
  return tried
    .map(({ description, changed, s }): DetectorOnStation => {
      const { detector, bias } = s.circuit;
      const ready = receiver(s.circuit, fieldOf);
      const merit = detectorMerit(detector, bias);
      const law = lawOfDetector(s.circuit.averaged, ready.dcResistance, bias);
      return {
        description,
        label: `${bias === 0 ? detector.label : `${detector.label}, ${bias} V bias`}${description === set.detector && !candidates ? ', the one in the set' : ''}`,
        soundPressureLevel: s.heard.spl,
        difference: s.heard.spl - now,
        heard: s.heard.words,
        directVoltage: s.steady.directVoltage,
        carrierVoltage: s.steady.junctionVoltage,
        inputResistance: s.steady.inputResistance,
        loadedQ: s.loadedQ,
        distortion: s.distortion,
        resistance: merit.resistance,
        squareLawEnds: law.straightFrom,
        carrierExponent: law.exponentAt(s.steady.junctionVoltage),
        law: law.lawAt(s.steady.junctionVoltage),
        fieldExponent: s.work.fieldExponent,
        loading: Math.max(0, -decibels(Math.max(magnitude(s.steady.ratio), 1e-9))),
        operating: {
          voltage: s.steady.deviceVoltage,
          amplitude: s.steady.junctionVoltage,
          current: s.steady.directCurrent,
        },
        curve: Array.from({ length: CURVE_POINTS }, (_, k) => {
          // Closer together near zero, where the bend is.
          const t = (2 * k) / (CURVE_POINTS - 1) - 1;
          const voltage = reach * t * Math.sqrt(Math.abs(t));
          return { voltage, current: detector.current(voltage) };
        }),
        merit: merit.words,
        bestTap: tap ? bestTap(changed, s.heard.spl, (x) => on(x).heard.spl) : undefined,
        bestLoad: bestLoad(ready, s),
        warnings: [...detector.warnings, ...s.steady.warnings],
      };
    })
    .sort((a, b) => b.soundPressureLevel - a.soundPressureLevel);
}

/** Left to choose, the usual ones, and the set's own where it is none of them: measured, another spot, another heater. */
function withOwn(set: SetDescription, given?: readonly DetectorDescription[]): readonly DetectorDescription[] {
  if (given) return given;
  const figures = (d: DetectorDescription): string => {
    const { label, slopeVoltage, currentScale, seriesResistance, junctionCapacitance } = detectorModel(d);
    return JSON.stringify([
      label,
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

/** The plain load that takes most of the tone, the tap left as it is. */
function bestLoad(ready: Receiver, s: TunedStation): DetectorOnStation['bestLoad'] {
  const seen = seenBy(ready, s);
  const tone = { tone: TEST_TONE, depth: Math.min(s.station.modulation, 1) };
  const power = (R: Ohms): number =>
    toneThrough({ ...ready, dcResistance: R, audioLoadAt: () => ({ re: R, im: 0 }) }, seen, tone).audioPower;
  const resistance = Math.exp(maximum((log) => power(Math.exp(log)), Math.log(100), Math.log(1e7), 3e-4).x);
  return { resistance, gain: powerDecibels(power(resistance) / Math.max(s.audioPower, 1e-30)) };
}

function bestTap(
  set: SetDescription,
  now: Decibels,
  level: (changed: SetDescription) => Decibels,
): DetectorOnStation['bestTap'] {
  const { arrangement } = set;
  if (
    arrangement.kind !== 'direct' &&
    arrangement.kind !== 'series capacitor' &&
    arrangement.kind !== 'tapped' &&
    arrangement.kind !== 'coupled' &&
    arrangement.kind !== 'two circuits'
  )
    return undefined;
  const coil = set.coils.find((c) => c.name === arrangement.coil);
  if (!coil) return undefined;
  const turns = coil.shape === 'multilayer' ? coil.turnsPerLayer * coil.layers : coil.turns;
  let best = { turns: arrangement.detectorTap ?? turns, gain: 0 };
  for (const share of SHARES) {
    const at = Math.max(1, Math.round(turns * share));
    const gain = level({ ...set, arrangement: { ...arrangement, detectorTap: at } as typeof arrangement }) - now;
    if (gain > best.gain) best = { turns: at, gain };
  }
  return best;
}
