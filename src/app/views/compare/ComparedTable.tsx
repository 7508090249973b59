import type { ComparedRow } from '../../../outputs/tables/index.ts';
import { compareView as texts } from '../../../outputs/words/index.ts';
import { TableScroll } from '../../widgets/TableScroll.tsx';

interface Props {
  readonly title: string;
  /** Over the first column. */
  readonly rowTitle: string;
  readonly names: readonly string[];
  readonly rows: readonly ComparedRow[];
}

/** A row for each level or part, a column for each set. */
export function ComparedTable({ title, rowTitle, names, rows }: Props) {
  return (
    <TableScroll label={title}>
      <table class="compare-table">
        <thead>
          <tr>
            <th scope="col">{rowTitle}</th>
            {names.map((name, i) => (
              <th key={texts.letter(i)} scope="col">
                <span class="compare-letter">{texts.letter(i)}</span> {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, cells, ranges }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {cells.map((cell, i) => (
                <td key={texts.letter(i)}>
                  {cell}
                  {ranges?.[i] && <span class="quiet compare-range">{ranges[i]}</span>}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}
