/** Which part to draw; a coil by its place in the list. */
export type DrawnPart = 'aerial' | 'earth' | 'tuning' | 'detector' | { readonly coil: number };

/** The place of a part's drawing to scale. */
export function Drawing(_: { part: DrawnPart }) {
  return null;
}
