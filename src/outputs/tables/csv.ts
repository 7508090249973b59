/** A text as one field of a line. */
export const quotedField = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** Numbers as comma-separated values (RFC 4180). @param head a title for each column, with its unit. */
export const numbersCsv = (head: readonly string[], rows: readonly (readonly number[])[]): string =>
  [head.map(quotedField).join(','), ...rows.map((row) => row.map((x) => Number(x.toPrecision(9))).join(',')), ''].join(
    '\n',
  );
