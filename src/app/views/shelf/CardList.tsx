import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { shelfWords as texts } from '../../../outputs/words/index.ts';

/** More are shown when asked for, so that hundreds are searched within a keystroke. */
const AT_ONCE = 24;
const MORE = 200;

interface Props<One> {
  readonly found: readonly One[];
  /** What was searched for: of something else the first are shown again. */
  readonly search: string;
  readonly card: (one: One) => ComponentChildren;
}

/** The first cards of what was found, and a button for more. */
export function CardList<One>({ found, search, card }: Props<One>) {
  const [asked, setAsked] = useState({ search, most: AT_ONCE });
  const most = asked.search === search ? asked.most : AT_ONCE;
  return (
    <>
      <ul class="shelf-list">{found.slice(0, most).map(card)}</ul>
      {found.length > most && (
        <button type="button" onClick={() => setAsked({ search, most: most + MORE })}>
          {texts.showMore(Math.min(MORE, found.length - most))}
        </button>
      )}
    </>
  );
}
