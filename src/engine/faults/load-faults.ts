import type { BuiltSet } from '../built/built-set.ts';
import { OUT } from '../kinds/arrangements/assembly.ts';
import { loadModel } from '../kinds/models.ts';
import { EARTH, type Element } from '../network/elements.ts';
import type { PartId } from '../network/ids.ts';
import { PART } from '../network/part-ids.ts';
import type { Branch } from '../solvers/linear/equations.ts';
import type { Ohms } from '../units/quantities.ts';
import { bySeverity, type FaultCode, type PartFault } from './fault.ts';
import { eachBranch, editedElements, type Planted, withCapacitance, withJoint, withLeak } from './planting.ts';

type Rest = Omit<PartFault, 'id' | 'code' | 'part' | 'cautions'> & Partial<PartFault>;

const of = (code: FaultCode, part: PartId, fault: Rest): PartFault => ({
  id: `${code}@${part}`,
  code,
  part,
  cautions: ['unplug-first'],
  ...fault,
});

const quieter =
  (least: number, most: number) =>
  (planted: Planted, u: number): Planted => ({
    ...planted,
    level: (station) => planted.level(station) - least - (most - least) * u,
  });

/** A joint of the phones themselves: all of them comes away from the plug. */
function phonesJoint({ circuit }: BuiltSet) {
  const part = PART.load;
  const node = circuit.transducer.from;
  const moves = (e: Branch, end: 'from' | 'to'): boolean =>
    end === 'from' &&
    e.owner.part === part &&
    (e.owner.role === 'transducer' || e.owner.role === 'cord') &&
    !isStray(e);
  return (planted: Planted, resistance?: Ohms): Planted => ({
    ...planted,
    circuit: withJoint(planted.circuit, {
      part,
      node,
      moves,
      ports: ['transducer'],
      resistance,
      capacitance: resistance === undefined ? 30e-12 : 0,
    }),
  });
}

/** What a set without a by-pass has across its terminals for radio frequency stays when the phones are off. */
const isStray = (e: Branch): boolean =>
  e.owner.role === 'cord' && e.kind === 'capacitor' && e.from === OUT && e.to === EARTH;

/** What one listens with, what is before it, and the by-pass. */
export function loadFaults(built: BuiltSet): PartFault[] {
  const { load } = built.set;
  const own =
    load.kind === 'crystal earpiece'
      ? earpieceFaults(built)
      : load.kind === 'amplifier'
        ? amplifierFaults(built)
        : phonesFaults(built);
  return [...own, ...byPassFaults(built), ...transformerFaults(built)];
}

const OTHER_PHONES = { 'louder-with-other-phones': 0.95 } as const;
const NO_CLICK = { 'click-from-cell': 0.04, ...OTHER_PHONES } as const;

function phonesFaults(built: BuiltSet): PartFault[] {
  const part = PART.load;
  const { transducer } = built.circuit;
  const joint = phonesJoint(built);
  const faults = [
    of('phones-open', part, { weight: 3, remedy: 'mend-phones', change: (planted) => joint(planted), signs: NO_CLICK }),
    of('cord-intermittent', part, {
      weight: 2.5,
      remedy: 'mend-phones',
      change: (planted, u) => joint(planted, bySeverity(3e3, 1e6, u)),
      signs: { 'sound-with-cord-moved': 0.9, 'click-from-cell': 0.6, ...OTHER_PHONES },
    }),
    of('phones-shorted', part, {
      weight: 1.2,
      remedy: 'mend-phones',
      change: (planted) => ({
        ...planted,
        circuit: withLeak(planted.circuit, part, [transducer.from, transducer.to], 0.5),
      }),
      signs: NO_CLICK,
    }),
    of('phones-half', part, {
      weight: 1,
      remedy: 'mend-phones',
      change: (planted) => ({
        ...quieter(3, 3)(planted, 0),
        circuit: editedElements(
          planted.circuit,
          eachBranch((e) =>
            e.kind === 'resistor' &&
            e.owner.part === part &&
            e.owner.role === 'transducer' &&
            typeof e.resistance === 'number'
              ? { ...e, resistance: e.resistance / 2 }
              : e,
          ),
        ),
      }),
      signs: { 'louder-with-other-phones': 0.3 },
    }),
  ];
  if (built.set.load.kind === 'phones')
    faults.push(
      of('magnetism-lost', part, {
        weight: 1,
        remedy: 'replace-phones',
        change: quieter(10, 25),
        signs: { 'click-from-cell': 0.7, ...OTHER_PHONES },
      }),
    );
  return faults;
}

function earpieceFaults(built: BuiltSet): PartFault[] {
  const part = PART.load;
  const { transducer, set } = built.circuit;
  const joint = phonesJoint(built);
  const across = [transducer.from, transducer.to] as const;
  const faults = [
    of('crystal-dead', part, {
      weight: 4,
      remedy: 'replace-phones',
      change: quieter(20, 60),
      signs: { 'click-from-cell': 0.15, ...OTHER_PHONES },
    }),
    of('phones-open', part, { weight: 2, remedy: 'mend-phones', change: (planted) => joint(planted), signs: NO_CLICK }),
    of('phones-shorted', part, {
      weight: 0.8,
      remedy: 'mend-phones',
      change: (planted) => ({ ...planted, circuit: withLeak(planted.circuit, part, across, 0.5) }),
      signs: NO_CLICK,
    }),
  ];
  if (set.load.kind !== 'crystal earpiece' || set.load.resistor === undefined) return faults;
  faults.push(
    of('earpiece-resistor-missing', PART.loadResistor, {
      weight: 4,
      remedy: 'fit-earpiece-resistor',
      change: (planted) => ({ ...planted, circuit: withScaled(planted, PART.loadResistor, 1e6) }),
      signs: {},
    }),
    of('earpiece-resistor-low', PART.loadResistor, {
      weight: 1,
      remedy: 'fit-earpiece-resistor',
      change: (planted) => ({ ...planted, circuit: withScaled(planted, PART.loadResistor, 0.1) }),
      signs: {},
    }),
  );
  return faults;
}

/** A part's plain resistance times a factor. */
const withScaled = ({ circuit }: Planted, part: PartId, factor: number) =>
  editedElements(
    circuit,
    eachBranch((e) =>
      e.kind === 'resistor' && e.owner.part === part && typeof e.resistance === 'number'
        ? { ...e, resistance: factor * e.resistance }
        : e,
    ),
  );

function amplifierFaults({ parts, circuit }: BuiltSet): PartFault[] {
  const faults = [
    of('amplifier-dead', PART.load, {
      weight: 5,
      remedy: 'supply-amplifier',
      change: quieter(150, 150),
      signs: { 'hiss-at-full-volume': 0.05, 'buzz-from-input': 0.04, 'louder-with-other-phones': 0.9 },
      cautions: ['volume-down', 'no-mains-work'],
    }),
  ];
  const elementOf = (part: PartId) =>
    circuit.assembly
      .baseAt(0.5)
      .elements.find((e): e is Branch => e.kind !== 'mutual' && e.owner.part === part && e.owner.role === 'part');
  const resistor = elementOf(PART.loadResistor);
  if (parts.has(PART.loadResistor) && resistor)
    faults.push(
      of('load-resistor-open', PART.loadResistor, {
        weight: 1.5,
        remedy: 'replace-resistor',
        change: (planted) => ({ ...planted, circuit: withScaled(planted, PART.loadResistor, 1e6) }),
        signs: {},
      }),
    );
  return faults;
}

function byPassFaults({ set }: BuiltSet): PartFault[] {
  const { bypass } = set.load;
  const part = PART.byPass;
  const across = [OUT, EARTH] as const;
  if (!(bypass > 0)) return [];
  const leak = (low: number, high: number) => (planted: Planted, u: number) => ({
    ...planted,
    circuit: withLeak(planted.circuit, part, across, bySeverity(low, high, u)),
  });
  return [
    of('by-pass-shorted', part, {
      weight: 1.2,
      remedy: 'replace-by-pass',
      change: leak(0.1, 1),
      signs: { 'louder-with-by-pass-off': 0.95 },
    }),
    of('by-pass-leaky', part, {
      weight: 0.8,
      remedy: 'replace-by-pass',
      change: leak(200, 5000),
      signs: { 'louder-with-by-pass-off': 0.85 },
    }),
    of('by-pass-large', part, {
      weight: 0.8,
      remedy: 'replace-by-pass',
      change: (planted, u) => ({
        ...planted,
        circuit: withCapacitance(planted.circuit, part, across, bypass * bySeverity(10, 200, u)),
      }),
      signs: { 'louder-with-by-pass-off': 0.7 },
    }),
  ];
}

function transformerFaults({ set, parts, circuit }: BuiltSet): PartFault[] {
  const { transformer } = set.load;
  const part = PART.transformer;
  if (!transformer || !parts.has(part)) return [];
  const elements = circuit.assembly.baseAt(0.5).elements;
  const side = (role: 'primary' | 'secondary') =>
    elements.filter((e): e is Branch => e.kind !== 'mutual' && e.owner.part === part && e.owner.role === role);
  const [primary, secondary] = [side('primary'), side('secondary')];
  const open = (list: readonly Branch[]) => {
    const ids = new Set<string>(list.map((e) => e.id));
    const node = list[0].from;
    return (planted: Planted): Planted => ({
      ...planted,
      circuit: withJoint(planted.circuit, {
        part,
        node,
        moves: (e, end) => end === 'from' && ids.has(e.id),
        capacitance: 10e-12,
      }),
    });
  };
  const faults: PartFault[] = [];
  if (primary.length > 0)
    faults.push(
      of('primary-open', part, { weight: 1, remedy: 'replace-transformer', change: open(primary), signs: {} }),
    );
  if (secondary.length > 0)
    faults.push(
      of('secondary-open', part, {
        weight: 0.7,
        remedy: 'replace-transformer',
        change: open(secondary),
        signs: OTHER_PHONES,
      }),
    );
  if (transformer.ratio > 1.5 || transformer.ratio < 0.67)
    faults.push(
      of('transformer-reversed', part, {
        weight: 1.5,
        remedy: 'turn-transformer',
        change: (planted) => ({ ...planted, circuit: withTurnedTransformer(planted) }),
        signs: {},
      }),
    );
  return faults;
}

/** The same iron with the detector on its other winding. */
function withTurnedTransformer({ circuit }: Planted) {
  const { load } = circuit.set;
  const { transformer } = load;
  if (!transformer) return circuit;
  const { ratio, primaryInductance } = transformer;
  const turned = loadModel({
    ...load,
    transformer: {
      ...transformer,
      ratio: 1 / ratio,
      primaryResistance: transformer.secondaryResistance,
      secondaryResistance: transformer.primaryResistance,
      primaryInductance: primaryInductance / ratio ** 2,
      coreLoss: transformer.coreLoss === undefined ? undefined : transformer.coreLoss / ratio ** 2,
    },
  });
  const isOfLoad = (e: Element): boolean =>
    e.kind === 'mutual'
      ? e.first.startsWith(PART.transformer) || e.second.startsWith(PART.transformer)
      : e.owner.part === PART.transformer || (e.owner.part === PART.load && !isStray(e));
  const live = load.equalizer ? 'equalised' : OUT;
  const { elements, output } = turned.elements(live, EARTH);
  return {
    ...editedElements(circuit, (list) => [...list.filter((e) => !isOfLoad(e)), ...elements]),
    load: turned,
    transducer: output,
  };
}
