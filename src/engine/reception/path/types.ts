import type { Caution } from '../../facts/cautions.ts';
import type { Warning } from '../../facts/warning.ts';
import type { QuantityKind } from '../../units/parse.ts';
import type {
  Decibels,
  Degrees,
  Farads,
  Hertz,
  Ohms,
  Ratio,
  Volts,
  VoltsPerMetre,
  Watts,
} from '../../units/quantities.ts';
import type { DetectorFacts } from '../detection/detector-facts.ts';
import type { Hearing, Loudness, Verdict } from '../hearing/types.ts';
import type { StageFacts } from './stage-facts.ts';

export type { Hearing, Loudness, Verdict } from '../hearing/types.ts';

/** The levels a signal passes through, in order. */
export type StageId = 'field' | 'aerial' | 'tuned circuit' | 'detector' | 'audio' | 'phones' | 'ear';

/** One level on the path of a station. */
export interface Stage {
  readonly id: StageId;
  /** Undefined at the ear for a station out of range. */
  readonly value?: number;
  /** How the value is printed; "dB SPL" and the like are levels with their own `unit`. */
  readonly kind: QuantityKind;
  readonly unit: string;
  /** Gain (+) or loss (−) of power from the stage before; undefined where the power is not known. */
  readonly change?: Decibels;
  /** What happens here, in figures. */
  readonly facts: StageFacts;
  /** 90 % of all sets built like this one, where it is drawn; the value is then their median. */
  readonly range?: readonly [number, number];
  /** 90 % of those figures of `facts` that are drawn, by their names there. */
  readonly ranges?: Readonly<Record<string, readonly [number, number]>>;
  readonly warnings: readonly Warning[];
}

/** What another station does to the wanted one. */
export interface Disturbance {
  /** Of the other station in the list of the set: names and frequencies may be alike. */
  readonly index: number;
  readonly by: string;
  readonly frequency: Hertz;
  /** Wanted over unwanted carrier at the detector. */
  readonly carrierRatio: Decibels;
  /** Wanted over unwanted programme in the phones. */
  readonly audioRatio: Decibels;
  /** The smaller of that and of what stands over a whistle of the two carriers: what `effect` goes by. */
  readonly separation: Decibels;
  /** 90 % of that, of all sets built like this one, where it is drawn. */
  readonly range?: readonly [Decibels, Decibels];
  /** On the wanted programme: none that is heard, heard behind it, interferes with it, masks it. */
  readonly effect: 'none' | 'behind' | 'interferes' | 'masks';
  /** Frequency of the beat of the two carriers where it is heard. */
  readonly whistle?: Hertz;
}

/** One station, from field to ear. */
export interface StationReception {
  readonly name: string;
  readonly frequency: Hertz;
  readonly index: number;
  /** Every level, field to ear, with the set tuned to this station. */
  readonly path: readonly Stage[];
  /** Where it sits on the dial; undefined when the set does not tune so far. */
  readonly dial?: DialPlace;
  /** On which side of the dial it lies, and where that ends, when the set does not tune so far. */
  readonly outOfRange?: OutOfRange;
  /** The one answer to how it comes through. */
  readonly verdict: Verdict;
  readonly fieldStrength: VoltsPerMetre;
  readonly emf: Volts;
  readonly tunedCircuitVoltage: Volts;
  readonly detectorVoltage: Volts;
  readonly directVoltage: Volts;
  readonly audioVoltage: Volts;
  readonly phonesPower: Watts;
  /** Total harmonic distortion of a tone at the usual depth. */
  readonly distortion: Ratio;
  readonly detectorInputResistance: Ohms;
  readonly loadedQ: number;
  readonly unloadedQ: number;
  /** Between the −3 dB points at the detector, the pointer left where it is. */
  readonly bandwidth: Hertz;
  /** Undefined out of range, as are the next two. */
  readonly soundPressureLevel?: Decibels;
  /** Over the hearing threshold in this room. */
  readonly margin?: Decibels;
  readonly hearing?: Hearing;
  /** Loudness with no other station; not heard out of range. */
  readonly heard: Loudness;
  /** The worst neighbour where it has an effect, and all that matter, strongest first. */
  readonly disturbance?: Disturbance;
  readonly disturbances: readonly Disturbance[];
  /** Other stations within 40 dB of it at the detector that `disturbances` leaves out; an estimate among more than 64. */
  readonly moreDisturbances: number;
  readonly warnings: readonly Warning[];
}

/** A station that the dial does not reach. */
export interface OutOfRange {
  readonly side: 'below' | 'above';
  /** Of the dial on that side. */
  readonly end: Hertz;
}

/** Where a station is on the dial. */
export interface DialPlace {
  /** 0 open (highest frequency) … 1 meshed (lowest). */
  readonly position: Ratio;
  /** On the scale of the capacitor. */
  readonly scale: Degrees;
  readonly capacitance?: Farads;
  /** Scale readings that it has in nine of ten sets built like this one, where they are drawn. */
  readonly range?: readonly [Degrees, Degrees];
}

/** One point of the dial: what is tuned in there. */
export interface DialPoint {
  readonly position: Ratio;
  readonly scale: Degrees;
  readonly frequency: Hertz;
  readonly capacitance?: Farads;
  readonly loadedQ: number;
  readonly bandwidth: Hertz;
  /** 90 % of the frequency here, of all sets built like this one, where they are drawn, and of the other figures. */
  readonly range?: readonly [Hertz, Hertz];
  readonly ranges?: {
    readonly capacitance?: readonly [Farads, Farads];
    readonly loadedQ: readonly [number, number];
    readonly bandwidth: readonly [Hertz, Hertz];
  };
}

/** What the set's dial covers and how it is divided. */
export interface Dial {
  readonly points: readonly DialPoint[];
  /** Ends of what the set covers, with their 90 % ranges where those are drawn. */
  readonly lowest: Hertz;
  readonly highest: Hertz;
  readonly lowestRange?: readonly [Hertz, Hertz];
  readonly highestRange?: readonly [Hertz, Hertz];
  /** Stretches, Hz, near a wave trap in which the pointer runs back against frequency: the scale cannot be read there. */
  readonly folds: readonly (readonly [lowest: Hertz, highest: Hertz])[];
  readonly swing: Degrees;
  /** For every position, the level of each station at the detector relative to the strongest anywhere, dB: levels[position][station]. */
  readonly levels: readonly Float64Array[];
  readonly stations: readonly {
    readonly name: string;
    readonly index: number;
    readonly place?: DialPlace;
    readonly verdict: Verdict;
  }[];
  readonly warnings: readonly Warning[];
}

/** What a set gives at its place. */
export interface Reception {
  readonly stations: readonly StationReception[];
  readonly dial: Dial;
  /** What it was calculated for; default by day. */
  readonly time?: 'day' | 'night' | Date;
  /** Which stations, best first. */
  readonly best: readonly number[];
  readonly parts: PartFigures;
  readonly warnings: readonly Warning[];
  /** Cautions for this set: aerial, earth, lead sulphide … */
  readonly cautions: readonly Caution[];
}

/** Figures of the parts as made, for their workbenches. */
export interface PartFigures {
  readonly aerial: {
    readonly capacitance: Farads;
    /** What effective height and radiation resistance are at. */
    readonly at: Hertz;
    readonly effectiveHeight: number;
    readonly radiationResistance: Ohms;
    /** 90 % of each, where it is not exactly known. */
    readonly capacitanceRange?: readonly [Farads, Farads];
    readonly effectiveHeightRange?: readonly [number, number];
    readonly radiationResistanceRange?: readonly [Ohms, Ohms];
    readonly warnings: readonly Warning[];
  };
  readonly earth: {
    readonly resistance: Ohms;
    readonly range: readonly [Ohms, Ohms];
    readonly warnings: readonly Warning[];
  };
  readonly coils: readonly {
    readonly name: string;
    readonly inductance: number;
    readonly inductanceRange: readonly [number, number];
    readonly selfCapacitance: Farads;
    readonly selfCapacitanceRange: readonly [Farads, Farads];
    readonly selfResonance: Hertz;
    /** 90 %: of a reception with ranges. */
    readonly selfResonanceRange?: readonly [Hertz, Hertz];
    readonly wireLength: number;
    readonly dcResistance: Ohms;
    readonly q: number;
    readonly qRange: readonly [number, number];
    readonly qAt: Hertz;
    readonly warnings: readonly Warning[];
  }[];
  readonly tuning: {
    readonly minimum: Farads;
    readonly minimumRange: readonly [Farads, Farads];
    readonly maximum: Farads;
    readonly maximumRange: readonly [Farads, Farads];
    readonly swing: Degrees;
    readonly warnings: readonly Warning[];
  };
  readonly detector: {
    /** Of the library, or the kind of a description of its own. */
    readonly id: string;
    readonly zeroBiasResistance: Ohms;
    /** 90 %, of a reception with ranges; none of a measured curve. */
    readonly zeroBiasResistanceRange?: readonly [Ohms, Ohms];
    /** What is known of its kind. */
    readonly facts: DetectorFacts;
    readonly warnings: readonly Warning[];
  };
  readonly load: {
    readonly directResistance: Ohms;
    readonly impedanceAt1kHz: Ohms;
    /** 90 %, where it follows from a kind and not from what was given. */
    readonly impedanceRange?: readonly [Ohms, Ohms];
    readonly warnings: readonly Warning[];
  };
}
