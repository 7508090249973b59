/** A function of one argument, calculated once for each. */
export function lazily<K, V>(work: (key: K) => V): (key: K) => V {
  const cache = new Map<K, V>();
  return (key) => {
    const known = cache.get(key);
    if (known !== undefined || cache.has(key)) return known as V;
    const value = work(key);
    cache.set(key, value);
    return value;
  };
}

/** A value calculated once for each key of a map. @param most of them are kept; one more, and the oldest is forgotten. */
export function fromMap<K, V>(known: Map<K, V>, key: K, make: () => V, most = Number.POSITIVE_INFINITY): V {
  let value = known.get(key);
  if (value === undefined) {
    value = make();
    known.set(key, value);
    if (known.size > most) known.delete(known.keys().next().value!);
  }
  return value;
}

/** A function of one object, calculated once for each while it is in use. */
export function lazilyOf<K extends object, V>(work: (key: K) => V): (key: K) => V {
  const kept = new WeakMap<K, { readonly value: V }>();
  return (key) => {
    const known = kept.get(key) ?? { value: work(key) };
    kept.set(key, known);
    return known.value;
  };
}

/** A function of two objects, calculated once for each pair while both are in use. */
export function lazilyOfPair<A extends object, B extends object, V>(work: (a: A, b: B) => V): (a: A, b: B) => V {
  const cache = new WeakMap<A, WeakMap<B, { readonly value: V }>>();
  return (a, b) => {
    const ofFirst = cache.get(a) ?? new WeakMap<B, { readonly value: V }>();
    cache.set(a, ofFirst);
    const entry = ofFirst.get(b) ?? { value: work(a, b) };
    ofFirst.set(b, entry);
    return entry.value;
  };
}

/** A value calculated once for each name. @param most of them are kept; one more, and all before it are forgotten. */
export function byName<V>(most = Number.POSITIVE_INFINITY): (name: string, work: () => V) => V {
  const cache = new Map<string, V>();
  return (name, work) => {
    const cached = cache.get(name);
    if (cached !== undefined) return cached;
    const value = work();
    if (cache.size >= most) cache.clear();
    cache.set(name, value);
    return value;
  };
}

/** A value calculated once, at its first use. */
export const once = <V>(work: () => V): (() => V) => {
  const value = lazily((_: 0) => work());
  return () => value(0);
};
