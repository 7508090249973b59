import type { SetCircuit } from '../built/set-circuit.ts';
import { OUT, type TuningPort } from '../kinds/arrangements/assembly.ts';
import { type Circuit, EARTH, type Element } from '../network/elements.ts';
import { elementId, type PartId } from '../network/ids.ts';
import type { Port } from '../network/port.ts';
import { averaged } from '../parts/detector/averaged.ts';
import type { Detector } from '../parts/detector/detector.ts';
import { pairAveraged } from '../parts/detector/pair.ts';
import type { Branch } from '../solvers/linear/equations.ts';
import type { Decibels, Farads, Ohms, Ratio } from '../units/quantities.ts';

/** A set with faults planted: its circuit, and what of a fault is no circuit. */
export interface Planted {
  readonly circuit: SetCircuit;
  /** Added to what is heard of a station, by its place in the description. */
  readonly level: (station: number) => Decibels;
  /** Above this place of the scale the tuning capacitor is shorted; 1: nowhere. */
  readonly touchesFrom: Ratio;
  /** From the aerial's lead to the earth's, both off the set; infinite where nothing leaks. */
  readonly leadsApart: Ohms;
  /** Along the earth's lead, off the set; infinite where it is broken. */
  readonly earthLead: Ohms;
  /** Across each fixed capacitor that the signal passes, with one wire off: the lowest of them. */
  readonly fixedCapacitor: Ohms;
  /** Across the tuning capacitor by itself, at its worst place. */
  readonly capacitorLeak: Ohms;
  /** With the power off a heater is cold. */
  readonly isCold: boolean;
  /** One device of a pair is open; the circuit has the other. */
  readonly isOneOpen: boolean;
}

/** A few metres of wire with its plug and clamp, Ω. */
const LEAD: Ohms = 0.2;

/**
 * A sound set, ready to have faults planted.
 * @param circuit of the set as described
 * @returns the same with nothing wrong
 */
export const sound = (circuit: SetCircuit): Planted => ({
  circuit,
  level: () => 0,
  touchesFrom: 1,
  leadsApart: Number.POSITIVE_INFINITY,
  earthLead: LEAD,
  fixedCapacitor: Number.POSITIVE_INFINITY,
  capacitorLeak: Number.POSITIVE_INFINITY,
  isCold: circuit.detector.kind === 'thermionic',
  isOneOpen: false,
});

type PortName = 'carrier' | 'output' | 'tuned' | 'transducer';

interface Edit {
  readonly elements?: (list: readonly Element[]) => readonly Element[];
  readonly port?: (port: Port, name: PortName) => Port;
  readonly tuning?: (tuning: TuningPort, index: number) => TuningPort;
}

/** The same set with its element list edited at every position of the pointer. */
export function editedCircuit(circuit: SetCircuit, edit: Edit): SetCircuit {
  const { elements = (list) => list, port = (p) => p, tuning: retuned = (t) => t } = edit;
  const { assembly } = circuit;
  const tuning = assembly.tuning.map(retuned);
  const baseAt = (position: Ratio): Circuit => ({ elements: [...elements(assembly.baseAt(position).elements)] });
  return {
    ...circuit,
    transducer: port(circuit.transducer, 'transducer'),
    assembly: {
      ...assembly,
      tuning,
      carrierPort: port(assembly.carrierPort, 'carrier'),
      outputPort: port(assembly.outputPort, 'output'),
      tunedPort: port(assembly.tunedPort, 'tuned'),
      baseAt,
      circuitAt: (position, other = position) => ({
        elements: [
          ...baseAt(position).elements,
          ...tuning.map((t, i): Element => {
            const p = i === 0 ? position : other;
            return {
              kind: 'capacitor',
              id: t.id,
              owner: t.owner,
              ...t.port,
              capacitance: t.capacitanceAt(p),
              lossTangent: t.lossTangentAt(p),
            };
          }),
        ],
      }),
    },
  };
}

export const editedElements = (
  circuit: SetCircuit,
  elements: (list: readonly Element[]) => readonly Element[],
): SetCircuit => editedCircuit(circuit, { elements });

/** Each element between two nodes changed, or left. */
export const eachBranch =
  (change: (e: Branch) => Branch) =>
  (list: readonly Element[]): readonly Element[] =>
    list.map((e) => (e.kind === 'mutual' ? e : change(e)));

const isUsed = (list: readonly Element[], node: string): boolean =>
  node === EARTH || list.some((e) => e.kind !== 'mutual' && (e.from === node || e.to === node));

/** Of what a fault adds: kept apart from a part's own elements. */
const added = (part: PartId, detail: string) => ({
  id: elementId(`${part}/fault:${detail}`),
  owner: { part, role: 'part' as const },
});

/**
 * A resistance added across two nodes.
 * @param circuit of a set
 * @param part whose fault it is
 * @param between two nodes of the circuit
 * @param resistance Ω
 * @returns the circuit with it
 */
export const withLeak = (
  circuit: SetCircuit,
  part: PartId,
  [from, to]: readonly [string, string],
  resistance: Ohms,
): SetCircuit =>
  editedElements(circuit, (list) =>
    isUsed(list, from) || isUsed(list, to)
      ? [...list, { kind: 'resistor', ...added(part, `leak:${from}-${to}`), from, to, resistance }]
      : list,
  );

export const withCapacitance = (
  circuit: SetCircuit,
  part: PartId,
  [from, to]: readonly [string, string],
  capacitance: Farads,
): SetCircuit =>
  editedElements(circuit, (list) => [
    ...list,
    { kind: 'capacitor', ...added(part, `capacitance:${from}-${to}`), from, to, capacitance },
  ]);

/** What an open joint still passes, Ω. */
const OPEN_JOINT: Ohms = 3e10;

export interface BrokenJoint {
  readonly part: PartId;
  /** Where the part's wire should be joined. */
  readonly node: string;
  /** Which elements' ends come away from that node. */
  readonly moves: (e: Branch, end: 'from' | 'to') => boolean;
  /** Ports that go with the part. */
  readonly ports?: readonly PortName[];
  /** The tuning capacitor that goes with it. */
  readonly tuning?: number;
  /** Default open. */
  readonly resistance?: Ohms;
  /** Across the gap; default 0. */
  readonly capacitance?: Farads;
}

/**
 * A part's joint, dry or open: its end gets a node of its own, joined to where it belongs by what is left of the joint.
 * @param circuit of a set
 * @param joint which ends come away, and what is left
 * @returns the circuit with it
 */
export function withJoint(circuit: SetCircuit, joint: BrokenJoint): SetCircuit {
  const { part, node, moves, ports = [], resistance = OPEN_JOINT, capacitance = 0 } = joint;
  const away = `${node}|${part}`;
  const end = (name: string): string => (name === node ? away : name);
  return editedCircuit(circuit, {
    elements: (list) => {
      const moved = eachBranch((e) => ({
        ...e,
        from: e.from === node && moves(e, 'from') ? away : e.from,
        to: e.to === node && moves(e, 'to') ? away : e.to,
      }))(list);
      const gap: Element[] = [{ kind: 'resistor', ...added(part, `joint:${node}`), from: node, to: away, resistance }];
      if (capacitance > 0)
        gap.push({ kind: 'capacitor', ...added(part, `gap:${node}`), from: node, to: away, capacitance });
      return [...moved, ...gap];
    },
    port: (port, name) => (ports.includes(name) ? { from: end(port.from), to: end(port.to) } : port),
    tuning: (t, i) => (i === joint.tuning ? { ...t, port: { from: end(t.port.from), to: t.port.to } } : t),
  });
}

/**
 * A set with another device for its detector, or for each of its pair.
 * @param circuit of a set
 * @param device that stands in its place
 * @returns the circuit with it
 */
export function withDevice(circuit: SetCircuit, device: Detector): SetCircuit {
  const { wiring } = circuit.assembly;
  const single = averaged(device);
  return { ...circuit, detector: device, averaged: wiring === 'single' ? single : pairAveraged(single, wiring) };
}

/** The detector's output and earth, where phones are plugged in. */
export const PHONES: Port = { from: OUT, to: EARTH };
