/** The page's typeface, by the name of its cut and of its whole; without it one nearly as wide. */
export const FACE = "'Faintwave Sans', 'Source Sans 3', Arial, 'Liberation Sans', sans-serif";
