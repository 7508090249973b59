import type { SetDescription } from '../../src/engine/set/description.ts';

type Names = (name: string) => string;

/** What a user may name in a set, each kind once. */
export interface Nameable {
  readonly coils: readonly string[];
  readonly listed: readonly string[];
  readonly nodes: readonly string[];
  readonly stations: number;
}

const GIVEN = new Set(['aerial', 'earth', 'out']);

export function nameable(set: SetDescription): Nameable {
  const { arrangement } = set;
  const list = arrangement.kind === 'elements' ? arrangement.elements : [];
  const nodes = list.flatMap((e) => (e.kind === 'mutual' ? [] : [e.from, e.to])).filter((n) => !GIVEN.has(n));
  return {
    coils: set.coils.map((c) => c.name),
    listed: list.map((e) => e.name),
    nodes: [...new Set(nodes)],
    stations: set.place.stations.length,
  };
}

export interface Renaming {
  readonly coil: Names;
  readonly listed: Names;
  readonly node: Names;
  readonly station: (index: number) => string;
  readonly set: string;
}

/** The same set under other names; whatever refers to a name goes along. */
export function renamed(set: SetDescription, to: Renaming): SetDescription {
  return {
    ...set,
    name: to.set,
    coils: set.coils.map((c) => ({ ...c, name: to.coil(c.name) })),
    place: { ...set.place, stations: set.place.stations.map((s, i) => ({ ...s, name: to.station(i) })) },
    arrangement: renamedIn(set.arrangement, to),
    ...(set.bands && {
      bands: set.bands.map((band) =>
        band.arrangement ? { ...band, arrangement: renamedIn(band.arrangement, to) } : band,
      ),
    }),
  };
}

function renamedIn(own: SetDescription['arrangement'], to: Renaming): SetDescription['arrangement'] {
  const arrangement: Record<string, unknown> = { ...own };
  for (const key of ['coil', 'aerialCoil', 'rotor'])
    if (typeof arrangement[key] === 'string') arrangement[key] = to.coil(arrangement[key]);
  if (own.kind === 'elements')
    arrangement.elements = own.elements.map((e) => {
      if (e.kind === 'mutual')
        return { ...e, name: to.listed(e.name), first: to.listed(e.first), second: to.listed(e.second) };
      const ends = { from: GIVEN.has(e.from) ? e.from : to.node(e.from), to: GIVEN.has(e.to) ? e.to : to.node(e.to) };
      const name = to.listed(e.name);
      return e.kind === 'coil' ? { ...e, ...ends, name, coil: to.coil(e.coil) } : { ...e, ...ends, name };
    });
  return arrangement as SetDescription['arrangement'];
}
