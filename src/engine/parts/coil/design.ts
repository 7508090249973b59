import { demandWithin } from '../../facts/impossible-values.ts';
import { firstWhole, root } from '../../numerics/roots.ts';
import { gaugeDiameter } from '../../units/gauge.ts';
import type { Henries, Hertz, Metres, Ratio } from '../../units/quantities.ts';
import { closePitch, overallDiameter, type Wire } from '../wire/wire.ts';
import { coilInductance, makeCoil } from './coil.ts';
import type { Former } from './dielectrics.ts';
import { windingOf } from './shapes.ts';
import type { BasketSpec, MultilayerSpec, SolenoidSpec, WoundSpec } from './spec.ts';
import { turnSums } from './turn-sums.ts';
import { MOST_IRREGULAR, MOST_TURNS, wireLengthTo } from './winding.ts';

/** A coil without its number of turns. */
export type Unwound = WoundSpec extends infer S
  ? S extends MultilayerSpec
    ? Omit<S, 'layers'>
    : S extends { turns: number }
      ? Omit<S, 'turns'>
      : never
  : never;

export interface TurnsFit {
  /** Exact, fractional. */
  readonly turns: number;
  /** The nearest whole number and what it gives. */
  readonly whole: number;
  readonly inductance: Henries;
  /** In which nine of ten such coils lie, worked out when asked for. */
  readonly inductanceRange: readonly [Henries, Henries];
  /** Room it takes: along the axis, or outward for a disc, m. */
  readonly room: Metres;
  readonly wireLength: Metres;
}

/** The same coil with a number of turns; a multilayer coil fills its layers one after another. */
function wound(coil: Unwound, turns: number): WoundSpec {
  if (coil.shape === 'multilayer') return { ...coil, layers: Math.ceil(turns / coil.turnsPerLayer) } as WoundSpec;
  return { ...coil, turns } as WoundSpec;
}

/**
 * Turns for a wanted inductance.
 * Turns added later leave the earlier ones where they are, so the first n turns of a longer coil are the coil of n turns.
 * @param inductance wanted, H
 * @param coil all but its turns, SI
 * @returns undefined when more than about 16 000 turns (2048 in a disc or bank winding) would be needed.
 */
export function turnsFor(inductance: Henries, coil: Unwound): TurnsFit | undefined {
  demandWithin('coil.inductance', inductance, { above: 0 });
  const irregular = coil.shape === 'spiral' || coil.shape === 'spider' || coil.shape === 'bank-wound';
  for (let most = 64; most <= (irregular ? MOST_IRREGULAR : MOST_TURNS); most *= 2) {
    const w = windingOf(wound(coil, most));
    const n = w.radius.length;
    // A bank-wound coil is shifted as a whole when it grows, which changes nothing.
    const sums = turnSums(w);
    if (sums.total < inductance) continue;
    let low = 0;
    let high = n;
    for (let k = 0; k < 60 && high - low > 1e-9 * high; k++) {
      const middle = (low + high) / 2;
      if (sums.block(middle, middle) < inductance) low = middle;
      else high = middle;
    }
    const turns = (low + high) / 2;
    const whole = Math.max(1, Math.round(turns));
    let top = 0;
    let out = 0;
    for (let i = 0; i < Math.min(whole, n); i++) {
      top = Math.max(top, w.z[i]);
      out = Math.max(out, w.radius[i]);
    }
    const room = w.rows === 'radial' && w.columns === 1 ? out - w.radius[0] + w.pitch : top + w.pitch;
    const reached = sums.block(whole, whole);
    return {
      turns,
      whole,
      inductance: reached,
      get inductanceRange() {
        // A multilayer coil is modelled with whole layers only; its spread is in proportion.
        const full = makeCoil(wound(coil, whole));
        const [least, most] = full.inductanceRange;
        return [(least * reached) / full.inductance, (most * reached) / full.inductance] as const;
      },
      room,
      wireLength: wireLengthTo(w, whole),
    };
  }
  return undefined;
}

export interface TurnsSpread {
  readonly pitch: Metres;
  /** Winding length, turns × pitch. */
  readonly length: Metres;
  /** Over the length of the coil as it was given. */
  readonly lengthening: Metres;
}

/**
 * How far a solenoid or basket coil must be lengthened, its turns spread evenly, for a smaller inductance; or pushed
 * together for a larger one.
 * @param inductance wanted, H
 * @param coil as it is wound now, m
 * @returns undefined when turns touching still give too little.
 */
export function spreadFor(inductance: Henries, coil: SolenoidSpec | BasketSpec): TurnsSpread | undefined {
  const at = (pitch: Metres) => coilInductance({ ...coil, pitch });
  const now = coil.pitch ?? (coil.shape === 'basket' ? overallDiameter(coil.wire) : closePitch(coil.wire));
  const low = overallDiameter(coil.wire);
  if (!(at(low) >= inductance)) return undefined;
  let high = Math.max(now, low) * 2;
  while (at(high) > inductance) {
    high *= 2;
    if (high > 1e3) return undefined;
  }
  const pitch = root((p) => at(p) - inductance, low, high);
  return { pitch, length: pitch * coil.turns, lengthening: (pitch - now) * coil.turns };
}

export interface WireChoice {
  readonly wire: Wire;
  readonly turns: number;
  readonly pitch: Metres;
  readonly length: Metres;
  readonly wireLength: Metres;
  readonly q: Ratio;
  readonly qRange: readonly [Ratio, Ratio];
}

export interface BestWireOptions {
  readonly inductance: Henries;
  readonly frequency: Hertz;
  readonly formerDiameter: Metres;
  /** Longest winding the former takes, m. */
  readonly longest: Metres;
  readonly former?: Former;
  /** Wires to choose from; default every second SWG size from 18 to 40, enamelled. */
  readonly wires?: readonly Wire[];
}

const COMMON: readonly Wire[] = Array.from({ length: 12 }, (_, i) => ({
  diameter: gaugeDiameter('SWG', 18 + 2 * i)!,
  covering: 'enamel' as const,
}));

/**
 * The wires that reach an inductance on a former, best Q first: each wound close, and each spaced out over half, three
 * quarters and all of the length there is.
 * @param options inductance (H), frequency (Hz), former and room (m), and which wires there are
 * @returns wires with turns, pitch and length (m), and Q with its range; empty when none will do
 */
export function bestWire(options: BestWireOptions): readonly WireChoice[] {
  const { inductance, frequency, formerDiameter, longest, former, wires = COMMON } = options;
  const choices: WireChoice[] = [];
  for (const wire of wires) {
    const base = { shape: 'solenoid', formerDiameter, wire, former } as const;
    const close = turnsFor(inductance, base);
    if (!close || close.room > longest) continue;
    const add = (turns: number, pitch: Metres) => {
      const coil = makeCoil({ ...base, turns, pitch });
      choices.push({
        wire,
        turns,
        pitch,
        length: turns * pitch,
        wireLength: coil.wireLength,
        q: coil.qAt(frequency),
        qRange: coil.qRangeAt(frequency),
      });
    };
    add(close.whole, closePitch(wire));
    for (const part of [0.5, 0.75, 1]) {
      const spaced = spacedTo(part * longest, inductance, base);
      if (spaced && spaced.pitch > closePitch(wire)) add(spaced.turns, spaced.pitch);
    }
  }
  return choices.sort((a, b) => b.q - a.q);
}

/** Whole turns spread over a length for an inductance. */
function spacedTo(length: Metres, inductance: Henries, base: Omit<SolenoidSpec, 'turns' | 'pitch'>) {
  // More turns on the same length give more inductance.
  const most = Math.max(2, Math.floor(length / overallDiameter(base.wire)));
  const at = (turns: number) => coilInductance({ ...base, turns, pitch: length / turns });
  if (at(most) < inductance) return undefined;
  const turns = firstWhole((n) => at(n) >= inductance, 1, most);
  return { turns, pitch: length / turns };
}
