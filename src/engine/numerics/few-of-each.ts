/** Enough of one kind to see what is wrong with the rest. */
export const FEW = 20;

export interface FewOfEach<T> {
  /** Keep what `make` gives, or only count it when there are enough of its kind; then `make` is not called. */
  add(kind: string, make: () => T): void;
  /** What was kept, in order; `more`: how many others there were of the kind of the last one kept of it. */
  all(): readonly { readonly item: T; readonly more: number }[];
}

/** A list that keeps the first few of each kind and counts the others: its size does not grow with what is wrong. */
export function fewOfEach<T>(most = FEW): FewOfEach<T> {
  const items: { item: T; kind: string; last: boolean }[] = [];
  const counts = new Map<string, number>();
  return {
    add(kind, make) {
      const count = (counts.get(kind) ?? 0) + 1;
      counts.set(kind, count);
      if (count <= most) items.push({ item: make(), kind, last: count === most });
    },
    all: () => items.map(({ item, kind, last }) => ({ item, more: last ? counts.get(kind)! - most : 0 })),
  };
}
