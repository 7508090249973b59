import type { SetCircuit } from '../built/set-circuit.ts';
import { AERIAL, OUT } from '../kinds/arrangements/assembly.ts';
import { listedName } from '../kinds/arrangements/element-list.ts';
import { EARTH } from '../network/elements.ts';
import type { PartId } from '../network/ids.ts';
import { PART } from '../network/part-ids.ts';
import type { Probe } from '../solvers/transient/transient.ts';

/** Somewhere in a set that a voltage or current can be looked at. */
export interface WavePlace {
  readonly id: string;
  /** As a builder calls it: "Top of the coil". */
  readonly title: string;
  readonly measure: 'voltage' | 'current';
  readonly probe: Probe;
  /** At the live end of the tuned circuit. */
  readonly isTuned?: boolean;
}

const TITLES: Readonly<Record<string, string>> = {
  [AERIAL]: 'Aerial terminal',
  top: 'Top of the coil',
  bottom: 'Other end of the coil',
  'far end': 'Far end of the coil',
  'aerial coil': 'Top of the aerial coil',
  middle: 'Where the two coils join',
  'detector tap': 'Detector’s tap',
  biased: 'Behind the bias cell',
  pump: 'Between the two detectors',
  [OUT]: 'After the detector',
  equalised: 'After the equaliser',
};

const RULES: readonly (readonly [RegExp, (m: RegExpExecArray) => string])[] = [
  [/^turn (.+)$/, ([, n]) => `Tap at turn ${n}`],
  [/^aerial turn (.+)$/, ([, n]) => `Aerial coil’s tap at turn ${n}`],
  [/^after trap (\d+)$/, ([, n]) => `After trap ${n}`],
  [/^trap (\d+) middle$/, ([, n]) => `Inside trap ${n}`],
  [/^trap (\d+) loop$/, ([, n]) => `On the trap ${n} beside the coil`],
];

/** Beyond the by-pass: their nodes are looked at by what is heard. */
const LOAD_SIDE = new Set<PartId>([
  PART.load,
  PART.loadResistor,
  PART.couplingCapacitor,
  PART.transformer,
  PART.equaliserResistor,
  PART.equaliserCapacitor,
]);

/** Nodes inside a part, where nobody can put a probe. */
const INSIDE = /^(sky|ground|aerial wire|aerial foot|loop foot|earth|within .*)$/;

function titleOf(node: string): string {
  const named = listedName(node);
  if (named !== undefined) return `“${named}”`;
  if (Object.hasOwn(TITLES, node)) return TITLES[node];
  for (const [pattern, words] of RULES) {
    const m = pattern.exec(node);
    if (m) return words(m);
  }
  return node;
}

/**
 * Everywhere a wave can be looked at in a set, from the aerial to the phones. Voltages are over earth unless the title says across.
 * @param circuit as `setCircuit` has it
 * @returns ids, titles and units (V or A)
 */
export function wavePlaces(circuit: SetCircuit): WavePlace[] {
  const { assembly, transducer, load } = circuit;
  const { elements } = assembly.circuitAt(0.5);
  const outside = new Set<string>([OUT, 'equalised']);
  const detectors: string[] = [];
  const isTap = (node: string): boolean => /^(aerial )?turn /.test(node);
  let earthed = false;
  for (const e of elements) {
    if (e.kind === 'mutual') continue;
    if (e.kind === 'detector') detectors.push(e.owner.part === PART.secondDetector ? 'second detector' : 'detector');
    if (e.owner.role === 'earth') earthed = true;
    if (LOAD_SIDE.has(e.owner.part)) continue;
    for (const node of [e.from, e.to]) if (!INSIDE.test(node)) outside.add(node);
  }
  const there = new Set(elements.flatMap((e) => (e.kind === 'mutual' ? [] : [e.from, e.to])));
  const direct = transducer.from === OUT && transducer.to === EARTH;
  const voltage = (id: string, title: string, node: string, over?: string): WavePlace => ({
    id,
    title,
    measure: 'voltage',
    probe: { kind: 'voltage', node, over },
  });
  const before: WavePlace[] = [];
  const after: WavePlace[] = [];
  const slides = circuit.set.arrangement.kind === 'slider';
  const joins = (node: string): string => {
    if (isTap(node) && node === assembly.carrierPort.from) return ', to the detector';
    const fed = elements.some(
      (e) =>
        e.kind !== 'mutual' &&
        (e.owner.part === PART.aerial || e.owner.part === PART.seriesCapacitor) &&
        (e.owner.role === 'contact' || e.owner.role === 'part') &&
        e.to === node,
    );
    return isTap(node) && fed ? ', from the aerial' : '';
  };
  for (const node of outside) {
    // Where the slider stands is the top of the turns in use.
    if (!there.has(node) || (slides && node.startsWith('turn ') && node !== assembly.carrierPort.from)) continue;
    const title =
      node === OUT && direct
        ? `After the detector, across the ${load.label}`
        : slides && node === 'top'
          ? 'At the slider'
          : `${titleOf(node)}${joins(node)}`;
    (node === OUT || node === 'equalised' ? after : before).push({
      ...voltage(node, title, node),
      isTuned: node === assembly.tunedPort.from,
    });
  }
  const { from, to } = assembly.tunedPort;
  if (to !== EARTH || !outside.has(from))
    before.push(voltage('tuned circuit', 'Across the tuned circuit', from, to === EARTH ? undefined : to));
  if (earthed) before.push(voltage('earth connection', 'Across the earth connection', EARTH, 'ground'));
  const rank = ({ id }: WavePlace): number => {
    const order = [AERIAL, 'earth connection', 'aerial coil'];
    return order.includes(id) ? order.indexOf(id) : /^(after )?trap |^aerial turn /.test(id) ? 3 : id === 'top' ? 4 : 5;
  };
  before.sort((a, b) => rank(a) - rank(b));
  const devices = detectors.flatMap((name, detector): WavePlace[] => [
    { id: name, title: `Across the ${name}`, measure: 'voltage', probe: { kind: 'detector voltage', detector } },
    {
      id: `${name} current`,
      title: `Current through the ${name}`,
      measure: 'current',
      probe: { kind: 'detector current', detector },
    },
  ]);
  if (!direct)
    after.push(
      voltage(
        'phones',
        `Across the ${load.label}`,
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
