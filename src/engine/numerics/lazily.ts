/** A function of one thing, worked out once for each. */
export function lazily<K, V>(work: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    if (!known.has(key)) known.set(key, work(key));
    return known.get(key)!;
  };
}

/** A function of two objects, worked out once for each pair while both are in use. */
export function lazilyOfPair<A extends object, B extends object, V>(work: (a: A, b: B) => V): (a: A, b: B) => V {
  const known = new WeakMap<A, WeakMap<B, { readonly value: V }>>();
  return (a, b) => {
    const ofFirst = known.get(a) ?? new WeakMap<B, { readonly value: V }>();
    known.set(a, ofFirst);
    const found = ofFirst.get(b) ?? { value: work(a, b) };
    ofFirst.set(b, found);
    return found.value;
  };
}

/** What is worked out once for each name. @param most of them are kept; one more, and all before it are forgotten. */
export function byName<V>(most = Number.POSITIVE_INFINITY): (name: string, work: () => V) => V {
  const known = new Map<string, V>();
  return (name, work) => {
    const found = known.get(name);
    if (found !== undefined) return found;
    const value = work();
    if (known.size >= most) known.clear();
    known.set(name, value);
    return value;
  };
}

/** What is worked out once, when it is asked for. */
export const once = <V>(work: () => V): (() => V) => {
  const known = lazily((_: 0) => work());
  return () => known(0);
};
