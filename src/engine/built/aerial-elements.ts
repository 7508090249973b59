import type { Warning } from '../facts/warning.ts';
import type { AerialDescription } from '../kinds/aerials/aerial-schema.ts';
import { AERIAL } from '../kinds/arrangements/assembly.ts';
import type { LoopDescription } from '../kinds/loops.ts';
import { impedanceModel, wireAerialModel } from '../kinds/models.ts';
import { EARTH, type Element } from '../network/elements.ts';
import { owned } from '../network/ids.ts';
import { PART } from '../network/part-ids.ts';
import { type Complex, complex } from '../numerics/complex.ts';
import type { EarthModel } from '../parts/earth/earth.ts';
import { type Farads, type Hertz, LIGHT_SPEED, type Metres, type Ohms } from '../units/quantities.ts';

/** An aerial as the circuit and the path need it. */
export interface AerialInCircuit {
  /** From earth to the node "aerial"; the source has an emf of 1 V peak, for the solver to scale. */
  readonly elements: readonly Element[];
  readonly capacitance: Farads;
  /** tan δ of that capacitance to what is around it: trees, walls, insulators; its resistance includes this. */
  readonly lossTangent: number;
  readonly effectiveHeightAt: (frequency: Hertz) => Metres;
  readonly radiationResistanceAt: (frequency: Hertz) => Ohms;
  /** In series from the aerial to the set, without the earth. */
  readonly resistanceAt: (frequency: Hertz) => Ohms;
  readonly warningsAt: (frequency: Hertz) => readonly Warning[];
}

const OPEN: Complex = { re: 1e12, im: 0 };
const radiation = (height: Metres, f: Hertz): Ohms => 160 * Math.PI ** 2 * ((height * f) / LIGHT_SPEED) ** 2;

/** Above this share of its natural frequency an aerial's line is no longer one coil and one capacitor. */
const SHORT = 0.4;

/**
 * Wire and measured aerials over an earth. While short, a wire aerial is its capacitance, inductance and resistance,
 * which the time-domain engines can take too; when no longer short, its impedance as a line. Nothing is around it:
 * `aerialAmongThings` is the one that hangs in a garden.
 */
export function aerialInCircuit(
  aerial: Exclude<AerialDescription, LoopDescription>,
  earth: EarthModel,
  highest: Hertz,
): AerialInCircuit {
  const field: Element = {
    kind: 'source',
    ...owned(PART.aerial, 'emf'),
    from: 'ground',
    to: 'sky',
    emf: { re: 1, im: 0 },
  };
  // A counterpoise touches no ground: nothing direct passes.
  const earthAt = (f: Hertz): Complex => (f > 0 ? earth.impedanceAt(f) : OPEN);
  const earthElement: Element = earth.capacitance
    ? { kind: 'impedance', ...owned(PART.earth, 'earth'), from: 'ground', to: EARTH, impedance: earthAt }
    : { kind: 'resistor', ...owned(PART.earth, 'earth'), from: 'ground', to: EARTH, resistance: earth.resistance };
  const lower = (h: Metres): Metres => Math.max(0, h - earth.chargeHeight);
  if (aerial.kind === 'measured')
    return {
      elements: [
        field,
        earthElement,
        {
          kind: 'capacitor',
          ...owned(PART.aerial, 'aerial'),
          from: 'sky',
          to: 'aerial foot',
          capacitance: aerial.capacitance,
        },
        {
          kind: 'resistor',
          ...owned(PART.aerial, 'aerial', { detail: 'resistance' }),
          from: 'aerial foot',
          to: AERIAL,
          resistance: aerial.resistance,
        },
      ],
      capacitance: aerial.capacitance,
      lossTangent: 0,
      effectiveHeightAt: () => lower(aerial.effectiveHeight),
      radiationResistanceAt: (f) => radiation(aerial.effectiveHeight, f),
      resistanceAt: () => aerial.resistance,
      warningsAt: () => [],
    };
  if (aerial.kind === 'impedance') {
    const table = impedanceModel(aerial);
    const z = (f: Hertz): Complex => (f > 0 ? table.impedanceAt(f) : OPEN);
    const [f0] = table.range;
    return {
      elements: [
        field,
        earthElement,
        { kind: 'impedance', ...owned(PART.aerial, 'aerial'), from: 'sky', to: AERIAL, impedance: z },
      ],
      // What it looks like at the lowest frequency measured; 0 when it is no capacitance there.
      capacitance: z(f0).im < 0 ? -1 / (2 * Math.PI * f0 * z(f0).im) : 0,
      lossTangent: 0,
      effectiveHeightAt: () => lower(aerial.effectiveHeight),
      radiationResistanceAt: (f) => radiation(aerial.effectiveHeight, f),
      resistanceAt: (f) => z(f).re,
      warningsAt: table.warningsAt,
    };
  }
  const exact = wireAerialModel(aerial);
  const short = highest < SHORT * exact.naturalFrequency;
  const model = {
    ...exact,
    resistanceAt: smooth((f) => Math.log(Math.max(exact.impedanceAt(f).re, 1e-9)), Math.exp),
    effectiveHeightAt: smooth((f) => Math.log(Math.max(exact.effectiveHeightAt(f), 1e-9)), Math.exp),
    // Times the frequency a short aerial's reactance is a constant and a small square: easy to join.
    reactanceAt: smooth(
      (f) => f * exact.impedanceAt(f).im,
      (fx, f) => fx / f,
    ),
  };
  const elements: Element[] = short
    ? [
        field,
        earthElement,
        {
          kind: 'capacitor',
          ...owned(PART.aerial, 'aerial'),
          from: 'sky',
          to: 'aerial wire',
          capacitance: model.capacitance,
        },
        {
          kind: 'inductor',
          ...owned(PART.aerial, 'aerial', { detail: 'inductance' }),
          from: 'aerial wire',
          to: AERIAL,
          inductance: model.inductance,
          resistance: (f) => (f > 0 ? model.resistanceAt(f) : 0.1),
        },
      ]
    : [
        field,
        earthElement,
        {
          kind: 'impedance',
          ...owned(PART.aerial, 'aerial'),
          from: 'sky',
          to: AERIAL,
          impedance: (f) => (f > 0 ? complex(model.resistanceAt(f), model.reactanceAt(f)) : OPEN),
        },
      ];
  return {
    elements,
    capacitance: model.capacitance,
    lossTangent: 0,
    effectiveHeightAt: (f) => lower(model.effectiveHeightAt(f)),
    radiationResistanceAt: model.radiationResistanceAt,
    resistanceAt: model.resistanceAt,
    warningsAt: model.warningsAt,
  };
}

/** Steps an octave at which an aerial's line is solved; between them it runs as a parabola, within 1e-3. */
const STEPS = 8;

/** A smooth function of frequency, solved only near where it is asked for. `restore` undoes what made it smooth. */
function smooth(
  exact: (frequency: Hertz) => number,
  restore: (value: number, frequency: Hertz) => number,
): (frequency: Hertz) => number {
  const cache = new Map<number, number>();
  const at = (k: number): number => {
    let value = cache.get(k);
    if (value === undefined) cache.set(k, (value = exact(2 ** (k / STEPS))));
    return value;
  };
  return (frequency) => {
    const x = Math.log2(frequency) * STEPS;
    const k = Math.round(x);
    const t = x - k;
    const [a, b, c] = [at(k - 1), at(k), at(k + 1)];
    return restore(b + (t * (c - a)) / 2 + (t * t * (a + c - 2 * b)) / 2, frequency);
  };
}
