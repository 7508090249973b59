/** Drawings with what a check touches lit. */
export const faultTouchWords = {
  circuit: 'Circuit diagram: where to touch',
  board: 'Board from above: where to touch',
  description: ({ leads, parts }: { readonly leads: readonly string[]; readonly parts: readonly string[] }): string =>
    [
      leads.length === 2 ? `Positive lead of the meter at ${leads[0]}, negative lead at ${leads[1]}.` : '',
      parts.length > 0 ? `Lit: ${parts.join(', ')}.` : '',
    ]
      .filter((sentence) => sentence !== '')
      .join(' '),
} as const;
