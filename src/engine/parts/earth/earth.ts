import { demandWithin, ImpossibleValues, type SizeId } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { type Complex, reciprocal } from '../../numerics/complex.ts';
import { lazily, once } from '../../numerics/lazily.ts';
import {
  EPSILON_0,
  type Farads,
  type Hertz,
  type Metres,
  MU_0,
  type OhmMetres,
  type Ohms,
} from '../../units/quantities.ts';
import { buriedWiresFactor } from './buried-wires.ts';
import { counterpoise } from './counterpoise.ts';
import { DISC_FOR_SQUARE, levelPlateFactor, uprightPlateFactor } from './plate.ts';
import { returnLoss, rodsAt, type SoilAt, soilAt, wiresAt } from './radio-frequency.ts';
import { ONE_ROD, type RodGroup, type RodPosition, rodFactor, rodGroup, rodPositions, rodsFactor } from './rods.ts';
import { type SoilSpec, soilOf } from './soil.ts';

interface InSoil extends SoilSpec {
  /**
   * With it, resistance and range are those at this radio frequency, and the impedance is that at any; without, all are
   * those at a low one (a counterpoise's, and where skin depth is judged, at 1 MHz).
   */
  readonly frequency?: Hertz;
  /** Of the same soil as it usually is, Ω·m: wetter soil has more permittivity, drier less. Default its resistivity. */
  readonly usualResistivity?: OhmMetres;
}

interface Given {
  readonly resistance: Ohms;
  /** Default the figure alone. */
  readonly range?: readonly [Ohms, Ohms];
}

/** What the set's earth terminal is joined to. Lengths in metres; `depth` is below ground. */
export type EarthSpec =
  | (InSoil & { readonly shape: 'rod'; readonly length: Metres; readonly diameter: Metres })
  | (InSoil & {
      readonly shape: 'rods';
      readonly length: Metres;
      readonly diameter: Metres;
      /** With `spacing` between neighbours, in `layout` (default a row); or every place in `positions`. */
      readonly count?: number;
      readonly spacing?: Metres;
      readonly layout?: 'row' | 'ring' | 'square';
      readonly positions?: readonly RodPosition[];
    })
  | (InSoil & {
      readonly shape: 'plate';
      /** Of a square one; or `diameter` of a round one. */
      readonly side?: Metres;
      readonly diameter?: Metres;
      /** Of its middle. */
      readonly depth: Metres;
      /** Default level. */
      readonly lie?: 'level' | 'upright';
    })
  | (InSoil & {
      readonly shape: 'buried wire';
      readonly length: Metres;
      readonly depth: Metres;
      readonly wire: { readonly diameter: Metres };
    })
  | (InSoil & {
      readonly shape: 'radials';
      readonly count: number;
      /** Of each. */
      readonly length: Metres;
      readonly depth: Metres;
      readonly wire: { readonly diameter: Metres };
    })
  | (InSoil & {
      readonly shape: 'counterpoise';
      /** Wires from the set outwards, default 1. */
      readonly count?: number;
      readonly length: Metres;
      readonly height: Metres;
      readonly wire: { readonly diameter: Metres };
    })
  | (Given & { readonly shape: 'measured' })
  | (Given & { readonly shape: 'water pipe' });

export interface EarthModel {
  readonly resistance: Ohms;
  /** 90 %: the soil wet and dry, and how well metal and soil touch. */
  readonly range: readonly [Ohms, Ohms];
  /** Only of a counterpoise: it reaches the ground through this. */
  readonly capacitance?: Farads;
  /** Mean height of its charge, to be taken off the aerial's effective height: 0 but for a counterpoise. */
  readonly chargeHeight: Metres;
  readonly impedanceAt: (frequency: Hertz) => Complex;
  readonly warnings: readonly Warning[];
}

/**
 * Resistance of an earth.
 * @param spec shape and sizes (m), soil or its resistivity (Ω·m)
 * @returns resistance (Ω), capacitance of a counterpoise (F), and impedance at any frequency (Ω)
 * @throws RangeError for sizes that cannot be built.
 */
export function earth(spec: EarthSpec): EarthModel {
  if (spec.shape === 'measured' || spec.shape === 'water pipe') return fixedEarth(spec);
  const soil = soilOf(spec);
  const { frequency = 1e6 } = spec;
  positive('earth.frequency', frequency);
  const warnings: Warning[] = [];
  if (spec.shape === 'counterpoise') {
    const { count = 1, length, height, wire } = spec;
    whole('earth.counterpoise-wires', count, 1, 60);
    for (const [size, value] of [
      ['earth.length', length],
      ['earth.height', height],
      ['earth.wire', wire.diameter],
    ] as const)
      positive(size, value);
    thin(wire.diameter, Math.min(length, height));
    const model = counterpoise(count, length, height, wire.diameter);
    const at = (resistivity: OhmMetres) => model.impedanceAt(frequency, resistivity).re;
    // Loss of the returning current need not rise with resistivity, so the ends of the range are sorted.
    const ends = soil.range.map(at).sort((a, b) => a - b);
    const resistance = at(soil.resistivity);
    if (!(2 * Math.PI * frequency * EPSILON_0 * 15 * soil.resistivity < 0.5)) {
      warnings.push(warning('earth.counterpoise-dry-soil'));
    }
    return {
      resistance,
      range: [Math.min(ends[0], resistance), Math.max(ends[1], resistance)],
      capacitance: model.capacitance,
      chargeHeight: height,
      impedanceAt: (f) => model.impedanceAt(positive('earth.frequency', f), soil.resistivity),
      warnings,
    };
  }
  const { factor, reach } = lying(spec, warnings);
  const skin = Math.sqrt(soil.resistivity / (Math.PI * frequency * MU_0));
  if (reach > 2 * skin) {
    const isCounted = spec.frequency !== undefined;
    warnings.push(warning('earth.longer-than-skin-depth', { reach: 2 * skin, isCounted }));
  }
  const { usualResistivity = soil.resistivity } = spec;
  const rods = once(() => (spec.shape === 'rods' ? rodGroup(spec.length, spec.diameter, positionsOf(spec)) : ONE_ROD));
  const at = (resistivity: OhmMetres, f = spec.frequency): Share => {
    if (f === undefined) return { metal: factor * resistivity, back: 0 };
    const local = soilAt(resistivity, f, usualResistivity);
    return { metal: CONTACT.usual * atRadioFrequency(spec, factor, rods, local), back: returnLoss(UPRIGHT, local) };
  };
  const usual = at(soil.resistivity);
  const resistance = usual.metal + usual.back;
  const resistanceAt = lazily((f: Hertz): Ohms => {
    const { metal, back } = at(soil.resistivity, f);
    return metal + back;
  });
  return {
    resistance,
    range: withContact(usual, [at(soil.range[0]), at(soil.range[1])], spec.frequency === undefined ? CONTACT.usual : 1),
    chargeHeight: 0,
    impedanceAt: (f) => {
      positive('earth.frequency', f);
      return { re: spec.frequency === undefined ? resistance : resistanceAt(f), im: 0 };
    },
    warnings,
  };
}

/** Real part, metal to soil. */
function atRadioFrequency(spec: Lying, factor: number, rods: () => RodGroup, soil: SoilAt): Ohms {
  switch (spec.shape) {
    case 'rod':
    case 'rods':
      return rodsAt(spec.length, spec.diameter, rods(), soil).re;
    case 'buried wire':
    case 'radials':
      return wiresAt(
        {
          arms: spec.shape === 'radials' ? spec.count : 1,
          length: spec.length,
          depth: spec.depth,
          wireDiameter: spec.wire.diameter,
        },
        soil,
      ).re;
    case 'plate':
      return reciprocal(soil.y).re * factor;
  }
}

/** Metal driven, dried or back-filled makes less than whole contact: × 1.15, 0.97 to 1.55. Common practice, no source. */
const CONTACT = { usual: 1.15, less: 1.19, more: 1.35 };

/** Of the aerial over it, unless it is known: its current returns through the ground around the foot. */
const UPRIGHT: Metres = 10;

interface Share {
  readonly metal: Ohms;
  readonly back: Ohms;
}

/** Soil and contact, which know nothing of each other: their factors add as squares of logarithms. */
function withContact(usual: Share, ends: readonly Share[], contact: number): [Ohms, Ohms] {
  const [resistance, ...others] = [usual, ...ends].map(({ metal, back }) => contact * metal + back);
  const [low, high] = [Math.min(...others), Math.max(...others)];
  const together = (a: number, b: number): number => Math.exp(Math.hypot(Math.log(Math.max(a, 1)), Math.log(b)));
  return [
    Math.min(usual.metal + usual.back, resistance / together(resistance / low, CONTACT.less)),
    resistance * together(high / resistance, CONTACT.more),
  ];
}

type Lying = Exclude<EarthSpec, { shape: 'counterpoise' | 'measured' | 'water pipe' }>;

const positionsOf = ({
  length,
  count = 2,
  spacing = length,
  layout = 'row',
  positions,
}: Extract<EarthSpec, { shape: 'rods' }>): readonly RodPosition[] => positions ?? rodPositions(count, spacing, layout);

/** Resistance per ohm metre of the soil, and how far the metal reaches from the set. */
function lying(spec: Lying, warnings: Warning[]): { factor: number; reach: Metres } {
  switch (spec.shape) {
    case 'rod':
    case 'rods': {
      const { length, diameter } = spec;
      positive('earth.length', length);
      positive('earth.rod-diameter', diameter);
      thin(diameter, length);
      if (diameter > length / 10) warnings.push(warning('earth.rod-thick'));
      if (spec.shape === 'rod') return { factor: rodFactor(length, diameter), reach: length };
      const { count = 2, spacing = length } = spec;
      if (!spec.positions) {
        whole('earth.rods', count, 2, 100);
        positive('earth.spacing', spacing);
      }
      const positions = positionsOf(spec);
      whole('earth.rods', positions.length, 1, 100);
      if (!spec.positions && spacing < length) {
        warnings.push(warning('earth.rods-close'));
      }
      return { factor: rodsFactor(length, diameter, positions), reach: length };
    }
    case 'plate': {
      const radius = spec.side !== undefined ? spec.side * DISC_FOR_SQUARE : (spec.diameter ?? Number.NaN) / 2;
      positive('earth.plate-size', radius);
      demandWithin('earth.depth', spec.depth, { min: 0, max: 100 });
      if (spec.lie === 'upright') {
        if (!(spec.depth >= radius))
          throw new ImpossibleValues({ code: 'earth.plate-shallow', least: radius, depth: spec.depth });
        return { factor: uprightPlateFactor(radius, spec.depth), reach: radius };
      }
      return { factor: levelPlateFactor(radius, spec.depth), reach: radius };
    }
    case 'buried wire':
    case 'radials': {
      const { length, depth, wire } = spec;
      positive('earth.length', length);
      positive('earth.wire', wire.diameter);
      thin(wire.diameter, length);
      demandWithin('earth.depth', depth, { min: wire.diameter / 2, max: 100 });
      if (spec.shape === 'buried wire') {
        return {
          factor: buriedWiresFactor({ arms: 2, length: length / 2, depth, wireDiameter: wire.diameter }),
          reach: length,
        };
      }
      whole('earth.radials', spec.count, 1, 240);
      const one = spec.count === 1;
      const arms = one ? { arms: 2, length: length / 2 } : { arms: spec.count, length };
      return { factor: buriedWiresFactor({ ...arms, depth, wireDiameter: wire.diameter }), reach: length };
    }
  }
}

/** A pipe's joints and what it runs into are not known: ×/÷ (common practice; 20 Ω at 180 kHz of 46 m published). */
export const WATER_PIPE_SPREAD = 3;

function fixedEarth(spec: Extract<EarthSpec, { shape: 'measured' | 'water pipe' }>): EarthModel {
  const usual = spec.shape === 'water pipe' ? WATER_PIPE_SPREAD : 1.05;
  const { resistance, range = [resistance / usual, resistance * usual] } = spec;
  demandWithin('earth.resistance', resistance, { min: 0, below: 1e9 });
  if (!(range[0] >= 0 && range[0] <= resistance && resistance <= range[1])) {
    throw new ImpossibleValues({ code: 'earth.range', value: resistance, low: range[0], high: range[1] });
  }
  const warnings: Warning[] = spec.shape === 'water pipe' ? [warning('earth.water-pipe')] : [];
  return { resistance, range, chargeHeight: 0, impedanceAt: () => ({ re: resistance, im: 0 }), warnings };
}

const positive = (size: SizeId, value: number): number => {
  demandWithin(size, value, { above: 0, below: 1e12 });
  return value;
};
const whole = (size: SizeId, value: number, min: number, max: number): void =>
  demandWithin(size, value, { min, max, whole: true });
function thin(diameter: Metres, length: Metres): void {
  if (!(diameter < length)) throw new ImpossibleValues({ code: 'earth.metal-thick', diameter, length });
}
