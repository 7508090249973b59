import type { Warning } from '../../engine/index.ts';
import { type GlossaryId, warningSentences, widgetWords } from '../../outputs/words/index.ts';

import { Term } from './Term.tsx';

export interface FigureItem {
  readonly label: string;
  readonly text: string;
  /** Where the glossary explains the label. */
  readonly term?: GlossaryId;
  /** "25 to 150 Ω". */
  readonly range?: string;
}

/** "—" and "NaN" are no figures: what a measured part does not tell is named in one line instead. */
const isKnown = ({ text }: FigureItem): boolean => !/^(—|NaN)/.test(text);

/** What a part comes to as made: names and figures, with warnings on them. */
export function FigureList({ items, warnings = [] }: { items: readonly FigureItem[]; warnings?: readonly Warning[] }) {
  const unknown = items.filter((item) => !isKnown(item)).map(({ label }) => label);
  return (
    <div class="figures">
      <dl>
        {items.filter(isKnown).map(({ label, text, range, term }) => (
          <div key={label}>
            <dt>{term ? <Term id={term} label={label} /> : label}</dt>
            <dd>
              {text}
              {range && <span class="figure-range"> {range}</span>}
            </dd>
          </div>
        ))}
      </dl>
      {unknown.length > 0 && <p class="figure-unknown">{widgetWords.unknownFigures(unknown)}</p>}
      {warningSentences(warnings).map((warning) => (
        <p class="figure-warning" key={warning}>
          <span aria-hidden="true">⚠ </span>
          {warning}
        </p>
      ))}
    </div>
  );
}
