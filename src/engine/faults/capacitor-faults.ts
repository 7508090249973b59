import type { BuiltSet } from '../built/built-set.ts';
import type { TuningPort } from '../kinds/arrangements/assembly.ts';
import { PART } from '../network/part-ids.ts';
import type { Branch } from '../solvers/linear/equations.ts';
import { bySeverity, type FaultCode, type PartFault } from './fault.ts';
import { bridgedCapacitorsOf, seriesCapacitorsOf } from './ohmmeter.ts';
import { editedCircuit, type Planted, withCapacitance, withJoint, withLeak } from './planting.ts';

const none = (): boolean => false;

/** Tuning capacitors, strays, and every fixed capacitor, resistor and trap of a set. */
export function capacitorFaults(built: BuiltSet): PartFault[] {
  const { tuning } = built.circuit.assembly;
  return [
    ...tuning.flatMap((port, index) => tuningFaults(built, port, index)),
    ...(tuning.length > 0 ? [strays(tuning[0])] : []),
    ...fixedFaults(built),
  ];
}

/** Lists of dielectrics that take up water. */
const ABSORBS: ReadonlySet<string> = new Set(['foil', 'book', 'tubes']);

function tuningFaults({ set, circuit }: BuiltSet, { owner: { part }, port }: TuningPort, index: number): PartFault[] {
  const { tuning } = set;
  const turns = circuit.tuning.max > 1.05 * circuit.tuning.min;
  const isMain = index === 0;
  const across = [port.from, port.to] as const;
  const retuned = (change: (t: TuningPort) => TuningPort) => (planted: Planted) => ({
    ...planted,
    circuit: editedCircuit(planted.circuit, { tuning: (t, i) => (i === index ? change(t) : t) }),
  });
  const leak = (low: number, high: number) => (planted: Planted, u: number) => {
    const resistance = bySeverity(low, high, u);
    return {
      ...planted,
      capacitorLeak: isMain ? resistance : planted.capacitorLeak,
      circuit: withLeak(planted.circuit, part, across, resistance),
    };
  };
  const joint = (planted: Planted, resistance: number | undefined) => ({
    ...planted,
    circuit: withJoint(planted.circuit, {
      part,
      node: port.from,
      moves: none,
      tuning: index,
      resistance,
      capacitance: resistance === undefined ? 0.5e-12 : 0,
    }),
  });
  const of = (code: FaultCode, fault: Omit<PartFault, 'id' | 'code' | 'part' | 'cautions'>): PartFault => ({
    id: `${code}@${part}`,
    code,
    part,
    cautions: ['unplug-first'],
    ...fault,
  });
  const faults = [
    of('tuning-lead-off', {
      weight: 2,
      remedy: 'rejoin-tuning',
      change: (planted) => joint(planted, undefined),
      signs: { 'crackle-on-tapping': 0.15 },
    }),
    of('tuning-shorted', {
      weight: 1,
      remedy: 'straighten-vanes',
      change: leak(0.05, 0.3),
      signs: { 'scrape-at-one-place': 0.2 },
    }),
    of('tuning-leaky', {
      weight: 0.8,
      remedy: 'dry-tuning',
      change: leak(1e4, 3e5),
      signs: { 'weaker-when-wet': 0.5 },
    }),
    of('tuning-half', {
      weight: 0.6,
      remedy: 'replace-tuning',
      change: (planted, u) => {
        const share = 0.65 - 0.25 * u;
        return retuned((t) => ({
          ...t,
          min: share * t.min,
          max: share * t.max,
          capacitanceAt: (p) => share * t.capacitanceAt(p),
          positionFor: (C) => t.positionFor(C / share),
        }))(planted);
      },
      signs: {},
    }),
  ];
  if (turns) {
    faults.push(
      of('rotor-contact-dirty', {
        weight: 2.5,
        remedy: 'clean-rotor',
        change: (planted, u) => joint(planted, bySeverity(3, 300, u)),
        signs: { 'crackle-on-turning': 0.9, 'crackle-on-tapping': 0.3 },
      }),
    );
    if (isMain)
      faults.push(
        of('vanes-touch', {
          weight: 3,
          remedy: 'straighten-vanes',
          change: (planted, u) => ({ ...planted, touchesFrom: 0.85 - 0.6 * u, capacitorLeak: 0.1 }),
          signs: { 'scrape-at-one-place': 0.9, 'crackle-on-turning': 0.5 },
        }),
      );
  }
  if (isMain && ABSORBS.has(tuning.kind))
    faults.push(
      of('dielectric-wet', {
        weight: 1,
        remedy: 'dry-tuning',
        change: (planted, u) => retuned((t) => ({ ...t, lossTangentAt: () => bySeverity(0.05, 0.2, u) }))(planted),
        signs: { 'weaker-when-wet': 0.6 },
      }),
    );
  return faults;
}

const strays = ({ port }: TuningPort): PartFault => ({
  id: 'strays-large',
  code: 'strays-large',
  part: PART.tuning,
  weight: 1,
  remedy: 'part-leads',
  change: (planted, u) => ({
    ...planted,
    circuit: withCapacitance(planted.circuit, PART.tuning, [port.from, port.to], bySeverity(25e-12, 80e-12, u)),
  }),
  signs: { 'hand-near-moves-tuning': 0.7 },
  cautions: [],
});

/** What of fixed parts is told apart elsewhere: by-pass and load have faults of their own. */
const ELSEWHERE: ReadonlySet<string> = new Set([PART.byPass, PART.loadResistor, PART.load, PART.transformer]);

/** An open or a shorted capacitor, an open resistor: for every fixed part, listed ones too. */
function fixedFaults(built: BuiltSet): PartFault[] {
  const { parts, circuit } = built;
  const inSeries = new Set(seriesCapacitorsOf(built));
  const bridged = new Set(bridgedCapacitorsOf(built));
  const elements = circuit.assembly.baseAt(0.5).elements;
  const faults: PartFault[] = [];
  for (const { id: part, values } of parts.values()) {
    if (ELSEWHERE.has(part) || (values.kind !== 'capacitor' && values.kind !== 'resistor')) continue;
    const element = elements.find((e): e is Branch => e.kind !== 'mutual' && e.owner.part === part);
    if (!element) continue;
    const moves = (e: Branch, end: 'from' | 'to'): boolean => end === 'from' && e.id === element.id;
    const open = (planted: Planted): Planted => ({
      ...planted,
      circuit: withJoint(planted.circuit, { part, node: element.from, moves, capacitance: 0.5e-12 }),
    });
    const common = { part, signs: {}, cautions: ['unplug-first'] } as const;
    if (values.kind === 'resistor') {
      faults.push({
        ...common,
        id: `resistor-open@${part}`,
        code: 'resistor-open',
        weight: 0.7,
        remedy: 'replace-resistor',
        change: open,
      });
      continue;
    }
    const isInSeries = inSeries.has(part);
    faults.push(
      {
        ...common,
        id: `capacitor-open@${part}`,
        code: 'capacitor-open',
        weight: 1,
        remedy: 'replace-capacitor',
        change: open,
        signs: bridged.has(part) ? { 'louder-with-capacitor-bridged': 0.9 } : {},
      },
      {
        ...common,
        id: `capacitor-shorted@${part}`,
        code: 'capacitor-shorted',
        weight: 0.7,
        remedy: 'replace-capacitor',
        change: (planted) => ({
          ...planted,
          fixedCapacitor: isInSeries ? 0.2 : planted.fixedCapacitor,
          circuit: withLeak(planted.circuit, part, [element.from, element.to], 0.2),
        }),
      },
    );
  }
  return faults;
}
