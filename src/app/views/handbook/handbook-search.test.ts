import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findIn, handbookSections } from './handbook-search.ts';
import type { Chapter } from './handbook-text.ts';

const chapter: Chapter = {
  id: 'page-one',
  part: 'page',
  title: 'Coils',
  blocks: [
    { paragraph: ['A coil of ', { strong: ['Litz'] }, ' wire.'] },
    { heading: ['How many turns'], level: 2, id: 'how-many-turns' },
    { items: [[{ paragraph: ['count ', { to: { chapter: 'page-one' }, text: ['the turns'] }] }]] },
    { head: [['wire'], ['Q']], rows: [[['0.5 mm'], [{ code: '150' }]]] },
    { listing: 'faintwave calc turns' },
  ],
};
const sections = handbookSections([chapter]);

describe('the search of the handbook', () => {
  it('cuts chapters at their headings, with all that a reader sees', () => {
    expect(sections.map(({ heading, text }) => [heading?.id, text])).toEqual([
      [undefined, 'A coil of Litz wire.'],
      ['how-many-turns', 'count the turns wire Q 0.5 mm 150 faintwave calc turns'],
    ]);
  });

  it('needs every word, in any case and order, in the text or its headings', () => {
    const places = (typed: string) => findIn(sections, typed).map(({ section }) => section.heading?.id);
    expect(places('WIRE litz')).toEqual([undefined]);
    // Both lie in the chapter on coils; one has both words in its headings.
    expect(places('coils turns')).toEqual(['how-many-turns']);
    expect(places('wire')).toEqual([undefined, 'how-many-turns']);
    expect(places('wire valve')).toEqual([]);
    expect(places('  ')).toEqual([]);
  });

  it('shows the text around what was found, unchanged', () => {
    const text = fc.array(fc.stringMatching(/^[a-zA-Z.,]{1,9}$/), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(text, fc.nat(), (words, at) => {
        const typed = words[at % words.length];
        const found = findIn(
          handbookSections([{ ...chapter, title: '', blocks: [{ paragraph: [words.join(' ')] }] }]),
          typed,
        );
        expect(found).toHaveLength(1);
        const [{ before, found: word, after }] = found;
        expect(word.toLowerCase()).toBe(typed.toLowerCase());
        expect(words.join(' ')).toContain((before + word + after).replace(/^… | …$/g, ''));
      }),
    );
  });
});
