import { findAnswer, lackText, findView as texts, wantFigure, wantName } from '../../../outputs/words/index.ts';
import { chooseFound, chosenFound, finding } from '../../state/finding.ts';
import { TableScroll } from '../../widgets/TableScroll.tsx';
import { TradeOffPlot } from './TradeOffPlot.tsx';
import { WhyNot } from './WhyNot.tsx';

/** The sets found: as points of a trade-off, as a table, and why what is not there is not there. */
export function Results() {
  const now = finding.value;
  if (!now) return <p class="quiet">{texts.notYet}</p>;
  const { sets, lacks, error, rest } = now;
  if (error !== '')
    return (
      <p class="problem" role="alert">
        {texts.failed(error)}
      </p>
    );
  if (lacks.length > 0)
    return (
      <div role="alert">
        <p>{findAnswer.nothing}</p>
        <ul class="sentences">
          {lacks.map((lack) => (
            <li key={lack}>{lackText(lack)}</li>
          ))}
        </ul>
      </div>
    );
  if (rest && sets.length === 0) return <p>{findAnswer.noneInRange}</p>;
  return (
    <>
      {rest && <p class="about">{findAnswer.counts(rest.counts)}</p>}
      {sets.length > 0 && <TradeOffPlot finding={now} />}
      {sets.length > 0 && <Table />}
      {rest && <WhyNot finding={now} rest={rest} />}
    </>
  );
}

function Table() {
  const { sets, question } = finding.value!;
  const chosen = chosenFound.value;
  const { wants } = question.read;
  return (
    <div class="card">
      <TableScroll label={texts.table}>
        <table class="find-table">
          <thead>
            <tr>
              <th scope="col">{texts.columns.number}</th>
              <th scope="col">{texts.columns.set}</th>
              {wants.map((want, i) => (
                <th key={i} scope="col" class="number">
                  {wantName(want)}
                </th>
              ))}
              <th scope="col" class="number">
                {texts.columns.effort}
              </th>
            </tr>
          </thead>
          <tbody>
            {sets.map((set, i) => (
              <tr key={set.name} class={set === chosen ? 'is-chosen' : ''}>
                <td>{i + 1}</td>
                <th scope="row">
                  <button
                    type="button"
                    class="link"
                    aria-pressed={set === chosen}
                    onClick={() => chooseFound(set.name)}
                  >
                    {set.name}
                  </button>
                </th>
                {set.figures.map((figure, k) => (
                  <td key={k} class="number">
                    {wantFigure(figure)}
                  </td>
                ))}
                <td class="number">{set.effort}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableScroll>
    </div>
  );
}
