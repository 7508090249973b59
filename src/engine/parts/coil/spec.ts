import type { Farads, Henries, Hertz, Kelvins, Metres, Ratio } from '../../units/quantities.ts';
import type { Wire } from '../wire/wire.ts';
import type { Former } from './dielectrics.ts';

interface Wound {
  readonly wire: Wire;
  /** What it is wound on; default air. */
  readonly former?: Former;
  /** K; default 293.15. */
  readonly temperature?: Kelvins;
  /** Thickness of the former's wall; default the usual of its material, 1.5 mm of card. */
  readonly wall?: Metres;
}

/** Diameter of the former where the wire lies, or of the first layer from wire centre to wire centre: one of the two. */
interface Inside {
  readonly formerDiameter?: Metres;
  readonly innerDiameter?: Metres;
}

export interface SolenoidSpec extends Wound {
  readonly shape: 'solenoid';
  /** May be fractional. */
  readonly turns: number;
  /** Wire centre to wire centre; or give the former. */
  readonly meanDiameter?: Metres;
  readonly formerDiameter?: Metres;
  /** Centre to centre of neighbouring turns; default wound close. */
  readonly pitch?: Metres;
}

export interface MultilayerSpec extends Wound, Inside {
  readonly shape: 'multilayer';
  readonly turnsPerLayer: number;
  readonly layers: number;
  /** Along the axis; default wound close. */
  readonly pitch?: Metres;
  /** Outward; default as the pitch. */
  readonly layerPitch?: Metres;
}

/** Piled up turn by turn as the winding goes along, so that the ends stay far apart. */
export interface BankSpec extends Wound, Inside {
  readonly shape: 'bank-wound';
  readonly turns: number;
  /** Banks: 2 to 8. */
  readonly layers: number;
  readonly pitch?: Metres;
}

export interface SpiralSpec extends Wound {
  readonly shape: 'spiral';
  readonly turns: number;
  /** Of the first turn, wire centres. */
  readonly innerDiameter: Metres;
  /** Outward; default wound close. */
  readonly pitch?: Metres;
}

/** Woven through the slots of a disc, from one face to the other. */
export interface SpiderSpec extends Wound {
  readonly shape: 'spider';
  readonly turns: number;
  /** Of the hub where winding begins. */
  readonly innerDiameter: Metres;
  /** Odd; default 9. */
  readonly slots?: number;
  /** Vanes passed at a time; default 1. */
  readonly over?: number;
  /** Default 1.5 mm. */
  readonly discThickness?: Metres;
  /** Outward, per turn; default the overall diameter of the wire. */
  readonly pitch?: Metres;
}

/** Woven in and out of a circle of pegs. */
export interface BasketSpec extends Wound {
  readonly shape: 'basket';
  readonly turns: number;
  /** Diameter of the circle of pegs, to their centres. */
  readonly pegCircle: Metres;
  /** Odd; default 13. */
  readonly pegs?: number;
  /** Pegs passed at a time; default 2. */
  readonly over?: number;
  /** Default 3 mm. */
  readonly pegDiameter?: Metres;
  /** Along the axis, per turn; default the overall diameter of the wire. */
  readonly pitch?: Metres;
}

/** On a closed core known by the inductance of one turn. */
export interface CoreSpec extends Wound {
  readonly shape: 'core';
  readonly turns: number;
  /** A_L, H per turn². */
  readonly perTurnSquared: Henries;
  /** Length of wire in one turn; default 40 mm. */
  readonly turnLength?: Metres;
  /** Q of the core alone; default 150. */
  readonly coreQ?: number;
  readonly form?: 'toroid' | 'pot core';
}

/** A coil known by what was measured on it. */
export interface MeasuredSpec {
  readonly shape: 'measured';
  readonly inductance: Henries;
  readonly q: Ratio;
  /** Frequency of that Q. */
  readonly at: Hertz;
  /** Default 5 pF. */
  readonly selfCapacitance?: Farads;
  /** Only for the places of taps; default 100. */
  readonly turns?: number;
}

export type WoundSpec = SolenoidSpec | MultilayerSpec | BankSpec | SpiralSpec | SpiderSpec | BasketSpec;
export type CoilSpec = WoundSpec | CoreSpec | MeasuredSpec;
export type CoilShape = CoilSpec['shape'];
