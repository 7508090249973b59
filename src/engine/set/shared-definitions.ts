/** A JSON Schema as plain data. */
export type Json = Record<string, unknown>;

/** A schema shorter than this as JSON stays where it is used: a reference to it would be no shorter. Characters. */
const SHORTEST_SHARED = 45;

/** A schema inside another, and the step to it: a key, a kind, or a number where it has none. */
interface Inner {
  readonly step: string;
  readonly schema: Json;
}

/**
 * The same JSON Schema with what it holds more than once stated once, under `$defs`. Each definition is named by the last
 * steps of the first place where it stands, as many as tell it from all others: `wire`, `coils.measured`.
 * @param schema plain data, the same in equal places; its references are kept as they are
 * @param definitions of its own that it may refer to; their names are not given again
 * @returns it accepts and refuses the same values
 */
export function sharingDefinitions(schema: Json, definitions: Json = {}): Json {
  const places = new Map<string, { uses: number; readonly path: readonly string[] }>();
  const count = (one: Json, path: readonly string[]): void => {
    const text = JSON.stringify(one);
    const place = places.get(text);
    if (place) place.uses++;
    else {
      places.set(text, { uses: 1, path });
      for (const { step, schema } of innerOf(one)) count(schema, [...path, step]);
    }
  };
  count(schema, []);
  const shared = [...places].filter(
    ([text, { uses, path }]) => uses > 1 && path.length > 0 && text.length > SHORTEST_SHARED,
  );
  const names = shortestNames(
    shared.map(([, { path }]) => path),
    new Set(Object.keys(definitions)),
  );
  const nameOf = new Map(shared.map(([text], k) => [text, names[k]]));
  const shares: Json = {};
  const referring = (one: Json): Json => {
    const text = JSON.stringify(one);
    const name = nameOf.get(text);
    if (name === undefined) return withInner(one, referring);
    shares[name] ??= withInner(one, referring);
    return referenceTo(name);
  };
  const { $schema, title, description, ...rest } = withInner(schema, referring);
  const text = JSON.stringify([rest, shares]);
  const used = Object.entries(definitions).filter(([name]) => text.includes(JSON.stringify(referenceTo(name).$ref)));
  return { $schema, title, description, ...rest, $defs: { ...Object.fromEntries(used), ...shares } };
}

/** A reference to a definition of the same schema. */
export const referenceTo = (name: string): Json => ({ $ref: `#/$defs/${name}` });

/** The name of a definition by words: such as no address need write otherwise. */
export const definitionName = (words: string): string => words.replace(/[^\w.-]+/g, '-');

/** A step without a name of its own. */
const POSITION = /^(\d+|item)$/;

/** For each path its shortest end that no other path has, and that is not reserved. */
function shortestNames(paths: readonly (readonly string[])[], reserved: ReadonlySet<string>): string[] {
  const end = (path: readonly string[], steps: number) => definitionName(path.slice(-steps).join('.'));
  const ends = new Map<string, number>();
  for (const path of paths)
    for (let steps = 1; steps <= path.length; steps++)
      ends.set(end(path, steps), (ends.get(end(path, steps)) ?? 0) + 1);
  const isUnique = (path: readonly string[], steps: number): boolean =>
    ends.get(end(path, steps)) === 1 && !reserved.has(end(path, steps)) && !POSITION.test(path[path.length - steps]);
  return paths.map((path) => {
    let steps = 1;
    while (steps < path.length && !isUnique(path, steps)) steps++;
    return end(path, steps);
  });
}

/** The schemas directly inside one. */
function innerOf(schema: Json): Inner[] {
  const { properties, oneOf, items, prefixItems } = schema;
  const listed = (list: unknown): Inner[] =>
    ((list ?? []) as Json[]).map((one, k) => ({ step: kindOf(one) ?? String(k), schema: one }));
  return [
    ...Object.entries((properties ?? {}) as Record<string, Json>).map(([step, schema]) => ({ step, schema })),
    ...listed(oneOf),
    ...listed(prefixItems),
    ...(items ? [{ step: 'item', schema: items as Json }] : []),
  ];
}

/** The first of its fields that can be one word only. */
const kindOf = ({ properties }: Json): string | undefined =>
  Object.values((properties ?? {}) as Record<string, { const?: string }>).find((one) => one.const !== undefined)?.const;

/** With each schema directly inside it changed. */
function withInner(schema: Json, change: (inner: Json) => Json): Json {
  const { properties, oneOf, items, prefixItems } = schema;
  const changed: Json = { ...schema };
  if (properties)
    changed.properties = Object.fromEntries(
      Object.entries(properties as Record<string, Json>).map(([key, inner]) => [key, change(inner)]),
    );
  if (oneOf) changed.oneOf = (oneOf as Json[]).map(change);
  if (prefixItems) changed.prefixItems = (prefixItems as Json[]).map(change);
  if (items) changed.items = change(items as Json);
  return changed;
}
