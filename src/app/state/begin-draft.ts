import type { Bench } from '../description/bench.ts';
import { keptTexts, keptWithSet } from './kept-with-set.ts';

/** What was filled in to begin a set and did not become one yet: of the page, as no set is there for it to belong to. */
export const { value: beginDraft } = keptWithSet<Bench>(
  {
    name: 'begin',
    read: keptTexts,
    worth: (bench) => (Object.values(bench).some((text) => text.trim() !== '') ? bench : undefined),
  },
  'draft',
);
