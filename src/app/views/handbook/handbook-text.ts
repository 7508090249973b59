/** A piece of a line. */
export type Inline =
  | string
  | { readonly code: string }
  | { readonly strong: readonly Inline[] }
  | { readonly em: readonly Inline[] }
  | { readonly to: Target; readonly text: readonly Inline[] }
  /** By its path; `pictures` has the address. */
  | { readonly picture: string; readonly alt: string };

/** Where a link leads: within the handbook, or out of the page. */
export type Target = { readonly chapter: string; readonly heading?: string } | { readonly address: string };

export type TextBlock =
  | { readonly heading: readonly Inline[]; readonly level: number; readonly id: string }
  | { readonly paragraph: readonly Inline[] }
  | { readonly listing: string }
  /** Numbered from `from`, else with bullets. */
  | { readonly items: readonly (readonly TextBlock[])[]; readonly from?: number }
  | { readonly head: readonly (readonly Inline[])[]; readonly rows: readonly (readonly (readonly Inline[])[])[] }
  | { readonly quote: readonly TextBlock[] };

export type HandbookPart = 'sets' | 'page' | 'script' | 'physics' | 'proof';

export interface Chapter {
  readonly id: string;
  readonly part: HandbookPart;
  readonly title: string;
  readonly blocks: readonly TextBlock[];
}

/** What a reader sees of lines, without their marks. */
export const textOfLines = (lines: readonly Inline[]): string =>
  lines
    .map((one): string => {
      if (typeof one === 'string') return one;
      if ('code' in one) return one.code;
      if ('strong' in one) return textOfLines(one.strong);
      if ('em' in one) return textOfLines(one.em);
      return 'text' in one ? textOfLines(one.text) : one.alt;
    })
    .join('');

/** What a reader sees of a block, lines and cells divided by spaces. */
export function textOfBlock(block: TextBlock): string {
  if ('heading' in block) return textOfLines(block.heading);
  if ('paragraph' in block) return textOfLines(block.paragraph);
  if ('listing' in block) return block.listing;
  if ('items' in block) return block.items.flatMap((item) => item.map(textOfBlock)).join(' ');
  if ('quote' in block) return block.quote.map(textOfBlock).join(' ');
  return [block.head, ...block.rows].map((row) => row.map(textOfLines).join(' ')).join(' ');
}
