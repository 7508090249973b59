import type { SetCircuit } from '../built/set-circuit.ts';
import { AERIAL, OUT } from '../kinds/arrangements/assembly.ts';
import { type NodeOf, nodeOf } from '../kinds/arrangements/nodes.ts';
import { EARTH } from '../network/elements.ts';
import type { PartId } from '../network/ids.ts';
import { PART } from '../network/part-ids.ts';
import type { LoadSort } from '../parts/load/model.ts';
import type { Probe } from '../solvers/transient/transient.ts';
import type { Coded, NoFigures } from '../units/coded.ts';

type DetectorPlace = 'detector' | 'second detector';

/** Where a voltage or current can be looked at. */
export interface WavePoints {
  /** Of a tap: what joins it there. `node` is undefined for an id that no arrangement makes. */
  readonly node: {
    readonly node: NodeOf | undefined;
    readonly id: string;
    readonly joins: 'detector' | 'aerial' | undefined;
  };
  readonly slider: NoFigures;
  readonly 'after-detector-across-load': { readonly load: LoadSort };
  readonly 'across-tuned-circuit': NoFigures;
  readonly 'across-earth': NoFigures;
  readonly 'across-detector': { readonly which: DetectorPlace };
  readonly 'through-detector': { readonly which: DetectorPlace };
  readonly 'across-load': { readonly load: LoadSort };
}

export type WavePoint = Coded<WavePoints>;

type NodeCode = NodeOf['code'] | undefined;
const TAPS: ReadonlySet<NodeCode> = new Set<NodeCode>(['tap', 'aerial tap']);
const UNREACHABLE: ReadonlySet<NodeCode> = new Set<NodeCode>(['inside', 'earth']);
const BEFORE_COIL: ReadonlySet<NodeCode> = new Set<NodeCode>(['after trap', 'trap middle', 'trap loop', 'aerial tap']);

/** Somewhere in a set that a voltage or current can be looked at. */
export interface WavePlace {
  readonly id: string;
  /** Where it is, as facts. */
  readonly point: WavePoint;
  readonly measure: 'voltage' | 'current';
  readonly probe: Probe;
  /** At the live end of the tuned circuit. */
  readonly isTuned?: boolean;
}

/** Beyond the by-pass: their nodes are looked at by what is heard. */
const LOAD_SIDE = new Set<PartId>([
  PART.load,
  PART.loadResistor,
  PART.couplingCapacitor,
  PART.transformer,
  PART.equaliserResistor,
  PART.equaliserCapacitor,
]);

/**
 * Everywhere a wave can be looked at in a set, from the aerial to the phones. Voltages are over earth unless the point is across a part.
 * @param circuit as `setCircuit` has it
 * @returns ids, what each place is, and units (V or A)
 */
export function wavePlaces(circuit: SetCircuit): WavePlace[] {
  const { assembly, transducer, load } = circuit;
  const { elements } = assembly.circuitAt(0.5);
  const outside = new Set<string>([OUT, 'equalised']);
  const detectors: DetectorPlace[] = [];
  const isTap = (node: string): boolean => TAPS.has(nodeOf(node)?.code);
  let earthed = false;
  for (const e of elements) {
    if (e.kind === 'mutual') continue;
    if (e.kind === 'detector') detectors.push(e.owner.part === PART.secondDetector ? 'second detector' : 'detector');
    if (e.owner.role === 'earth') earthed = true;
    if (LOAD_SIDE.has(e.owner.part)) continue;
    for (const node of [e.from, e.to]) if (!UNREACHABLE.has(nodeOf(node)?.code)) outside.add(node);
  }
  const nodes = new Set(elements.flatMap((e) => (e.kind === 'mutual' ? [] : [e.from, e.to])));
  const direct = transducer.from === OUT && transducer.to === EARTH;
  const voltage = (id: string, point: WavePoint, node: string, over?: string): WavePlace => ({
    id,
    point,
    measure: 'voltage',
    probe: { kind: 'voltage', node, over },
  });
  const before: WavePlace[] = [];
  const after: WavePlace[] = [];
  const slides = circuit.set.arrangement.kind === 'slider';
  const joins = (node: string): 'detector' | 'aerial' | undefined => {
    if (isTap(node) && node === assembly.carrierPort.from) return 'detector';
    const fed = elements.some(
      (e) =>
        e.kind !== 'mutual' &&
        (e.owner.part === PART.aerial || e.owner.part === PART.seriesCapacitor) &&
        (e.owner.role === 'contact' || e.owner.role === 'part') &&
        e.to === node,
    );
    return isTap(node) && fed ? 'aerial' : undefined;
  };
  for (const node of outside) {
    // Where the slider stands is the top of the turns in use.
    if (!nodes.has(node) || (slides && nodeOf(node)?.code === 'tap' && node !== assembly.carrierPort.from)) continue;
    const point: WavePoint =
      node === OUT && direct
        ? { code: 'after-detector-across-load', load: load.sort }
        : slides && node === 'top'
          ? { code: 'slider' }
          : { code: 'node', node: nodeOf(node), id: node, joins: joins(node) };
    (node === OUT || node === 'equalised' ? after : before).push({
      ...voltage(node, point, node),
      isTuned: node === assembly.tunedPort.from,
    });
  }
  const { from, to } = assembly.tunedPort;
  if (to !== EARTH || !outside.has(from))
    before.push(voltage('tuned circuit', { code: 'across-tuned-circuit' }, from, to === EARTH ? undefined : to));
  if (earthed) before.push(voltage('earth connection', { code: 'across-earth' }, EARTH, 'ground'));
  const rank = ({ id }: WavePlace): number => {
    const order = [AERIAL, 'earth connection', 'aerial coil'];
    return order.includes(id) ? order.indexOf(id) : BEFORE_COIL.has(nodeOf(id)?.code) ? 3 : id === 'top' ? 4 : 5;
  };
  before.sort((a, b) => rank(a) - rank(b));
  const devices = detectors.flatMap((which, detector): WavePlace[] => [
    {
      id: which,
      point: { code: 'across-detector', which },
      measure: 'voltage',
      probe: { kind: 'detector voltage', detector },
    },
    {
      id: `${which} current`,
      point: { code: 'through-detector', which },
      measure: 'current',
      probe: { kind: 'detector current', detector },
    },
  ]);
  if (!direct)
    after.push(
      voltage(
        'phones',
        { code: 'across-load', load: load.sort },
        transducer.from,
        transducer.to === EARTH ? undefined : transducer.to,
      ),
    );
  return [...before, ...devices, ...after];
}

/**
 * Those that tell most: what comes in, what the coil makes of it, the detector, what is heard.
 * @param places of a set, as `wavePlaces` has them
 * @returns ids of some
 */
export function usualPlaces(places: readonly WavePlace[]): string[] {
  const first = (...ids: string[]): string[] => ids.filter((id) => places.some((p) => p.id === id)).slice(0, 1);
  const tuned = places.find((p) => p.isTuned)?.id ?? 'tuned circuit';
  return [...first(AERIAL), ...first('top', tuned), ...first('detector'), ...first('phones', OUT)];
}
