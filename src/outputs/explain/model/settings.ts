import { usualDescription } from '../../../engine/kinds/detectors/usual-of.ts';
import { detectorModel } from '../../../engine/kinds/models.ts';
import { DETECTOR_IDS } from '../../../engine/parts/detector/library.ts';
import type { Farads, Hertz, Ohms, Ratio, Volts } from '../../../engine/units/quantities.ts';
import { type BandName, nearestBand } from '../../../engine/vary/bands.ts';
import type { OneWay } from './one-way.ts';
import type { WaveProgramme } from './wave-programme.ts';
import type { WaveSpec, WaveWorkingPoint } from './wave-spec.ts';

/** What one turns at will; whatever is left out is as in the set. Plain data, kept in a description. */
export interface Settings {
  /** Which of the place's stations. Left out: the one heard best. */
  readonly station?: number;
  readonly carrier?: Hertz;
  /** True: a carrier of the broadcast band that the station is not in, by `BAND_CARRIERS`. A `carrier` takes precedence. */
  readonly otherBand?: boolean;
  /** On another carrier: true leaves the coil and the band switch as they are; default the coil for the carrier's band. */
  readonly keepsCoil?: boolean;
  readonly depth?: Ratio;
  readonly programme?: ProgrammeChoice;
  /** `perfect`, or an id of the detectors' library. */
  readonly detector?: string;
  /** Across the phones. */
  readonly capacitance?: Farads;
  /** What the detector works into, a plain resistance in place of the set's own load. */
  readonly resistance?: Ohms;
  /** Peak of the carrier at the detector. */
  readonly strength?: Volts;
  /** Loaded Q of the tuned circuit: low lets everything in. */
  readonly loadedQ?: number;
  /** False leaves the wanted station alone on the air. */
  readonly neighbours?: boolean;
}

export type ProgrammeChoice =
  | { readonly kind: 'tone'; readonly frequency: Hertz }
  | { readonly kind: 'two tones'; readonly first: Hertz; readonly second: Hertz }
  /** A file or the microphone: kept beside the settings, not in them. */
  | { readonly kind: 'recording' };

export const PERFECT = 'perfect';

/** Ids of every detector that can be chosen. */
export const DETECTOR_CHOICES: readonly string[] = [PERFECT, ...DETECTOR_IDS];

/** @returns undefined for an id that is not in the library. */
export function detectorChosen(id: string): OneWay | undefined {
  if (id === PERFECT) return PERFECT;
  const description = usualDescription(id);
  return description && detectorModel(description);
}

const tonesOf = (choice: Exclude<ProgrammeChoice, { kind: 'recording' }>): WaveProgramme => ({
  kind: 'tones',
  tones:
    choice.kind === 'tone'
      ? [{ frequency: choice.frequency, share: 1 }]
      : [
          { frequency: choice.first, share: 0.55 },
          { frequency: choice.second, share: 0.45, phase: 0.6 },
        ],
});

/** Share of a carrier that a single tuned circuit of this Q at f0 lets through at f. Textbook. */
export const resonance = (q: number, f0: Hertz, f: Hertz): number => 1 / Math.hypot(1, q * (f / f0 - f0 / f));

/** A carrier near the middle of each broadcast band. */
export const BAND_CARRIERS: Readonly<Record<BandName, Hertz>> = { 'long wave': 200e3, 'medium wave': 1000e3 };

/** The carrier that is turned to. @param own carrier of the station. @returns undefined for the station's own. */
export function carrierOf({ carrier, otherBand }: Settings, own: Hertz): Hertz | undefined {
  if (carrier !== undefined || !otherBand) return carrier;
  return BAND_CARRIERS[nearestBand(own) === 'long wave' ? 'medium wave' : 'long wave'];
}

/** Whether another carrier is turned to. */
export const isRetuned = ({ carrier, otherBand }: Settings): boolean => carrier !== undefined || otherBand === true;

/**
 * Under what a working point is kept. @returns undefined for the set's own.
 * @param own carrier of the station.
 */
export function workingPointKey(settings: Settings, own: Hertz): string | undefined {
  const { detector, keepsCoil } = settings;
  const carrier = carrierOf(settings, own);
  if (carrier === undefined || Math.abs(carrier - own) < 1) return detector === PERFECT ? undefined : detector;
  return `${detector ?? ''}@${carrier}${keepsCoil ? ', own coil' : ''}`;
}

/** The working point that waves keep for the settings. @returns undefined for the set's own, and for one that is not kept. */
export function workingPointWith({ carrier, others = {} }: WaveSpec, settings: Settings): WaveWorkingPoint | undefined {
  const key = workingPointKey(settings, carrier);
  return key !== undefined && Object.hasOwn(others, key) ? others[key] : undefined;
}

/** The set with another detector's loading, or on another carrier: a station beside it is let through as the other loaded Q lets it. */
const atWorkingPoint = (
  own: WaveSpec,
  { atAerial, atTuned, atDetector, loadedQ, deepening }: WaveWorkingPoint,
): WaveSpec => ({
  ...own,
  atAerial: atAerial ?? own.atAerial,
  atTuned,
  atDetector,
  loadedQ,
  deepening,
  neighbours: own.neighbours.map((n) => ({
    ...n,
    share: n.share * (resonance(loadedQ, own.carrier, n.frequency) / resonance(own.loadedQ, own.carrier, n.frequency)),
  })),
});

/**
 * The set's own waves with what one has turned.
 * @param own the set's own waves; with `others`, those detectors work at their own points.
 * @param recording the file or the microphone, where `programme` asks for it; without one a tone stands in.
 */
export function withSettings(own: WaveSpec, settings: Settings, recording?: WaveProgramme): WaveSpec {
  // Another detector loads the tuned circuit in its own way, and another carrier has another coil's Q.
  const at = workingPointWith(own, settings);
  const base = at ? atWorkingPoint(own, at) : own;
  const carrier = carrierOf(settings, own.carrier) ?? base.carrier;
  const loadedQ = settings.loadedQ ?? base.loadedQ;
  const moved = carrier - base.carrier;
  const neighbours = settings.neighbours === false ? [] : base.neighbours;
  const chosen = settings.programme;
  // What a tuned circuit lifts a station to is in proportion to its Q.
  const lifted = loadedQ / base.loadedQ;
  const detector = settings.detector === undefined ? undefined : detectorChosen(settings.detector);
  return {
    ...base,
    carrier,
    depth: settings.depth ?? base.depth,
    programme:
      chosen === undefined
        ? base.programme
        : chosen.kind === 'recording'
          ? (recording ?? base.programme)
          : tonesOf(chosen),
    loadedQ,
    atTuned: base.atTuned * lifted,
    atDetector: settings.strength ?? base.atDetector * lifted,
    neighbours: neighbours
      .map((n) => ({
        ...n,
        frequency: n.frequency + moved,
        share:
          n.share *
          (resonance(loadedQ, carrier, n.frequency + moved) / resonance(base.loadedQ, base.carrier, n.frequency)),
      }))
      .filter((n) => n.frequency > 50e3),
    // Another detector or another strength loads the circuit otherwise than was worked out for the set.
    deepening:
      settings.strength === undefined && settings.resistance === undefined && (detector === undefined || at)
        ? base.deepening
        : 1,
    ...(detector === undefined
      ? {}
      : { detector, detectorId: settings.detector ?? base.detectorId, bias: at?.bias, bothHalves: false }),
    load: {
      ...(settings.resistance === undefined
        ? base.load
        : { capacitance: base.load.capacitance, resistance: settings.resistance }),
      ...(settings.capacitance === undefined ? {} : { capacitance: settings.capacitance }),
    },
  };
}
