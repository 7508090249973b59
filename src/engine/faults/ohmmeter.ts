import type { BuiltSet, Part } from '../built/built-set.ts';
import type { SetCircuit } from '../built/set-circuit.ts';
import { AERIAL } from '../kinds/arrangements/assembly.ts';
import { type Circuit, EARTH, type Element, valueAt } from '../network/elements.ts';
import type { JointId, PartId } from '../network/ids.ts';
import { PART } from '../network/part-ids.ts';
import type { Port } from '../network/port.ts';
import { root } from '../numerics/roots.ts';
import type { Detector } from '../parts/detector/detector.ts';
import type { Branch } from '../solvers/linear/equations.ts';
import { linearSolver } from '../solvers/linear/solve.ts';
import type { Ohms, Volts } from '../units/quantities.ts';
import { PHONES, type Planted } from './planting.ts';

/** Two points that a meter's leads reach, with everything unplugged, aerial, earth and phones off. */
export type OhmPlace =
  | 'coil-to-earth'
  | 'aerial-to-earth'
  | 'aerial-coil'
  | 'detector-tap-to-earth'
  | 'detector-forward'
  | 'detector-back'
  | 'phones-posts'
  | 'phones-posts-back'
  | 'capacitor-to-coil'
  | 'capacitor-alone'
  | 'phones'
  | 'primary'
  | 'secondary'
  | 'leads-apart'
  | 'earth-lead'
  | 'fixed-capacitor';

/** An ohmmeter is a voltage behind a resistance. */
export interface Meter {
  readonly voltage: Volts;
  readonly resistance: Ohms;
}

/** A usual digital meter on its 20 kΩ range. Common practice, no source. */
const USUAL_METER: Meter = { voltage: 0.4, resistance: 4e3 };

/** More than this is shown as open, Ω. */
export const OVERLOAD: Ohms = 2e6;

const WIRE: Ohms = 1e-3;

/** Below this the meter's own leads and plugs are a good part of what it shows. Common practice, no source. */
const LEADS_MATTER: Ohms = 2;

/** Whether a resistance is so low that the leads of the meter matter. */
export const leadsMatter = (r: Ohms): boolean => r < LEADS_MATTER;

/** The circuit as a steady current has it: resistances alone. */
function directCircuit(elements: readonly Element[], isLeft: (e: Branch) => boolean): Circuit {
  return {
    elements: elements.flatMap((e): Element[] => {
      if (e.kind === 'mutual' || e.kind === 'detector' || e.kind === 'capacitor' || isLeft(e)) return [];
      const { id, owner, from, to } = e;
      const resistance =
        e.kind === 'resistor' || e.kind === 'inductor'
          ? valueAt(e.resistance, 0)
          : e.kind === 'impedance'
            ? e.impedance(0).re
            : 0;
      return [{ kind: 'resistor', id, owner, from, to, resistance: Math.max(resistance, WIRE) }];
    }),
  };
}

/** Aerial, earth and phones unplugged. */
const isUnplugged = ({ owner: { part, role } }: Branch): boolean =>
  (part === PART.aerial && (role === 'aerial' || role === 'emf')) ||
  (part === PART.earth && role === 'earth') ||
  (part === PART.load && (role === 'transducer' || role === 'cord'));

/** Fixed capacitors that stand in the way of the signal wherever a set has them. */
const IN_SERIES: ReadonlySet<PartId> = new Set([
  PART.seriesCapacitor,
  PART.pumpCapacitor,
  PART.equaliserCapacitor,
  PART.couplingCapacitor,
]);

/**
 * Fixed capacitors that the signal passes: in series with the aerial, or coupling one stage to the next. One that tunes,
 * lies in a trap or leads to earth is none.
 * @param built the set
 * @returns their parts
 */
export const seriesCapacitorsOf = ({ parts, jointOf }: Pick<BuiltSet, 'parts' | 'jointOf'>): readonly PartId[] => {
  const all = [...parts.values()];
  const earth = jointOf(EARTH);
  // Of a list of elements it is seen by what a capacitor joins: across a coil or the tuning it resonates.
  const resonators = all.filter(
    ({ values, role }) => values.kind === 'coil' || values.kind === 'variable' || role === 'tuning',
  );
  const joins = ({ terminals }: Part, a: JointId, b: JointId): boolean =>
    [a, b].every((joint) => terminals.some((end) => end.joint === joint));
  const isBetweenStages = ({ role, terminals: [one, other] }: Part): boolean =>
    role === 'listed' &&
    one.joint !== earth &&
    other.joint !== earth &&
    !resonators.some((part) => joins(part, one.joint, other.joint));
  return all
    .filter((part) => part.values.kind === 'capacitor' && (IN_SERIES.has(part.id) || isBetweenStages(part)))
    .map(({ id }) => id);
};

/** Which readings can be taken of a set. */
export function ohmPlacesOf(built: BuiltSet): readonly OhmPlace[] {
  const { parts, circuit, set } = built;
  const { assembly } = circuit;
  const places: OhmPlace[] = [];
  const hasCoil = [...parts.values()].some(({ values }) => values.kind === 'coil');
  if (hasCoil) places.push('coil-to-earth');
  if (circuit.aerial) places.push('aerial-to-earth', 'leads-apart');
  if (circuit.aerial && parts.has(PART.earth)) places.push('earth-lead');
  if (set.arrangement.kind === 'two circuits') places.push('aerial-coil');
  if (assembly.wiring === 'single' && parts.has(PART.detector)) {
    places.push('detector-tap-to-earth', 'detector-forward', 'detector-back');
  }
  places.push('phones-posts', 'phones-posts-back');
  if (assembly.tuning.length > 0) places.push('capacitor-to-coil', 'capacitor-alone');
  // An ohmmeter's voltage is no good for a crystal, and nothing passes it; an amplifier's input is not a winding.
  if (set.load.kind === 'phones' || set.load.kind === 'moving-coil phones') places.push('phones');
  if (parts.has(PART.transformer)) places.push('primary', 'secondary');
  if (seriesCapacitorsOf(built).length > 0) places.push('fixed-capacitor');
  return places;
}

/** Between which nodes the meter's leads are; nothing for parts that come away whole. */
function portsOf({ assembly }: SetCircuit, asDescribed: SetCircuit): Partial<Record<OhmPlace, Port>> {
  const top = asDescribed.assembly.tunedPort;
  return {
    'coil-to-earth': top,
    'aerial-to-earth': { from: AERIAL, to: EARTH },
    'aerial-coil': { from: asDescribed.assembly.tuning[1]?.port.from ?? 'aerial coil', to: EARTH },
    'detector-tap-to-earth': { from: assembly.outputPort.from, to: EARTH },
    'detector-forward': assembly.outputPort,
    'detector-back': { from: assembly.outputPort.to, to: assembly.outputPort.from },
    'phones-posts': { from: EARTH, to: PHONES.from },
    'phones-posts-back': PHONES,
    'capacitor-to-coil': assembly.tuning[0] && { from: assembly.tuning[0].port.from, to: top.from },
  };
}

/**
 * Between which nodes the meter's leads are at a place.
 * @param place of a reading
 * @param circuit of a set as described
 * @returns the node of the positive lead, then that of the negative one; nothing for parts that come away whole
 */
export const portOfPlace = (place: OhmPlace, circuit: SetCircuit): Port | undefined => portsOf(circuit, circuit)[place];

/** What is read along the winding; through a detector or the phones the winding hardly counts. */
const ALONG_THE_COIL: readonly OhmPlace[] = ['coil-to-earth', 'aerial-to-earth', 'detector-tap-to-earth'];

/** Whether a reading is computed with the slider in the middle of its travel, and holds only there. */
export const isReadAtMiddle = (place: OhmPlace, { set }: BuiltSet): boolean =>
  set.arrangement.kind === 'slider' && ALONG_THE_COIL.includes(place);

/**
 * Places where a meter's current may pass a detector: at once, or once another path of it is open. Anything that
 * conducts counts, whatever its resistance.
 * @param circuit of a set as described
 * @param places of readings
 * @returns those that are measured through a detector
 */
export function placesThroughDetector(circuit: SetCircuit, places: readonly OhmPlace[]): ReadonlySet<OhmPlace> {
  const { elements } = circuit.assembly.baseAt(0.5);
  const devices = elements.filter((e): e is Branch => e.kind === 'detector');
  const wires = [
    ...directCircuit(elements, isUnplugged).elements.filter(
      (e): e is Branch => e.kind === 'resistor' && valueAt(e.resistance, 0) < OVERLOAD,
    ),
    ...devices,
  ];
  const portOf = portsOf(circuit, circuit);
  return new Set(
    places.filter((place) => {
      const port = portOf[place];
      return port && devices.some((device) => isOnPath(wires, port, device));
    }),
  );
}

/** Whether a path from one end of a port to the other leads through a branch: no single node cuts the two apart. */
function isOnPath(wires: readonly Port[], port: Port, branch: Port): boolean {
  const nodes = new Set([port, branch, ...wires].flatMap(({ from, to }) => [from, to]));
  return [...nodes].every((cut) => {
    const reached = new Set([port.from, port.to].filter((node) => node !== cut));
    // A set takes in what is added while it is gone through.
    for (const node of reached)
      for (const { from, to } of wires) {
        if (from === node && to !== cut) reached.add(to);
        if (to === node && from !== cut) reached.add(from);
      }
    return [branch.from, branch.to].some((node) => node !== cut && reached.has(node));
  });
}

/** What a meter shows at places of a set with faults planted, Ω; infinite where nothing flows. */
export function ohmReadings(
  planted: Planted,
  places: readonly OhmPlace[],
  asDescribed: SetCircuit,
  meter: Meter = USUAL_METER,
): Float64Array {
  const portOf = portsOf(planted.circuit, asDescribed);
  const asked = places.filter((place) => portOf[place]);
  const across = ohmsAcross(
    planted,
    asked.map((place) => portOf[place]!),
    meter,
  );
  const whole = wholeParts(planted, asDescribed);
  return Float64Array.from(places, (place) => {
    const p = asked.indexOf(place);
    if (p >= 0) return across[p];
    if (place === 'capacitor-alone') return planted.capacitorLeak;
    if (place === 'leads-apart') return planted.leadsApart;
    if (place === 'earth-lead') return planted.earthLead;
    if (place === 'fixed-capacitor') return planted.fixedCapacitor;
    return whole(place);
  });
}

/**
 * What a meter shows between nodes of a set with everything unplugged.
 * @param planted the set, with its faults
 * @param between the node of the positive lead, then that of the negative one
 * @param meter default a usual digital one
 * @returns Ω, one for each; infinite where nothing flows
 */
export function ohmsAcross(
  { circuit, isCold }: Planted,
  between: readonly Port[],
  meter: Meter = USUAL_METER,
): Float64Array {
  const { elements } = circuit.assembly.baseAt(0.5);
  const devices = elements.filter((e): e is Branch => e.kind === 'detector');
  const ports = [...between, ...devices.map(({ from, to }) => ({ from, to }))];
  const { z } = linearSolver(directCircuit(elements, isUnplugged), ports).look(0);
  const real = z.map((row) => Float64Array.from(row, ({ re }) => re));
  const device = isCold ? undefined : circuit.detector;
  return Float64Array.from(between, (_, p) => readingAt(real, p, between.length, devices.length, device, meter));
}

/**
 * What a meter shows across a detector with a wire off.
 * @param device the detector
 * @param meter default a usual digital one
 * @returns Ω, positive lead on the anode, then on the cathode
 */
export function ohmsOfDevice(device: Detector, { voltage, resistance }: Meter = USUAL_METER): readonly [Ohms, Ohms] {
  const [forward, back] = [voltage, -voltage].map((open) => {
    const current = Math.abs(currentThrough(device, open, resistance));
    return current > 1e-12 ? voltage / current - resistance : Number.POSITIVE_INFINITY;
  });
  return [forward, back];
}

/** Parts that come away whole: phones at their plugs, a side of a transformer. */
function wholeParts({ circuit }: Planted, { transducer }: SetCircuit): (place: OhmPlace) => Ohms {
  const elements = circuit.assembly.baseAt(0.5).elements;
  const across = (isPart: (e: Branch) => boolean, port: Port): Ohms =>
    linearSolver(
      directCircuit(elements, (e) => !isPart(e)),
      [port],
    ).look(0).z[0][0].re;
  return (place) => {
    if (place === 'phones') return across((e) => e.owner.part === PART.load, transducer);
    const role = place === 'primary' ? 'primary' : 'secondary';
    const side = elements.find(
      (e) => e.kind !== 'mutual' && e.owner.part === PART.transformer && e.owner.role === role,
    );
    if (!side || side.kind === 'mutual') return Number.POSITIVE_INFINITY;
    const outside = side.from.split('|')[0];
    return across((e) => e.owner.part === PART.transformer && (e.owner.role === role || e.owner.role === 'part'), {
      from: outside,
      to: EARTH,
    });
  };
}

const SWEEPS = 30;

/**
 * A meter at port p of a network with devices at its last ports. Each device's own equation v = vth − z·i(v) rises in v
 * and has one answer; with two devices they are solved by turns, which comes to rest since currents only lessen each other.
 */
function readingAt(
  z: readonly Float64Array[],
  p: number,
  first: number,
  count: number,
  device: Detector | undefined,
  { voltage, resistance }: Meter,
): Ohms {
  const own = z[p][p];
  if (!device || count === 0) return own;
  const bySource = 1 / (resistance + own);
  const currents = new Float64Array(count);
  const near = (k: number): number => z[first + k][p];
  for (let sweep = 0; sweep < (count > 1 ? SWEEPS : 1); sweep++) {
    for (let k = 0; k < count; k++) {
      let open = near(k) * voltage * bySource;
      for (let j = 0; j < count; j++)
        if (j !== k) open -= (z[first + k][first + j] - near(k) * near(j) * bySource) * currents[j];
      const behind = z[first + k][first + k] - near(k) ** 2 * bySource;
      currents[k] = currentThrough(device, open, Math.max(behind, 0));
    }
  }
  let across = voltage;
  for (let k = 0; k < count; k++) across += near(k) * currents[k];
  const current = across * bySource;
  return current > 1e-12 ? voltage / current - resistance : Number.POSITIVE_INFINITY;
}

/** Current of a device on a source of `open` volts behind `behind` ohms. */
function currentThrough(device: Detector, open: Volts, behind: Ohms): number {
  if (Math.abs(open) < 1e-9) return 0;
  if (behind < 1e-3) return device.current(open);
  const excess = (v: number): number => v + behind * device.current(v) - open;
  const v = open > 0 ? root(excess, 0, open, 1e-9) : root(excess, open, 0, 1e-9);
  // Of what hangs on nothing but insulation the source gives the better figure.
  return behind > 1e6 ? (open - v) / behind : device.current(v);
}
