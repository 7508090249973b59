/** What tells the kinds of a description apart: coils by their shape, all else by their kind. */
export type KindOf<D> = D extends { readonly shape: infer S }
  ? S & string
  : D extends { readonly kind: infer K }
    ? K & string
    : never;

/** The description of one kind. */
export type Of<D, K extends string> = D extends { readonly shape: K } | { readonly kind: K } ? D : never;

/**
 * A table with one entry for each kind of a part: a kind without an entry does not compile. There is no default entry:
 * a kind that has nothing to say says so, with the reason.
 */
export type ByKind<D, Result, Rest extends readonly unknown[] = []> = {
  readonly [K in KindOf<D>]: (described: Of<D, K>, ...rest: Rest) => Result;
};

/** The entry of a table for a description, applied to it. */
export function byKind<
  D extends { readonly shape: string } | { readonly kind: string },
  Result,
  Rest extends readonly unknown[],
>(table: ByKind<D, Result, Rest>, described: D, ...rest: Rest): Result {
  const kind = 'kind' in described ? described.kind : described.shape;
  // The compiler cannot follow that the entry under a description's own kind takes that description.
  return (table as unknown as Record<string, (described: D, ...rest: Rest) => Result>)[kind](described, ...rest);
}
