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
import type { Caution } from './cautions.ts';

/** The levels a signal passes through, in order. */
export type StageId = 'field' | 'aerial' | 'tuned circuit' | 'detector' | 'audio' | 'phones' | 'ear';

/** One level on the path of a station. */
export interface Stage {
  readonly id: StageId;
  /** "Field at the site", "On the tuned circuit" … */
  readonly title: string;
  readonly value: number;
  /** How the value is printed; "dB SPL" and the like are levels with their own `unit`. */
  readonly kind: QuantityKind;
  readonly unit: string;
  /** The value in words and figures: "3.2 mV/m". */
  readonly text: string;
  /** Gain (+) or loss (−) of power from the stage before; undefined where no power can be told. */
  readonly change?: Decibels;
  /** One sentence: what happens here. */
  readonly sentence: string;
  /** Lowest and highest the value may well be, from the spread of what is known. */
  readonly range?: readonly [number, number];
  readonly warnings: readonly Warning[];
}

export type HeardWord = 'loud' | 'comfortable' | 'quiet' | 'faint' | 'not heard';

/** What another station does to the wanted one. */
export interface Disturbance {
  readonly by: string;
  readonly frequency: Hertz;
  /** Wanted over unwanted carrier at the detector. */
  readonly carrierRatio: Decibels;
  /** Wanted over unwanted programme in the phones. */
  readonly audioRatio: Decibels;
  /** The smaller of that and of what stands over a whistle of the two carriers: what `word` goes by. */
  readonly separation: Decibels;
  /** "clear", "a murmur behind", "troublesome", "swamped". */
  readonly word: 'clear' | 'a murmur behind' | 'troublesome' | 'swamped';
  readonly sentence: string;
}

export interface StationReception {
  readonly name: string;
  readonly frequency: Hertz;
  readonly index: number;
  /** Every level, field to ear, with the set tuned to this station. */
  readonly path: readonly Stage[];
  /** Where it sits on the dial; undefined when the set does not tune so far. */
  readonly dial?: DialPlace;
  /** Why it cannot be tuned in, when it cannot. */
  readonly outOfReach?: string;
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
  readonly soundPressureLevel: Decibels;
  /** Over what can just be heard in this room. */
  readonly margin: Decibels;
  readonly heard: HeardWord;
  /** ± on the level heard, from the spread of field, parts and ear. */
  readonly spread: Decibels;
  /** The answer in one sentence. */
  readonly sentence: string;
  /** The worst neighbour, and all that matter, strongest first. */
  readonly disturbance?: Disturbance;
  readonly disturbances: readonly Disturbance[];
  readonly warnings: readonly Warning[];
}

export interface DialPlace {
  /** 0 open (highest frequency) … 1 meshed (lowest). */
  readonly position: Ratio;
  /** On the scale of the capacitor. */
  readonly scale: Degrees;
  readonly capacitance?: Farads;
  /** Scale readings it may well be at, from the spread of coil and strays. */
  readonly range: readonly [Degrees, Degrees];
}

export interface DialPoint {
  readonly position: Ratio;
  readonly scale: Degrees;
  readonly frequency: Hertz;
  readonly capacitance?: Farads;
  readonly loadedQ: number;
  readonly bandwidth: Hertz;
}

export interface Dial {
  readonly points: readonly DialPoint[];
  /** Ends of what the set covers, with their spread. */
  readonly lowest: Hertz;
  readonly highest: Hertz;
  readonly lowestRange: readonly [Hertz, Hertz];
  readonly highestRange: readonly [Hertz, Hertz];
  readonly swing: Degrees;
  /** For every position, the level of each station at the detector relative to the strongest anywhere, dB: levels[position][station]. */
  readonly levels: readonly Float64Array[];
  readonly stations: readonly {
    readonly name: string;
    readonly index: number;
    readonly place?: DialPlace;
    readonly heard: HeardWord;
  }[];
  /** "It covers 540 to 1610 kHz …" and what it misses. */
  readonly sentences: readonly string[];
  readonly warnings: readonly Warning[];
}

export interface Reception {
  readonly stations: readonly StationReception[];
  readonly dial: Dial;
  /** What one would hear, in a sentence or two. */
  readonly summary: string;
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
    readonly effectiveHeight: number;
    readonly radiationResistance: Ohms;
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
    readonly selfCapacitance: Farads;
    readonly selfResonance: Hertz;
    readonly wireLength: number;
    readonly dcResistance: Ohms;
    readonly q: number;
    readonly qRange: readonly [number, number];
    readonly qAt: Hertz;
    readonly warnings: readonly Warning[];
  }[];
  readonly tuning: {
    readonly minimum: Farads;
    readonly maximum: Farads;
    readonly swing: Degrees;
    readonly warnings: readonly Warning[];
  };
  readonly detector: {
    readonly label: string;
    readonly zeroBiasResistance: Ohms;
    /** What is known of its kind: what it is, its usual figures with their ranges, and who says so. */
    readonly facts: readonly string[];
    readonly warnings: readonly Warning[];
  };
  readonly load: {
    readonly directResistance: Ohms;
    readonly impedanceAt1kHz: Ohms;
    readonly warnings: readonly Warning[];
  };
}
