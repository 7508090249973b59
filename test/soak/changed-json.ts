import fc from 'fast-check';
import { nastyValue } from './nasty.ts';

type Place = readonly (string | number)[];

const HOW = ['replace', 'remove', 'repeat', 'rename', 'swap', 'scale'] as const;

const change = fc.record({
  at: fc.nat(100_000),
  with: fc.nat(100_000),
  how: fc.constantFrom(...HOW),
  value: nastyValue,
});
type Change = typeof change extends fc.Arbitrary<infer T> ? T : never;

function placesIn(value: unknown, path: Place = []): Place[] {
  if (typeof value !== 'object' || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([key, inner]) => placesIn(inner, [...path, key]))];
}

const at = (value: unknown, path: Place): unknown =>
  // biome-ignore lint/suspicious/noExplicitAny: whatever is there
  path.reduce((inner: any, key) => inner?.[key], value);

// biome-ignore lint/suspicious/noExplicitAny: whatever is there
function put(whole: any, path: Place, value: unknown): unknown {
  if (path.length === 0) return value;
  const [key] = path.slice(-1);
  const parent = at(whole, path.slice(0, -1));
  if (typeof parent === 'object' && parent !== null)
    Object.defineProperty(parent, key, { value, enumerable: true, configurable: true, writable: true });
  return whole;
}

function changed(whole: unknown, { at: first, with: second, how, value: drawn }: Change): unknown {
  // What is drawn may be drawn again, and is changed by later changes where it stands.
  const value = structuredClone(drawn);
  const places = placesIn(whole);
  const place = places[first % places.length];
  const other = at(whole, places[second % places.length]);
  const own = at(whole, place);
  const parent = at(whole, place.slice(0, -1));
  switch (how) {
    case 'replace':
      return put(whole, place, value);
    case 'remove':
      if (Array.isArray(parent)) parent.splice(Number(place.at(-1)), 1);
      else if (typeof parent === 'object' && parent !== null) delete (parent as Record<string, unknown>)[place.at(-1)!];
      return whole;
    case 'repeat':
      if (Array.isArray(own)) own.push(...structuredClone(own));
      else if (Array.isArray(parent)) parent.push(structuredClone(own));
      return whole;
    case 'rename':
      return put(whole, [...place.slice(0, -1), typeof value === 'string' ? value : 'other'], structuredClone(own));
    case 'swap':
      return put(whole, place, structuredClone(other));
    case 'scale':
      return put(whole, place, typeof own === 'number' ? own * 10 ** ((second % 41) - 20) : value);
  }
}

/** A few changes, at places of their own, to what JSON holds. @param bases what is changed */
export const changedJson = (bases: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> =>
  fc
    .tuple(bases, fc.array(change, { maxLength: 5 }))
    .map(([base, changes]) => changes.reduce<unknown>(changed, structuredClone(base)));
