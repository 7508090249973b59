import type * as english from './en/index.ts';

/** A literal text may be any text in another language; what takes figures takes the same ones. */
type Translated<T> = T extends string
  ? string
  : T extends (...given: infer Given) => infer Result
    ? (...given: Given) => Translated<Result>
    : T extends readonly (infer Item)[]
      ? readonly Translated<Item>[]
      : { readonly [K in keyof T]: Translated<T[K]> };

/** What a language must have: a name missing, or a sentence that takes other figures, does not compile. */
export type Words = Translated<typeof english>;
