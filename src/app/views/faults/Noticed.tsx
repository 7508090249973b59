import { faultsView as texts, verdictWords } from '../../../outputs/words/index.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { AnswerField } from './AnswerField.tsx';
import type { ShownCheck, ShownChecks } from './shown-checks.ts';

interface Fields {
  readonly answers: Readonly<Record<string, string>>;
  readonly notUnderstood: readonly string[];
  readonly onAnswer: (key: string, value: string) => void;
}

function Field({ check, name, answers, notUnderstood, onAnswer }: Fields & { check: ShownCheck; name: string }) {
  return (
    <AnswerField
      check={check}
      name={name}
      value={answers[check.key] ?? ''}
      isBad={notUnderstood.includes(check.key)}
      onChange={(value) => onAnswer(check.key, value)}
    />
  );
}

/** What is heard of each station. */
export function NoticedStations({ checks, ...fields }: Fields & { readonly checks: ShownChecks }) {
  const stations = useOpenSet().reception.value?.stations;
  const calculated = (index: number, scale: string): string => {
    const station = stations?.[index];
    return texts.expected({ loudness: station && verdictWords[station.verdict], scale });
  };
  return (
    <section class="faults-noticed" aria-labelledby="faults-noticed-title">
      <h2 id="faults-noticed-title">{texts.notice}</h2>
      <p class="quiet">{texts.noticeAbout}</p>
      {checks.stations.map(({ index, name, scale, checks: list }) => (
        <fieldset key={list[0]?.key ?? name} class="fault-station">
          <legend>{name}</legend>
          <p class="fault-good">{calculated(index, scale)}</p>
          {list.map((check) => (
            <div key={check.key} class="fault-field">
              <span aria-hidden="true">{check.label}</span>
              <span class="fault-answer">
                <Field check={check} name={texts.of(check.label, name)} {...fields} />
              </span>
            </div>
          ))}
        </fieldset>
      ))}
    </section>
  );
}

/** Signs that can be noticed or tried, and readings of a meter. */
export function NoticedSigns({
  checks,
  onClear,
  ...fields
}: Fields & { readonly checks: ShownChecks; readonly onClear: () => void }) {
  const { answers } = fields;
  const rows = (list: readonly ShownCheck[]) => (
    <ul class="fault-rows">
      {list.map((check) => (
        <li key={check.key}>
          <span>
            {check.label}
            {check.good !== undefined && <span class="fault-good">{texts.good(check.good)}</span>}
          </span>
          <span class="fault-answer">
            <Field check={check} name={check.label} {...fields} />
          </span>
        </li>
      ))}
    </ul>
  );
  const isSome = (list: readonly ShownCheck[]): boolean => list.some(({ key }) => (answers[key] ?? '') !== '');
  return (
    <section class="faults-signs" aria-labelledby="faults-signs-title">
      <h2 id="faults-signs-title">{texts.signs}</h2>
      {rows(checks.signs)}
      <details open={isSome(checks.trials) || undefined}>
        <summary>{texts.more}</summary>
        {rows(checks.trials)}
      </details>
      <details open={isSome(checks.readings) || undefined}>
        <summary>{texts.readings}</summary>
        <p class="fault-caution">{texts.readingsAbout}</p>
        {rows(checks.readings)}
      </details>
      <button type="button" disabled={Object.keys(answers).length === 0} onClick={onClear}>
        {texts.startAgain}
      </button>
    </section>
  );
}
