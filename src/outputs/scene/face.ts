/** The cut of the typeface that the page carries. */
export const FACE_NAME = 'Faintwave Sans';

/** The page's typeface, by the name of its cut and of its whole; without it one nearly as wide. */
export const FACE = `'${FACE_NAME}', 'Source Sans 3', Arial, 'Liberation Sans', sans-serif`;
