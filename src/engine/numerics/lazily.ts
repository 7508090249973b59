/** A function of one thing, worked out once for each. */
export function lazily<K, V>(work: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    if (!known.has(key)) known.set(key, work(key));
    return known.get(key)!;
  };
}

/** What is worked out once, when it is asked for. */
export const once = <V>(work: () => V): (() => V) => {
  const known = lazily((_: 0) => work());
  return () => known(0);
};
