import { faultAnswer, faultsView as texts } from '../../../outputs/words/index.ts';
import type { FaultAnswer } from './faults.worker.ts';

interface Props {
  readonly search: FaultAnswer['search'];
  /** Something is observed already. */
  readonly isObserved: boolean;
}

/** Ranked causes with what speaks for and against each, and the remedy of the first. */
export function Causes({ search: { causes, pairs, end, tied, contradictions }, isObserved }: Props) {
  return (
    <section class="faults-causes" aria-labelledby="faults-causes-title">
      <h2 id="faults-causes-title">{texts.causes}</h2>
      {!isObserved && <p class="quiet">{texts.beforehand}</p>}
      {contradictions.map(({ check, text }) => (
        <p key={check} class="figure-warning">
          {text}
        </p>
      ))}
      <p role="status" class="faults-end">
        {isObserved && [end, tied].filter((sentence) => sentence !== undefined).join(' ')}
      </p>
      {isObserved && pairs.length > 0 && (
        <div class="fault-why">
          <p>{faultAnswer.pairs}</p>
          <ul>
            {pairs.map(({ probability, faults }) => (
              <li key={faults.join()}>
                <span class="fault-share">{faultAnswer.probability(probability)}</span> {faultAnswer.bothOf(faults)}
              </li>
            ))}
          </ul>
          <p>{faultAnswer.causesIfOne}</p>
        </div>
      )}
      <ol class="fault-causes">
        {causes.map(({ probability, faults, remedy, cautions, fits, fitsNot }, rank) => (
          <li key={faults.join()}>
            <p class="fault-cause">
              <span class="fault-share">{faultAnswer.probability(probability)}</span> {faultAnswer.anyOf(faults)}
            </p>
            <div class="fault-bar" aria-hidden="true">
              <div style={{ width: `${100 * probability}%` }} />
            </div>
            {isObserved && rank === 0 && (
              <>
                <p>{faultAnswer.remedy(remedy)}</p>
                {cautions.map((caution) => (
                  <p key={caution} class="fault-caution">
                    {caution}
                  </p>
                ))}
              </>
            )}
            <Why title={texts.fits} list={fits} />
            <Why title={texts.fitsNot} list={fitsNot} />
            {isObserved && rank > 0 && (
              <details>
                <summary>{texts.remedy}</summary>
                <p>{remedy}</p>
                {cautions.map((caution) => (
                  <p key={caution} class="fault-caution">
                    {caution}
                  </p>
                ))}
              </details>
            )}
          </li>
        ))}
      </ol>
      <p class="quiet">{texts.about}</p>
    </section>
  );
}

function Why({ title, list }: { readonly title: string; readonly list: readonly string[] }) {
  if (list.length === 0) return null;
  return (
    <div class="fault-why">
      <p>{title}</p>
      <ul>
        {list.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </div>
  );
}
