import type { ComparedSets } from '../../../engine/index.ts';
import { setsComparedText, compareView as texts } from '../../../outputs/words/index.ts';

/** How each set differs from A in words, and what each part of it does. */
export function Differences({ sets, moved }: ComparedSets) {
  return (
    <section class="compare-differences" aria-label={texts.differences}>
      {sets.map(({ difference }, i) => {
        if (!difference) return null;
        return (
          <div key={texts.letter(i)}>
            <p class="compare-sentence">{setsComparedText.difference(i, difference)}</p>
            {difference.exchanges.length > 0 && (
              <details>
                <summary>{texts.exchanges(i)}</summary>
                <p class="quiet">{setsComparedText.exchanged(i)}</p>
                <ul class="sentences">
                  {difference.exchanges.map((exchange) => {
                    const words = setsComparedText.exchange(exchange);
                    return <li key={words}>{words}</li>;
                  })}
                </ul>
              </details>
            )}
          </div>
        );
      })}
      {moved.length > 0 && <p class="quiet">{setsComparedText.moved(moved)}</p>}
    </section>
  );
}
