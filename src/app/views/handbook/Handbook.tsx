import { chapters } from 'virtual:handbook';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { handbookWords as texts } from '../../../outputs/words/index.ts';
import { handbookAt, LICENCES } from '../../state/handbook.ts';
import { Blocks } from './Blocks.tsx';
import { Contents } from './Contents.tsx';
import { findIn, handbookSections } from './handbook-search.ts';
import type { Chapter } from './handbook-text.ts';
import { Licences } from './Licences.tsx';
import './handbook.css';

/** The documents as a book: contents and search beside the chapter that is read. */
export function Handbook() {
  const [typed, setTyped] = useState('');
  const sections = useMemo(() => handbookSections(chapters), []);
  const found = useMemo(() => findIn(sections, typed), [sections, typed]);
  const isSearching = typed.trim() !== '';
  const at = handbookAt.value;
  const chapter = chapters.find(({ id }) => id === at?.chapter);
  return (
    <section class="handbook" aria-label={texts.label}>
      <nav class="handbook-side card" aria-label={texts.contents}>
        <label class="handbook-search">
          <span>{texts.search}</span>
          <input
            type="search"
            value={typed}
            autocomplete="off"
            onInput={(event) => setTyped(event.currentTarget.value)}
          />
        </label>
        <p class="quiet" role="status">
          {isSearching ? texts.foundCount(found.length) : ''}
        </p>
        {isSearching ? <Found found={found} /> : <Contents chapters={chapters} />}
      </nav>
      <article class="handbook-text card">
        {at?.chapter === LICENCES ? <Licences at={at} /> : <ChapterText chapter={chapter ?? chapters[0]} at={at} />}
      </article>
    </section>
  );
}

function Found({ found }: { readonly found: ReturnType<typeof findIn> }) {
  return (
    <ol class="handbook-found">
      {found.map(({ section, before, found: word, after }, i) => (
        <li key={i}>
          <button
            type="button"
            class="link"
            onClick={() => {
              handbookAt.value = { chapter: section.chapter.id, heading: section.heading?.id };
            }}
          >
            {texts.place(section.chapter.title, section.heading?.text)}
          </button>
          <p class="quiet">
            {before}
            <mark>{word}</mark>
            {after}
          </p>
        </li>
      ))}
    </ol>
  );
}

/** A chapter; the heading that was asked for comes into view, and reading by keyboard goes on from there. */
function ChapterText({ chapter, at }: { readonly chapter: Chapter; readonly at: typeof handbookAt.value }) {
  const text = useRef<HTMLDivElement>(null);
  const isFirst = useRef(true);
  useEffect(() => {
    const wasFirst = isFirst.current;
    isFirst.current = false;
    if (wasFirst && handbookAt.peek() === undefined) return;
    const heading = at?.heading;
    const target = text.current?.querySelector<HTMLElement>(heading ? `[id="${CSS.escape(heading)}"]` : 'h2');
    target?.scrollIntoView({ block: 'start' });
    target?.focus({ preventScroll: true });
  }, [chapter, at]);
  const next = chapters[chapters.indexOf(chapter) + 1];
  return (
    <div ref={text}>
      <h2 tabIndex={-1}>{chapter.title}</h2>
      <Blocks blocks={chapter.blocks} />
      {next && (
        <p class="handbook-next">
          <button type="button" onClick={() => (handbookAt.value = { chapter: next.id })}>
            {texts.next(next.title)}
          </button>
        </p>
      )}
    </div>
  );
}
