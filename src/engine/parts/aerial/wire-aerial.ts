import { type Warning, warning } from '../../facts/warning.ts';
import { type Complex, magnitude } from '../../numerics/complex.ts';
import {
  type Farads,
  type Henries,
  type Hertz,
  LIGHT_SPEED,
  type Metres,
  type Ohms,
  type OhmsPerMetre,
} from '../../units/quantities.ts';
import { wireResistance } from '../wire/skin.ts';
import { type WireAerialShape, wireTree } from './shapes.ts';
import { type ChargedSegment, staticCharge } from './static-charge.ts';
import { type LineAt, naturalFrequency, wireLine } from './wire-line.ts';

export interface WireAerialOptions {
  /** Resistance of the aerial wire at radio frequency; default a copper wire of its diameter at 20 °C. */
  readonly resistancePerMetre?: (frequency: Hertz) => OhmsPerMetre;
}

/** What the set sees of an aerial. The earth is not in it: its resistance comes in series. */
export interface AerialModel {
  /** Static, against ground. */
  readonly capacitance: Farads;
  /** Static: emf per field strength, the lead-in's foot counted from the ground. */
  readonly effectiveHeight: Metres;
  readonly wireLength: Metres;
  /** In series with the capacitance while the aerial is short: impedance ≈ R + jωL + 1/jωC. */
  readonly inductance: Henries;
  /** Where the reactance first vanishes against perfect earth. */
  readonly naturalFrequency: Hertz;
  readonly effectiveHeightAt: (frequency: Hertz) => Metres;
  readonly radiationResistanceAt: (frequency: Hertz) => Ohms;
  /** Radiation and conductor included, earth not. */
  readonly impedanceAt: (frequency: Hertz) => Complex;
  /** Sentences for this aerial, and, given a frequency, for its use there. */
  readonly warnings: readonly Warning[];
  readonly warningsAt: (frequency: Hertz) => readonly Warning[];
  /** For drawing: the wire in pieces with the charge on each. */
  readonly segments: readonly ChargedSegment[];
}

/**
 * A wire aerial over ground, computed once from its shape; then quick at any frequency.
 * Holds for wires clear of ground and buildings, up to about half a wavelength of wire; see docs/physics/aerials.md.
 * @param spec the shape, m
 * @param options resistance of the wire by frequency (Ω/m); default copper at 20 °C
 * @returns impedance (Ω) and effective height (m) at any frequency, static capacitance (F), natural frequency (Hz)
 * @throws RangeError for sizes that cannot be built.
 */
export function wireAerial(spec: WireAerialShape, options: WireAerialOptions = {}): AerialModel {
  const tree = wireTree(spec);
  const { diameter } = spec.wire;
  const charge = staticCharge(tree, diameter / 2);
  const { segments } = charge;
  const resistancePerMetre =
    options.resistancePerMetre ?? ((f: Hertz) => wireResistance({ diameter, frequency: f }).resistancePerMetre);
  const line = wireLine(charge);
  const wireLength = segments.reduce((sum, s) => sum + s.length, 0);

  // A dial asks for the same few stations hundreds of times; the answers are kept, as they cannot change.
  const known = new Map<Hertz, ReturnType<typeof solve>>();
  const at = (frequency: Hertz) => {
    let value = known.get(frequency);
    if (!value) {
      if (known.size >= 500) known.clear();
      value = solve(frequency);
      known.set(frequency, value);
    }
    return value;
  };
  const solve = (frequency: Hertz) => {
    if (!(frequency > 0 && frequency < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`the frequency must be above 0, not ${frequency}`);
    }
    const conductor = resistancePerMetre(frequency);
    const shape = line(frequency, conductor);
    // Spread along the wire, the radiation resistance acts through the current there and stays finite where the foot
    // carries little.
    const radiated = radiationResistance(shape, frequency);
    const whole = line(frequency, conductor + radiated / shape.currentSquared);
    return {
      impedance: whole.impedance,
      effectiveHeight: magnitude(whole.effectiveHeight),
      radiation: radiationResistance(whole, frequency),
    };
  };

  const warnings = shapeWarnings(segments, diameter);
  const natural = naturalFrequency(charge);
  return {
    capacitance: charge.capacitance,
    effectiveHeight: charge.effectiveHeight,
    wireLength,
    inductance: charge.inductance,
    naturalFrequency: natural,
    effectiveHeightAt: (f) => at(f).effectiveHeight,
    radiationResistanceAt: (f) => at(f).radiation,
    impedanceAt: (f) => at(f).impedance,
    warnings,
    warningsAt: (f) => (f > 1.7 * natural ? [...warnings, warning('aerial.half-wave')] : warnings),
    segments,
  };
}

/**
 * 160π²(h_e/λ)² of the upright current over perfect ground (textbook, e.g. Terman, Radio Engineers' Handbook, 1943), and
 * 16 k⁴ |∫ I z ds|² of the level current with its reversed image: the next term of the same far-field integral.
 */
function radiationResistance({ effectiveHeight, levelMoment }: LineAt, frequency: Hertz): Ohms {
  const k = (2 * Math.PI * frequency) / LIGHT_SPEED;
  return 40 * (k * magnitude(effectiveHeight)) ** 2 + 16 * (k * k * levelMoment) ** 2;
}

function shapeWarnings(segments: readonly ChargedSegment[], diameter: Metres): Warning[] {
  const warnings: Warning[] = [];
  const lowest = Math.min(...segments.map((s) => (s.from[2] + s.to[2]) / 2));
  if (!(lowest > 5 * diameter)) {
    warnings.push(warning('aerial.wire-near-ground'));
  }
  const length = segments.reduce((sum, s) => sum + s.length, 0);
  if (!(length > 100 * diameter)) {
    warnings.push(warning('aerial.wire-thick'));
  }
  const top = Math.max(...segments.map((s) => s.to[2]));
  if (!(top >= 1.5)) {
    warnings.push(warning('aerial.low'));
  }
  return warnings;
}
