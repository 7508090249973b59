/** One of several facts: its code with its figures. */
export type Coded<Facts> = { readonly [C in keyof Facts]: { readonly code: C } & Readonly<Facts[C]> }[keyof Facts];

/** What a code without figures carries. */
export type NoFigures = Record<never, never>;
