import type { BuiltSet, Part } from '../built/built-set.ts';
import type { SetCircuit } from '../built/set-circuit.ts';
import type { SectionedCoil } from '../kinds/arrangements/coil-sections.ts';
import type { Element } from '../network/elements.ts';
import { elementId, type PartId } from '../network/ids.ts';
import { PART } from '../network/part-ids.ts';
import type { SetDescription } from '../set/description.ts';
import type { Branch } from '../solvers/linear/equations.ts';
import type { Ohms } from '../units/quantities.ts';
import { bySeverity, type PartFault } from './fault.ts';
import { eachBranch, editedElements, type Planted, withJoint } from './planting.ts';

/** Contact of two bare turns, Ω. */
const TURNS_TOUCH: Ohms = 0.03;
/** What a wire broken inside a winding leaves between its ends, F. */
const BROKEN_WIRE = 2e-12;

type Winding = Extract<Branch, { kind: 'inductor' }>;

const isWindingOf =
  (part: PartId) =>
  (e: Element): e is Winding =>
    e.kind === 'inductor' && e.owner.part === part && e.owner.role === 'winding';

/** Coils, loops and listed inductors of a set, with what is known of their turns. */
export function coilFaults(built: BuiltSet): PartFault[] {
  const { circuit, set, parts } = built;
  const slides = set.arrangement.kind === 'slider';
  const faults: PartFault[] = [];
  for (const part of parts.values()) {
    if (part.values.kind !== 'coil') continue;
    const coil = sectionedOf(circuit, part);
    const elements = circuit.assembly.baseAt(0.5).elements;
    const sections = elements.filter(isWindingOf(part.id)).sort((a, b) => startOf(a) - startOf(b));
    // A slider cuts its coil anew at every place: there only the two ends are joints.
    const jointed = slides && sections.length > 1 ? [sections[0]] : sections;
    for (const section of jointed) faults.push(...jointFaults(part.id, section, jointed));
    if (coil) faults.push(shortedTurn(part.id, coil), ...wholeCoil(part, coil));
    if (sections.length > 1 && !slides) faults.push(reversed(part.id, sections[sections.length - 1]));
  }
  return [...faults, ...tapFaults(built), ...couplingFaults(built)];
}

const startOf = (e: Winding): number => e.owner.turns?.[0] ?? 0;

/** The coil that a part's elements are cut from. */
function sectionedOf(circuit: SetCircuit, { id, values }: Part): SectionedCoil | undefined {
  if (id === PART.loop) return circuit.loop;
  return values.kind === 'coil' && values.coil !== undefined ? circuit.coils[values.coil] : undefined;
}

/** A joint at one end of a stretch of turns: the top one's far end, of the others the earthed end. */
function jointFaults(part: PartId, section: Winding, all: readonly Winding[]): PartFault[] {
  const turns = section.owner.turns;
  const isTop = all.length > 1 && section === all[all.length - 1];
  const isFirst = section === all[0];
  const end = isTop ? 'from' : 'to';
  const node = section[end];
  const start = startOf(section);
  const moves = (e: Branch, which: 'from' | 'to'): boolean =>
    which === end &&
    ((isWindingOf(part)(e) && startOf(e) === start) ||
      (e.owner.part === part && e.owner.role === 'self-capacitance' && (isTop || isFirst)));
  const at = turns ? `:${turns[0]}-${turns[1]}` : '';
  const common = { part, turns, remedy: 'resolder-winding', cautions: ['unplug-first'] } as const;
  return [
    {
      ...common,
      id: `winding-open@${part}${at}`,
      code: 'winding-open',
      weight: isTop ? 2.5 : 2,
      change: (planted) => ({
        ...planted,
        circuit: withJoint(planted.circuit, { part, node, moves, capacitance: BROKEN_WIRE }),
      }),
      signs: isFirst ? { hum: 0.4, 'crackle-on-tapping': 0.15 } : { 'crackle-on-tapping': 0.15 },
    },
    {
      ...common,
      id: `winding-joint-dry@${part}${at}`,
      code: 'winding-joint-dry',
      weight: 1.5,
      change: (planted, u) => ({
        ...planted,
        circuit: withJoint(planted.circuit, { part, node, moves, resistance: bySeverity(5, 2000, u) }),
      }),
      signs: { 'crackle-on-tapping': 0.75 },
    },
  ];
}

/** One turn joined to the next: a loop of its own, coupled to all the others. */
function shortedTurn(part: PartId, coil: SectionedCoil): PartFault {
  return {
    id: `turn-shorted@${part}`,
    code: 'turn-shorted',
    part,
    weight: 1.6,
    remedy: 'rewind-turns',
    change: (planted, u) => ({ ...planted, circuit: withShortedTurn(planted.circuit, part, coil, u) }),
    signs: { 'crackle-on-tapping': 0.15 },
    cautions: [],
  };
}

function withShortedTurn(circuit: SetCircuit, part: PartId, coil: SectionedCoil, u: number): SetCircuit {
  const n = Math.min(coil.turns - 1, Math.max(0, Math.floor(u * (coil.turns - 1))));
  const turn = [n, n + 1] as const;
  const L = coil.partial(n, n + 1);
  const R = coil.wireShare(n, n + 1);
  const id = elementId(`${part}/fault:turn`);
  /** Of a stretch of turns with that turn, which may be one of its own. */
  const linked = (from: number, to: number): number => {
    if (n + 1 <= from || n >= to) return coil.mutual([from, to], turn);
    const before = n > from ? coil.mutual([from, n], turn) : 0;
    const after = n + 1 < to ? coil.mutual(turn, [n + 1, to]) : 0;
    const [low, high] = [Math.max(n, from), Math.min(n + 1, to)];
    return before + L * (high - low) + after;
  };
  return editedElements(circuit, (list) => {
    const windings = list.filter(isWindingOf(part));
    const spanOf = (e: Winding): readonly [number, number] => e.owner.turns ?? [0, coil.turns];
    const own = windings.map((e) => ({ e, mutual: linked(...spanOf(e)) }));
    const ids = new Map(windings.map((e) => [e.id, spanOf(e)] as const));
    const others = new Map<string, number>();
    for (const e of list) {
      if (e.kind !== 'mutual') continue;
      for (const [a, b] of [
        [e.first, e.second],
        [e.second, e.first],
      ] as const) {
        const span = ids.get(a);
        if (!span || ids.has(b)) continue;
        const share = Math.max(0, Math.min(span[1], n + 1) - Math.max(span[0], n)) / (span[1] - span[0]);
        if (share > 0) others.set(b, (others.get(b) ?? 0) + share * e.mutual);
      }
    }
    const [from, to] = [`turn|${part}`, 'earth'];
    const owner = { part, role: 'part' as const };
    return [
      ...list,
      {
        kind: 'inductor',
        id,
        owner,
        from,
        to,
        inductance: L,
        resistance: (f) => R * coil.resistanceAt(f) + TURNS_TOUCH,
      },
      { kind: 'resistor', id: elementId(`${id}:contact`), owner, from, to, resistance: TURNS_TOUCH },
      ...own.map(
        ({ e, mutual }): Element => ({
          kind: 'mutual',
          id: elementId(`${id} with ${e.id}`),
          first: id,
          second: e.id,
          // No two stretches of wire link all of each other's flux.
          mutual: Math.sign(mutual) * Math.min(Math.abs(mutual), 0.995 * Math.sqrt(L * e.inductance)),
        }),
      ),
      ...[...others].map(
        ([other, mutual]): Element => ({
          kind: 'mutual',
          id: elementId(`${id} with ${other}`),
          first: id,
          second: elementId(other),
          mutual,
        }),
      ),
    ];
  });
}

/** Inductance, mutuals and loss of a whole winding times factors. */
export function withWinding(
  circuit: SetCircuit,
  part: PartId,
  { inductance = 1, loss = 1 }: { readonly inductance?: number; readonly loss?: number },
): SetCircuit {
  return editedElements(circuit, (list) => {
    const own = new Set<string>(list.filter(isWindingOf(part)).map((e) => e.id));
    return list.map((e): Element => {
      if (e.kind === 'mutual') {
        const ends = Number(own.has(e.first)) + Number(own.has(e.second));
        return ends === 0 ? e : { ...e, mutual: e.mutual * inductance ** (ends / 2) };
      }
      if (!isWindingOf(part)(e)) return e;
      const { resistance } = e;
      return {
        ...e,
        inductance: e.inductance * inductance,
        resistance: (f) => (f > 0 ? loss : 1) * (typeof resistance === 'function' ? resistance(f) : resistance),
      };
    });
  });
}

function wholeCoil({ id: part }: Part, { turns }: SectionedCoil): PartFault[] {
  const of = (planted: Planted, factors: { inductance?: number; loss?: number }): Planted => ({
    ...planted,
    circuit: withWinding(planted.circuit, part, factors),
  });
  return [
    {
      id: `turns-few@${part}`,
      code: 'turns-few',
      part,
      turns: [0, turns],
      weight: 0.8,
      remedy: 'correct-turns',
      change: (planted, u) => of(planted, { inductance: (1 - 0.05 - 0.1 * u) ** 1.8 }),
      signs: {},
      cautions: [],
    },
    {
      id: `turns-many@${part}`,
      code: 'turns-many',
      part,
      turns: [0, turns],
      weight: 0.6,
      remedy: 'correct-turns',
      change: (planted, u) => of(planted, { inductance: (1 + 0.05 + 0.1 * u) ** 1.8 }),
      signs: {},
      cautions: [],
    },
    {
      id: `winding-damp@${part}`,
      code: 'winding-damp',
      part,
      weight: 1,
      remedy: 'dry-winding',
      change: (planted, u) => of(planted, { loss: bySeverity(3, 10, u) }),
      signs: { 'weaker-when-wet': 0.5 },
      cautions: [],
    },
  ];
}

/** The last stretch of turns wound against the rest. */
function reversed(part: PartId, section: Winding): PartFault {
  return {
    id: `section-reversed@${part}`,
    code: 'section-reversed',
    part,
    turns: section.owner.turns,
    weight: 0.4,
    remedy: 'swap-winding-ends',
    change: (planted) => ({
      ...planted,
      circuit: editedElements(planted.circuit, (list) =>
        list.map((e) => {
          if (e.kind !== 'mutual') return e;
          const ends = Number(e.first === section.id) + Number(e.second === section.id);
          return ends === 1 ? { ...e, mutual: -e.mutual } : e;
        }),
      ),
    }),
    signs: {},
    cautions: [],
  };
}

/** Taps soldered to the wrong turn, and the aerial's lead to its tap. */
function tapFaults({ set, circuit, parts }: BuiltSet): PartFault[] {
  const { arrangement } = set;
  const faults: PartFault[] = [];
  const coil = circuit.tuningCoil;
  const aerial = parts.get(PART.aerial);
  const lead = circuit.assembly
    .baseAt(0.5)
    .elements.find(
      (e): e is Branch => e.kind !== 'mutual' && e.owner.part === PART.aerial && e.owner.role === 'contact',
    );
  if (aerial && lead) {
    const joint = (resistance: (u: number) => Ohms) => (planted: Planted, u: number) => ({
      ...planted,
      circuit: editedElements(
        planted.circuit,
        eachBranch((e) => (e.id === lead.id && e.kind === 'resistor' ? { ...e, resistance: resistance(u) } : e)),
      ),
    });
    const common = { part: PART.aerial, remedy: 'resolder-aerial-tap', cautions: ['unplug-first'] } as const;
    faults.push(
      {
        ...common,
        id: 'aerial-tap-open',
        code: 'aerial-tap-open',
        weight: 2,
        change: joint(() => 3e10),
        signs: { 'crackle-on-tapping': 0.15 },
      },
      {
        ...common,
        id: 'aerial-tap-dry',
        code: 'aerial-tap-dry',
        weight: 1.5,
        change: joint((u) => bySeverity(50, 5000, u)),
        signs: { 'crackle-on-tapping': 0.75 },
      },
    );
  }
  const { kind } = arrangement;
  if (!coil || kind === 'variometer' || kind === 'elements' || circuit.assembly.wiring === 'full-wave') return faults;
  const part = coil.id;
  const common = { part, weight: 1, remedy: 'correct-taps', signs: {}, cautions: ['unplug-first'] } as const;
  const { turns } = coil;
  const detectorTap = arrangement.detectorTap ?? turns;
  const withTaps = (taps: { aerialTap?: number; detectorTap?: number }) => (set: SetDescription) =>
    ({ ...set, arrangement: { ...set.arrangement, ...taps } }) as SetDescription;
  if (arrangement.kind === 'tapped' && Math.abs(arrangement.aerialTap - detectorTap) > 0.1 * turns)
    faults.push({
      ...common,
      id: `taps-interchanged@${part}`,
      code: 'taps-interchanged',
      weight: 1.5,
      describe: withTaps({ aerialTap: detectorTap, detectorTap: arrangement.aerialTap }),
    });
  const mirrored = {
    ...(arrangement.kind === 'tapped' ? { aerialTap: turns - arrangement.aerialTap } : {}),
    ...(arrangement.detectorTap === undefined ? {} : { detectorTap: turns - arrangement.detectorTap }),
  };
  const isTap = Object.values(mirrored).every((turn) => turn > 0.5);
  if (Object.keys(mirrored).length > 0 && isTap && arrangement.kind !== 'slider')
    faults.push({
      ...common,
      id: `taps-from-wrong-end@${part}`,
      code: 'taps-from-wrong-end',
      describe: withTaps(mirrored),
    });
  return faults;
}

function couplingFaults({ set, circuit, couplings }: BuiltSet): PartFault[] {
  const { arrangement, aerial } = set;
  const faults: PartFault[] = [];
  const pair = couplings.find(({ distance, k }) => distance !== undefined || k !== undefined);
  if (pair)
    faults.push({
      id: `coils-far@${pair.between[0]}`,
      code: 'coils-far',
      part: pair.between[0],
      weight: 1,
      remedy: 'move-coils',
      change: (planted, u) => {
        const factor = bySeverity(0.35, 0.08, u);
        return {
          ...planted,
          circuit: editedElements(planted.circuit, (list) => {
            const partOf = new Map(list.flatMap((e) => (e.kind === 'mutual' ? [] : [[e.id, e.owner.part] as const])));
            const isBetween = (first: PartId | undefined, second: PartId | undefined): boolean =>
              first !== second && pair.between.includes(first!) && pair.between.includes(second!);
            return list.map((e) =>
              e.kind === 'mutual' && isBetween(partOf.get(e.first), partOf.get(e.second))
                ? { ...e, mutual: factor * e.mutual }
                : e,
            );
          }),
        };
      },
      signs: {},
      cautions: [],
    });
  if (arrangement.kind === 'slider' && circuit.tuningCoil) {
    const part = circuit.tuningCoil.id;
    faults.push({
      id: `slider-dirty@${part}`,
      code: 'slider-dirty',
      part,
      weight: 3,
      remedy: 'clean-slider',
      change: (planted, u) => ({
        ...planted,
        circuit: editedElements(
          planted.circuit,
          eachBranch((e) =>
            e.kind === 'resistor' && e.owner.part === part && e.owner.role === 'contact'
              ? { ...e, resistance: bySeverity(20, 2000, u) }
              : e,
          ),
        ),
      }),
      signs: { 'jumps-on-sliding': 0.9, 'crackle-on-tapping': 0.4 },
      cautions: [],
    });
  }
  if (aerial.kind === 'ferrite rod')
    faults.push({
      id: 'rod-broken',
      code: 'rod-broken',
      part: PART.loop,
      weight: 0.5,
      remedy: 'replace-rod',
      change: (planted, u) => ({
        ...planted,
        level: (station) => planted.level(station) - 4 - 4 * u,
        circuit: withWinding(planted.circuit, PART.loop, { inductance: 0.75 - 0.25 * u }),
      }),
      signs: {},
      cautions: [],
    });
  return faults;
}
