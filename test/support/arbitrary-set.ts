import fc from 'fast-check';
import { bare, metadataOf, type SchemaNode } from '../../src/engine/fields/introspect.ts';
import { description, FORMAT } from '../../src/engine/set/description.ts';

/**
 * Any description the schema allows, kind by kind: mostly within usual sizes, now and then anywhere within bounds.
 * References to coils are filled in afterwards, so that most sets hang together.
 */
export function arbitrarySet(wild = 0.15): fc.Arbitrary<Record<string, unknown>> {
  const schema = description as unknown as SchemaNode;
  const e = schema.entries!;
  return fc
    .record({
      format: fc.constant(FORMAT),
      name: fc.constant('Any'),
      place: placeArbitrary(e.place, wild),
      aerial: arbitraryOf(e.aerial, wild),
      earth: arbitraryOf(e.earth, wild),
      coils: fc.array(arbitraryOf(e.coils.item!, wild), { minLength: 2, maxLength: 3 }),
      tuning: arbitraryOf(e.tuning, wild),
      arrangement: arbitraryOf(e.arrangement, wild),
      detector: arbitraryOf(e.detector, wild),
      load: arbitraryOf(e.load, wild),
      ear: arbitraryOf(e.ear, wild),
      pick: fc.array(fc.nat(1000), { minLength: 40, maxLength: 40 }),
    })
    .map(({ pick, ...set }) => hangTogether(set as Written, pick));
}

// biome-ignore lint/suspicious/noExplicitAny: made from the schema, whatever it says
type Written = Record<string, any>;

function placeArbitrary(node: SchemaNode, wild: number): fc.Arbitrary<unknown> {
  return fc
    .record({
      place: arbitraryOf(node, wild),
      stations: fc.array(arbitraryOf(node.entries!.stations.item!, wild), { maxLength: 3 }),
    })
    .map(({ place, stations }) => ({
      ...(place as object),
      stations: stations.map((s, i) => ({ fieldStrength: 10 ** -(2 + i), ...(s as object) })),
    }));
}

function arbitraryOf(node: SchemaNode, wild: number): fc.Arbitrary<unknown> {
  if (node.type === 'optional' || node.wrapped) {
    const inner = arbitraryOf(node.wrapped!, wild);
    return fc.oneof({ weight: 2, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: inner });
  }
  const meta = metadataOf(node);
  if (meta.quantity || meta.number) return numberOf(meta, wild);
  switch (bare(node).type) {
    case 'loose_object':
      return fc
        .record(
          Object.fromEntries(Object.entries(node.entries!).map(([key, entry]) => [key, arbitraryOf(entry, wild)])),
        )
        .map((o) => Object.fromEntries(Object.entries(o).filter(([, value]) => value !== undefined)));
    case 'variant':
    case 'union':
      return fc.oneof(...(node.options as SchemaNode[]).map((option) => arbitraryOf(option, wild)));
    case 'picklist':
      return fc.constantFrom(...(node.options as unknown[]));
    case 'literal':
      return fc.constant(node.literal);
    case 'boolean':
      return fc.boolean();
    case 'string':
      return fc.constantFrom('a', 'b', 'c', 'aerial', 'earth', 'out', 'ground', 'top');
    case 'array':
      return fc.array(arbitraryOf(node.item!, wild), { minLength: 3, maxLength: 5 });
    case 'tuple':
      return fc.tuple(...node.items!.map((item) => arbitraryOf(item, wild)));
    default:
      throw new Error(`no arbitrary for ${node.type}`);
  }
}

function numberOf(meta: ReturnType<typeof metadataOf>, wild: number): fc.Arbitrary<number> {
  const { min, above, max = 1e3, typical } = meta.bounds ?? {};
  const between = (low: number, high: number): fc.Arbitrary<number> =>
    (low > 0
      ? fc.integer({ min: 0, max: 10_000 }).map((n) => low * (Math.max(high, low) / low) ** (n / 10_000))
      : fc.integer({ min: 0, max: 10_000 }).map((n) => low + ((high - low) * n) / 10_000)
    ).map((x) => (meta.whole ? Math.round(x) : Number(x.toPrecision(6))));
  const lowest = min ?? (above === undefined ? -1e3 : above + 1e-15);
  const anywhere = between(lowest, max);
  const ends = fc.constantFrom(meta.whole ? Math.ceil(lowest) : lowest, meta.whole ? Math.floor(max) : max);
  const usual = typical
    ? between(typical[0], typical[1])
    : lowest > 0
      ? between(lowest, max)
      : between(Math.max(lowest, -1e3), Math.min(max, 1e3));
  const clip = (x: number) => Math.min(max, Math.max(lowest, x));
  return fc
    .oneof(
      { weight: Math.round(1000 * (1 - wild)), arbitrary: usual },
      { weight: Math.round(700 * wild) + 1, arbitrary: anywhere },
      { weight: Math.round(100 * wild) + 1, arbitrary: ends },
    )
    .map(clip);
}

/** The covering of a coil's wire goes round its strands. */
function fitCovering({ wire }: Written): void {
  if (typeof wire?.size !== 'number' || wire.overall === undefined) return;
  wire.overall = Math.max(wire.overall, 1.5 * wire.size * Math.sqrt(wire.strands ?? 1));
}

/** Names that refer to something, taps within the coil, points that rise: what single fields cannot know. */
function hangTogether(set: Written, pick: number[]): Written {
  let next = 0;
  const some = (n: number): number => pick[next++ % pick.length] % Math.max(1, n);
  set.coils.forEach((coil: Written, i: number) => {
    coil.name = ['first', 'second', 'third'][i];
    if (some(20) === 0) coil.name = ['aerial', 'field', 'earth'][i];
    if (some(6) > 0) fitCovering(coil);
  });
  const names = set.coils.map((c: Written) => c.name);
  const { arrangement, detector } = set;
  if (set.aerial.kind === 'touchstone') set.aerial.text = '# kHz S RI R 50\n150 0.5 -0.8\n1700 0.1 -0.9\n';
  const turnsOf = (name: string): number => {
    const c = set.coils.find((x: Written) => x.name === name) ?? {};
    return c.turnsPerLayer ? c.turnsPerLayer * c.layers : (c.turns ?? 100);
  };
  const first = some(names.length);
  if ('coil' in arrangement) arrangement.coil = names[first];
  for (const key of ['aerialCoil', 'rotor'])
    if (key in arrangement) arrangement[key] = names[(first + 1) % names.length];
  if (arrangement.kind === 'frame' || arrangement.kind === 'ferrite rod') {
    if (set.aerial.kind !== arrangement.kind)
      arrangement.kind = set.aerial.kind === 'frame' || set.aerial.kind === 'ferrite rod' ? set.aerial.kind : 'direct';
  } else if ((set.aerial.kind === 'frame' || set.aerial.kind === 'ferrite rod') && arrangement.kind !== 'elements') {
    set.arrangement = { kind: set.aerial.kind, detectorTap: arrangement.detectorTap, traps: arrangement.traps };
  }
  if (arrangement.kind === 'direct') arrangement.coil = names[first];
  for (const key of ['aerialTap', 'detectorTap', 'usedTurns', 'fewest']) {
    if (set.arrangement[key] === undefined) continue;
    const coil = key === 'aerialTap' && set.arrangement.aerialCoil ? set.arrangement.aerialCoil : set.arrangement.coil;
    const turns = coil ? turnsOf(coil) : set.aerial.turns;
    set.arrangement[key] = Math.max(0.25, Math.min(turns, (turns * (1 + some(8))) / 8));
  }
  const { usedTurns } = set.arrangement;
  for (const key of ['aerialTap', 'detectorTap'])
    if (usedTurns !== undefined && set.arrangement[key] > usedTurns) set.arrangement[key] = usedTurns;
  if (arrangement.kind === 'elements') {
    const nodes = ['aerial', 'earth', 'out', 'top', 'ground', 'sky'];
    arrangement.elements.push(
      { kind: 'coil', coil: names[first], from: 'top', to: 'earth' },
      { kind: 'tuning', from: 'top', to: 'earth' },
      { kind: 'detector', from: 'top', to: 'out' },
      { kind: 'capacitor', from: 'aerial', to: 'top', capacitance: 1e-10 },
    );
    arrangement.elements.forEach((element: Written, i: number) => {
      element.name = `${element.kind} ${i}`;
      if (element.coil) element.coil = names[some(names.length)];
      if (element.kind === 'mutual') {
        const windings = arrangement.elements
          .map((x: Written, k: number) => (['coil', 'inductor'].includes(x.kind) ? `${x.kind} ${k}` : ''))
          .filter(Boolean);
        element.first = windings[0];
        element.second = windings[windings.length - 1];
      } else if (i < arrangement.elements.length - 4) {
        element.from = nodes[some(nodes.length)];
        element.to = nodes[(nodes.indexOf(element.from) + 1 + some(nodes.length - 1)) % nodes.length];
      }
    });
  }
  const rise = (list: Written[] | undefined, keys: string[]) => {
    for (const key of keys) {
      const sorted = list?.map((p) => p[key]).sort((a, b) => a - b);
      list?.forEach((p, i) => {
        p[key] = sorted![i];
      });
    }
  };
  if (detector.kind === 'measured') rise(detector.points, ['voltage', 'current']);
  if (set.aerial.kind === 'impedance') rise(set.aerial.points, ['frequency']);
  if (set.tuning.kind === 'measured') rise(set.tuning.points, ['scale', 'capacitance']);
  return set;
}
