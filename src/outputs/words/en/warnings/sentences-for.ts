/** A sentence for each code of a subject's facts. */
export type SentencesFor<Facts> = { readonly [C in keyof Facts]: (figures: Facts[C]) => string };
