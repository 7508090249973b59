/** A function of one argument, calculated once for each. */
export function lazily<K, V>(work: (key: K) => V): (key: K) => V {
  const cache = new Map<K, V>();
  return (key) => {
    if (!cache.has(key)) cache.set(key, work(key));
    return cache.get(key)!;
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
