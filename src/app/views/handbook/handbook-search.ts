import { type Chapter, type TextBlock, textOfBlock, textOfLines } from './handbook-text.ts';

/** A chapter from one heading to the next. */
export interface HandbookSection {
  readonly chapter: Chapter;
  /** None at the beginning of a chapter. */
  readonly heading?: { readonly id: string; readonly text: string };
  readonly text: string;
}

export interface SearchHit {
  readonly section: HandbookSection;
  /** The text around the first word that was found. */
  readonly before: string;
  readonly found: string;
  readonly after: string;
}

const MOST = 40;
/** Letters of text on either side of what was found. */
const AROUND = 70;

/** All chapters, cut at their headings. */
export function handbookSections(chapters: readonly Chapter[]): HandbookSection[] {
  return chapters.flatMap((chapter) => {
    const sections: { heading?: HandbookSection['heading']; blocks: TextBlock[] }[] = [{ blocks: [] }];
    for (const block of chapter.blocks)
      if ('heading' in block)
        sections.push({ heading: { id: block.id, text: textOfLines(block.heading) }, blocks: [] });
      else sections[sections.length - 1].blocks.push(block);
    return sections.map(({ heading, blocks }) => ({
      chapter,
      heading,
      text: blocks.map(textOfBlock).join(' ').replace(/\s+/g, ' '),
    }));
  });
}

const folded = (text: string): string => text.toLowerCase();

/**
 * Sections that hold every word, as the beginning of one of theirs or within it; those with all words in their heading
 * or title first, else in the order of reading.
 * @param sections to look in
 * @param typed words with spaces between
 * @returns at most 40
 */
export function findIn(sections: readonly HandbookSection[], typed: string): SearchHit[] {
  const words = folded(typed)
    .split(/\s+/)
    .filter((word) => word !== '');
  if (words.length === 0) return [];
  const hits = sections.flatMap((section) => {
    const title = folded(`${section.chapter.title} ${section.heading?.text ?? ''}`);
    const text = folded(section.text);
    if (!words.every((word) => title.includes(word) || text.includes(word))) return [];
    return [{ section, inTitle: words.every((word) => title.includes(word)) }];
  });
  return [...hits.filter(({ inTitle }) => inTitle), ...hits.filter(({ inTitle }) => !inTitle)]
    .slice(0, MOST)
    .map(({ section }) => excerptOf(section, words));
}

function excerptOf(section: HandbookSection, words: readonly string[]): SearchHit {
  const text = folded(section.text);
  const word = words.find((one) => text.includes(one));
  if (word === undefined) return { section, before: '', found: '', after: section.text.slice(0, 2 * AROUND) };
  const at = text.indexOf(word);
  const end = at + word.length;
  // Whole words at both ends.
  const from = at <= AROUND ? 0 : text.indexOf(' ', at - AROUND) + 1;
  const to = end + AROUND >= text.length ? text.length : Math.max(end, text.lastIndexOf(' ', end + AROUND));
  return {
    section,
    before: (from > 0 ? '… ' : '') + section.text.slice(from, at),
    found: section.text.slice(at, end),
    after: section.text.slice(end, to) + (to < text.length ? ' …' : ''),
  };
}
