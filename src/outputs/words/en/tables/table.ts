/** A row of a table that is too wide for the terminal: its cells one after the other. Empty ones are left out. */
export const rowAsText = (cells: readonly { readonly title: string; readonly cell: string }[]): string =>
  cells.map(({ title, cell }) => `${title} ${cell}`).join('; ');
