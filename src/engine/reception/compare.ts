import { setCircuit } from '../circuit/set-circuit.ts';
import { detectorMerit, squareLawEnds } from '../parts/detector/compare.ts';
import type { SetDescription } from '../set/description.ts';
import type { DetectorDescription } from '../set/parts/detector.ts';
import type { Decibels, Ohms, Ratio, Volts } from '../units/quantities.ts';
import { type FieldOptions, fieldsAtSite } from './field.ts';
import { receiver, receiveStation, type TunedStation } from './receive-station.ts';
import type { HeardWord } from './types.ts';

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
  /** Carrier at which square law has half turned into straight detection. */
  readonly squareLawEnds: Volts;
  /** What it is good for, in a sentence. */
  readonly merit: string;
  /** Turns to tap it at for the loudest sound, and what that gains; undefined where the arrangement has no tap to choose. */
  readonly bestTap?: { readonly turns: number; readonly gain: Decibels };
  readonly warnings: readonly string[];
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
  candidates: readonly DetectorDescription[] = USUAL_DETECTORS,
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
  return candidates
    .map((description): DetectorOnStation => {
      const changed = { ...set, detector: description };
      const s = on(changed);
      const { detector, bias } = s.circuit;
      return {
        description,
        label: bias === 0 ? detector.label : `${detector.label}, ${bias} V bias`,
        soundPressureLevel: s.heard.spl,
        difference: s.heard.spl - now,
        heard: s.heard.words,
        directVoltage: s.steady.directVoltage,
        carrierVoltage: s.steady.junctionVoltage,
        inputResistance: s.steady.inputResistance,
        loadedQ: s.loadedQ,
        distortion: s.distortion,
        resistance: detectorMerit(detector, bias).resistance,
        squareLawEnds: squareLawEnds(detector, Math.min(receiver(s.circuit, fieldOf).dcResistance, 1e9), bias),
        merit: detectorMerit(detector, bias).words,
        bestTap: tap ? bestTap(changed, s.heard.spl, (x) => on(x).heard.spl) : undefined,
        warnings: [...detector.warnings, ...s.steady.warnings],
      };
    })
    .sort((a, b) => b.soundPressureLevel - a.soundPressureLevel);
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
