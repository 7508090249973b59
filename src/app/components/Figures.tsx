export interface FigureItem {
  readonly label: string;
  readonly text: string;
  /** "25 to 150 Ω". */
  readonly range?: string;
}

/** What a part comes to as made: names and figures, with warnings on them. */
export function Figures({ items, warnings = [] }: { items: readonly FigureItem[]; warnings?: readonly string[] }) {
  return (
    <div class="figures">
      <dl>
        {items.map(({ label, text, range }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>
              {text}
              {range && <span class="figure-range"> {range}</span>}
            </dd>
          </div>
        ))}
      </dl>
      {warnings.map((warning) => (
        <p class="figure-warning" key={warning}>
          <span aria-hidden="true">⚠ </span>
          {warning}
        </p>
      ))}
    </div>
  );
}
