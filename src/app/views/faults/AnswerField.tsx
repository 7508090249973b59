import { useEffect, useId, useState } from 'preact/hooks';
import { faultsView as texts } from '../../../outputs/words/index.ts';
import type { ShownCheck } from './shown-checks.ts';

interface Props {
  readonly check: ShownCheck;
  /** What a screen reader calls it. */
  readonly name: string;
  readonly value: string;
  readonly isBad?: boolean;
  readonly onChange?: (value: string) => void;
}

/** Words in place of a figure. */
const WORDS: Readonly<Partial<Record<ShownCheck['kind'], readonly string[]>>> = texts.besides;

/** The answer to one check: one of its words, or a figure as typed. */
export function AnswerField({ check: { kind, options, help, good }, name, value, isBad, onChange }: Props) {
  const id = useId();
  // An answer that arrives meanwhile leaves alone what is being typed.
  const [draft, setDraft] = useState(value);
  useEffect(() => setDraft(value), [value]);
  if (options)
    return (
      <select
        name="answer"
        aria-label={name}
        value={draft}
        onChange={(event) => {
          setDraft(event.currentTarget.value);
          onChange?.(event.currentTarget.value);
        }}
      >
        <option value="">{texts.notTried}</option>
        {options.map((option) => (
          <option key={option}>{option}</option>
        ))}
        <option>{texts.notPossible}</option>
      </select>
    );
  return (
    <>
      <input
        type="text"
        name="answer"
        autocomplete="off"
        spellcheck={false}
        aria-label={name}
        aria-invalid={isBad || undefined}
        aria-describedby={isBad ? `${id}-help` : undefined}
        placeholder={good}
        list={`${id}-words`}
        value={draft}
        onInput={(event) => setDraft(event.currentTarget.value)}
        onChange={(event) => onChange?.(event.currentTarget.value)}
      />
      <datalist id={`${id}-words`}>
        {[...(WORDS[kind] ?? []), texts.notPossible].map((word) => (
          <option key={word} value={word} />
        ))}
      </datalist>
      {isBad && (
        <p id={`${id}-help`} class="fault-problem">
          {texts.notUnderstood(help)}
        </p>
      )}
    </>
  );
}
