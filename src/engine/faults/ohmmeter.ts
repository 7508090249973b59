import type { BuiltSet, Part } from '../built/built-set.ts';
import type { SetCircuit } from '../built/set-circuit.ts';
import { AERIAL } from '../kinds/arrangements/assembly.ts';
import { type Circuit, EARTH, type Element, valueAt } from '../network/elements.ts';
import { type JointId, type PartId, partId, turnsInId } from '../network/ids.ts';
import { PART } from '../network/part-ids.ts';
import type { Port } from '../network/port.ts';
import { root } from '../numerics/roots.ts';
import type { Detector } from '../parts/detector/detector.ts';
import type { Branch } from '../solvers/linear/equations.ts';
import { linearSolver } from '../solvers/linear/solve.ts';
import type { Ohms, Volts } from '../units/quantities.ts';
import { eachBranch, PHONES, type Planted } from './planting.ts';

/** Two points of most sets that a meter's leads reach, with everything unplugged, aerial, earth and phones off. */
export type NamedPlace =
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

/** Across a coil as it is wired, or a stretch of its turns; across a capacitor or a resistor with one of its wires off. */
export type PartPlace = `across:${string}` | `alone:${string}`;

/** Two points that a meter's leads reach. */
export type OhmPlace = NamedPlace | PartPlace;

/**
 * The part that a reading is of.
 * @param place of a reading
 * @returns the part, of a coil between which turns, and whether one of its wires is off; nothing for a place that most
 * sets have
 */
export function partOfPlace(place: OhmPlace): MeasuredPart | undefined {
  const [, how, part, first, last] = /^(across|alone):(.*?)(?::([\d.]+)-([\d.]+))?$/s.exec(place) ?? [];
  if (how === undefined) return undefined;
  const turns = first === undefined ? undefined : ([Number(first), Number(last)] as const);
  return { part: partId(part), turns, isAlone: how === 'alone' };
}

/** A part whose resistance is read. */
interface MeasuredPart {
  readonly part: PartId;
  readonly turns?: readonly [number, number];
  readonly isAlone: boolean;
}

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

/**
 * Those of them without which a set falls silent or weak: beside an equaliser's capacitor its resistor passes the sound.
 * @param built the set
 * @returns their parts
 */
export const bridgedCapacitorsOf = (built: Pick<BuiltSet, 'parts' | 'jointOf'>): readonly PartId[] =>
  seriesCapacitorsOf(built).filter((part) => part !== PART.equaliserCapacitor);

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
  if (parts.has(PART.detector)) {
    if (assembly.wiring === 'single') places.push('detector-tap-to-earth');
    places.push('detector-forward', 'detector-back');
  }
  places.push('phones-posts', 'phones-posts-back');
  if (assembly.tuning.length > 0) places.push('capacitor-to-coil', 'capacitor-alone');
  // An ohmmeter's voltage is no good for a crystal, and nothing passes it; an amplifier's input is not a winding.
  if (set.load.kind === 'phones' || set.load.kind === 'moving-coil phones') places.push('phones');
  if (parts.has(PART.transformer)) places.push('primary', 'secondary');
  if (seriesCapacitorsOf(built).length > 0) places.push('fixed-capacitor');
  return [...places, ...partPlaces(built, places)];
}

/** Coils that no other reading is of, and fixed parts, each by itself. */
function partPlaces(built: BuiltSet, named: readonly OhmPlace[]): readonly PartPlace[] {
  const { parts, circuit } = built;
  const inSeries = seriesCapacitorsOf(built);
  const measured = portsOf(circuit, circuit)['coil-to-earth'];
  const isMeasured = ({ from, to }: Port): boolean =>
    named.includes('coil-to-earth') && [from, to].every((node) => node === measured?.from || node === measured?.to);
  return [...parts.values()].flatMap(({ id, role, values }): PartPlace[] => {
    const port = endsOf({ part: id, isAlone: false }, circuit);
    if (!port) return [];
    if (values.kind === 'coil')
      return [...(isMeasured(port) ? [] : [`across:${id}` as const]), ...stretchesOf(id, built)];
    if (values.kind === 'variable') return id === PART.tuning ? [] : [`alone:${id}`];
    if (values.kind === 'resistor') return [`alone:${id}`];
    if (values.kind !== 'capacitor' || role === 'tuning') return [];
    return inSeries.length === 1 && inSeries[0] === id ? [] : [`alone:${id}`];
  });
}

/** Of a coil with taps, in a set whose detector is no single one at a tap of its own. */
function stretchesOf(part: PartId, { circuit: { assembly }, set }: BuiltSet): readonly PartPlace[] {
  if (assembly.wiring === 'single' || set.arrangement.kind === 'slider') return [];
  const own = bodyOf(part, assembly);
  if (own.length < 2) return [];
  return own.flatMap(({ owner: { turns } }): PartPlace[] =>
    turns ? [`across:${part}:${turnsInId(turns[0])}-${turnsInId(turns[1])}`] : [],
  );
}

/** Elements of a part, from its start. */
const bodyOf = (part: PartId, assembly: SetCircuit['assembly']): readonly Branch[] =>
  assembly
    .baseAt(0.5)
    .elements.filter((e): e is Branch => e.kind !== 'mutual' && e.owner.part === part && isBody(e))
    .sort((a, b) => (a.owner.turns?.[0] ?? 0) - (b.owner.turns?.[0] ?? 0));

/** Between which nodes a coil, a capacitor or a resistor is, as described. */
function endsOf({ part, turns }: MeasuredPart, { assembly }: SetCircuit): Port | undefined {
  const tuning = assembly.tuning.find(({ owner }) => owner.part === part);
  if (tuning) return tuning.port;
  const all = bodyOf(part, assembly);
  const own = turns ? all.filter(({ owner }) => owner.turns && turnsInId(owner.turns[0]) === turnsInId(turns[0])) : all;
  return own.length > 0 ? { from: own[own.length - 1].from, to: own[0].to } : undefined;
}

/** What a part itself is made of: no contact, no capacitance between its turns. */
const isBody = ({ kind, owner: { role } }: Branch): boolean =>
  (kind === 'inductor' && role === 'winding') ||
  ((kind === 'capacitor' || kind === 'resistor') && (role === 'part' || role === 'by-pass'));

/** Between which nodes the meter's leads are; nothing for parts that come away whole. */
function portsOf({ assembly }: SetCircuit, asDescribed: SetCircuit): Partial<Record<NamedPlace, Port>> {
  const top = asDescribed.assembly.tunedPort;
  return {
    'coil-to-earth': top,
    'aerial-to-earth': { from: AERIAL, to: EARTH },
    'aerial-coil': { from: asDescribed.assembly.tuning[1]?.port.from ?? 'aerial coil', to: EARTH },
    'detector-tap-to-earth': { from: assembly.outputPort.from, to: EARTH },
    // Of a pair each device is measured by itself.
    ...(asDescribed.assembly.wiring === 'single'
      ? {
          'detector-forward': assembly.outputPort,
          'detector-back': { from: assembly.outputPort.to, to: assembly.outputPort.from },
        }
      : {}),
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
export const portOfPlace = (place: OhmPlace, circuit: SetCircuit): Port | undefined => {
  const own = partOfPlace(place);
  if (!own) return portsOf(circuit, circuit)[place as NamedPlace];
  return own.isAlone ? undefined : endsOf(own, circuit);
};

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
  return new Set(
    places.filter((place) => {
      if (place === 'detector-forward' || place === 'detector-back') return devices.length > 0;
      const port = portOfPlace(place, circuit);
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
  const named = portsOf(planted.circuit, asDescribed);
  const portOf = (place: OhmPlace): Port | undefined => {
    const own = partOfPlace(place);
    if (!own) return named[place as NamedPlace];
    return own.isAlone ? undefined : endsOf(own, asDescribed);
  };
  const asked = places.filter(portOf);
  const across = ohmsAcross(
    planted,
    asked.map((place) => portOf(place)!),
    meter,
  );
  const whole = wholeParts(planted, asDescribed);
  const [forward, back] =
    planted.isOneOpen || planted.isCold
      ? [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
      : ohmsOfDevice(planted.circuit.detector, meter);
  return Float64Array.from(places, (place) => {
    const p = asked.indexOf(place);
    if (p >= 0) return across[p];
    if (place === 'capacitor-alone') return planted.capacitorLeak;
    if (place === 'leads-apart') return planted.leadsApart;
    if (place === 'earth-lead') return planted.earthLead;
    if (place === 'fixed-capacitor') return planted.fixedCapacitor;
    if (place === 'detector-forward') return forward;
    if (place === 'detector-back') return back;
    const own = partOfPlace(place);
    return own ? aloneReading(planted.circuit, own.part, endsOf(own, asDescribed)!) : whole(place);
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

/** A capacitor or a resistor between its ends, with one of its wires off: only what is its own conducts. */
function aloneReading(circuit: SetCircuit, part: PartId, { from, to }: Port): Ohms {
  const own = directCircuit(circuit.assembly.baseAt(0.5).elements, (e) => e.owner.part !== part);
  if (own.elements.length === 0) return Number.POSITIVE_INFINITY;
  // The solver's earth is the end at which the other lead is held.
  const grounded = (node: string): string => (node === to ? EARTH : node === EARTH ? `${EARTH}|${part}` : node);
  const elements = eachBranch((e) => ({ ...e, from: grounded(e.from), to: grounded(e.to) }))(own.elements);
  return linearSolver({ elements: [...elements] }, [{ from: grounded(from), to: EARTH }]).look(0).z[0][0].re;
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

/** A device that is carried further than this, V, is none. */
const FURTHEST = 1e12;

/** Current of a device on a source of `open` volts behind `behind` ohms. */
function currentThrough(device: Detector, open: Volts, behind: Ohms): number {
  if (Math.abs(open) < 1e-9) return 0;
  if (behind < 1e-3) return device.current(open);
  const excess = (v: number): number => v + behind * device.current(v) - open;
  // What flows of itself, from a hot cathode or by measured points, carries the device beyond both ends.
  let [low, high] = [Math.min(open, 0), Math.max(open, 0)];
  for (let wider = 1; excess(low) > 0 && wider < FURTHEST; wider *= 2) low -= wider;
  for (let wider = 1; excess(high) < 0 && wider < FURTHEST; wider *= 2) high += wider;
  if (excess(low) > 0 || excess(high) < 0) return 0;
  const v = root(excess, low, high, 1e-9);
  // Of what hangs on nothing but insulation the source gives the better figure.
  return behind > 1e6 ? (open - v) / behind : device.current(v);
}
