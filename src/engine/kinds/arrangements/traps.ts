import { type Warning, warning } from '../../facts/warning.ts';
import { EARTH, type Element, type Mutual } from '../../network/elements.ts';
import { type ElementId, owned } from '../../network/ids.ts';
import { trapCapacitor, trapCoil } from '../../network/part-ids.ts';
import type { Farads, Henries, Hertz, Ohms, Ratio } from '../../units/quantities.ts';
import { tuningModel } from '../models.ts';
import type { TrapDescription } from './arrangement-schema.ts';
import { AERIAL } from './assembly.ts';
import { type CoilInCircuit, mutualId, type SectionedCoil } from './coil-sections.ts';

/** A wave trap as made and set. */
export interface TrapAsMade {
  readonly kind: TrapDescription['kind'];
  readonly coupling: Ratio;
  readonly inductance: Henries;
  /** Of its coil, in parallel with it. */
  readonly selfCapacitance: Farads;
  readonly resistanceAt: (frequency: Hertz) => Ohms;
  /** Of its capacitor, as set. */
  readonly capacitance: Farads;
  readonly lossTangent: Ratio;
  /** Where it resonates. */
  readonly frequency: Hertz;
  /** Of the station that it is for. */
  readonly stops?: Hertz;
  /** From where to where its capacitor tunes it; both the same for a fixed one. */
  readonly reach: readonly [lowest: Hertz, highest: Hertz];
}

/** Of a trap that has no variable capacitor and is set to its station: what a trimmer reaches. Common practice, no source. */
const TRIMMER: readonly [Farads, Farads] = [5e-12, 2e-9];

/**
 * A trap of described parts, tuned to its station as far as its capacitor goes.
 * @param trap as read
 * @param coil its coil as made, where one of the set's is named
 * @param stops frequency of the station that it is for, Hz; undefined: its parts stand as they are described
 * @returns what it is made of, and where it resonates
 */
export function trapAsMade(
  trap: TrapDescription,
  coil: SectionedCoil | undefined,
  stops: Hertz | undefined,
): TrapAsMade {
  const inductance = coil?.inductance ?? trap.inductance ?? 0;
  const selfCapacitance = coil?.selfCapacitance ?? 0;
  const resonance = (C: Farads): Hertz => 1 / (2 * Math.PI * Math.sqrt(inductance * (C + selfCapacitance)));
  const forStation = stops && 1 / ((2 * Math.PI * stops) ** 2 * inductance) - selfCapacitance;
  const variable = trap.capacitor && tuningModel(trap.capacitor);
  const [least, most] = variable
    ? [variable.min, variable.max]
    : trap.capacitance === undefined
      ? TRIMMER
      : [trap.capacitance, trap.capacitance];
  const asDescribed = trap.capacitance ?? (least + most) / 2;
  const capacitance = Math.min(most, Math.max(least, forStation ?? asDescribed));
  const frequency = resonance(capacitance);
  const position = variable?.positionFor(capacitance);
  return {
    kind: trap.kind,
    coupling: trap.coupling,
    inductance,
    selfCapacitance,
    resistanceAt:
      coil?.resistanceAt ?? ((f) => (2 * Math.PI * Math.sqrt(frequency * Math.max(f, 1)) * inductance) / trap.q),
    capacitance,
    lossTangent: variable && position !== undefined ? variable.lossTangentAt(position) : 0,
    frequency,
    stops,
    reach: [resonance(most), resonance(least)],
  };
}

/** Beside its station by more than this share of the frequency, a trap does not stop it. */
const BESIDE = 0.01;

/**
 * Wave traps between the aerial terminal and the set, and those coupled to its coil.
 * @param absorb the coil that absorption traps are coupled to. @param aerial a loop has no lead to put a trap in.
 * @returns their elements, and the node the set is fed from.
 */
export function trapElements(
  traps: readonly TrapAsMade[],
  absorb: { readonly coil: SectionedCoil; readonly wound: CoilInCircuit },
  aerial: 'lead' | 'loop' = 'lead',
): { elements: Element[]; feed: string; warnings: Warning[] } {
  const elements: Element[] = [];
  const warnings: Warning[] = [];
  let feed = AERIAL;
  traps.forEach((trap, i) => {
    const label = `trap ${i + 1}`;
    const { inductance, selfCapacitance, capacitance, lossTangent, stops, frequency } = trap;
    const wound = owned(trapCoil(i), 'winding');
    const coil = (from: string, to: string): Element[] => [
      { kind: 'inductor', ...wound, from, to, inductance, resistance: trap.resistanceAt },
      ...(selfCapacitance > 0
        ? [
            {
              kind: 'capacitor',
              ...owned(trapCoil(i), 'self-capacitance'),
              from,
              to,
              capacitance: selfCapacitance,
            } as const,
          ]
        : []),
    ];
    const capacitor = (from: string, to: string): Element => ({
      kind: 'capacitor',
      ...owned(trapCapacitor(i), 'part'),
      from,
      to,
      capacitance,
      lossTangent,
    });
    if (aerial === 'loop' && trap.kind !== 'absorption') {
      warnings.push(warning('arrangement.trap-without-lead', { trap: i }));
      return;
    }
    if (stops !== undefined && Math.abs(frequency / stops - 1) > BESIDE)
      warnings.push(warning('arrangement.trap-beside-station', { trap: i, stops, reach: trap.reach }));
    if (trap.kind === 'parallel') {
      const after = `after ${label}`;
      elements.push(...coil(feed, after), capacitor(feed, after));
      feed = after;
    } else if (trap.kind === 'series') {
      elements.push(...coil(feed, `${label} middle`), capacitor(`${label} middle`, EARTH));
    } else {
      const loop = `${label} loop`;
      elements.push(...coil(loop, EARTH), capacitor(loop, EARTH));
      elements.push(...mutualsOf(wound.id, trap.coupling, inductance, absorb.coil, absorb.wound));
    }
  });
  return { elements, feed, warnings };
}

/** Couple a trap's coil to the whole of a coil: each stretch has the share of it that it has of the coil's own flux. */
function mutualsOf(id: ElementId, k: number, L: number, coil: SectionedCoil, wound: CoilInCircuit): Mutual[] {
  const { sections } = wound;
  const whole = k * Math.sqrt(L * coil.inductance);
  return sections.map((s): Mutual => {
    const flux =
      sections.length === 1
        ? coil.inductance
        : sections.reduce(
            (sum, t) => sum + (t === s ? coil.partial(s.from, s.to) : coil.mutual([s.from, s.to], [t.from, t.to])),
            0,
          );
    return {
      kind: 'mutual',
      id: mutualId(id, s.id),
      first: id,
      second: s.id,
      mutual: (whole * flux) / coil.inductance,
    };
  });
}
