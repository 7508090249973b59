import { LIGHTS, type LogAgainstPrediction } from '../../../engine/index.ts';
import { logAnswer, logSurprises, stationFrequency, logWords as texts } from '../../../outputs/words/index.ts';
import { TableScroll } from '../../widgets/TableScroll.tsx';

interface Props {
  readonly beside: Omit<LogAgainstPrediction, 'entries'>;
  /** How many entries there are. */
  readonly count: number;
}

/** Each station by day and by night: what was predicted, and what was heard. */
export function PredictedBeside({ beside, count }: Props) {
  const { columns } = logAnswer;
  const surprises = beside.stations.flatMap(logSurprises);
  return (
    <section class="card" aria-labelledby="beside-title">
      <h2 id="beside-title">{texts.beside}</h2>
      <p class="quiet">{logAnswer.read(count, beside.days)}</p>
      {surprises.length > 0 && (
        <ul class="sentences">
          {surprises.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <TableScroll label={texts.besideTable}>
        <table class="log-table">
          <thead>
            <tr>
              {[columns.station, columns.light, columns.predicted, columns.chance, columns.heard].map((title) => (
                <th key={title} scope="col">
                  {title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {beside.stations.flatMap((station) =>
              LIGHTS.map((light) => (
                <tr key={`${station.index} ${light}`} class={station.lights[light].surprise ? 'is-surprise' : ''}>
                  {light === 'day' && (
                    <th scope="rowgroup" rowSpan={LIGHTS.length}>
                      {station.name} <span class="quiet">{stationFrequency(station.frequency)}</span>
                    </th>
                  )}
                  <td>{logAnswer.light(light)}</td>
                  <td>{logAnswer.predicted(station.lights[light])}</td>
                  <td>{logAnswer.chance(station.lights[light])}</td>
                  <td>{logAnswer.heard(station.lights[light])}</td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </TableScroll>
    </section>
  );
}
