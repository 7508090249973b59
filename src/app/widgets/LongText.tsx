import { readingWords } from '../../outputs/words/index.ts';
import { SHORT_TEXT } from '../workers/reading.ts';

/** What a person gives to be read: typed or pasted text, or a file. */
export type TextSource = string | File;

interface Props {
  readonly id: string;
  readonly label: string;
  readonly rows: number;
  readonly placeholder?: string;
  readonly value: TextSource;
  readonly onChange: (value: TextSource) => void;
}

/** Characters of a long text that are shown. */
const BEGINNING = 1000;

/**
 * A field for text to be read. A long text is not put into the field, which would hold the page up at every key: its
 * beginning is shown, and it can only be cleared.
 */
export function LongText({ id, label, rows, placeholder, value, onChange }: Props) {
  const isFile = typeof value !== 'string';
  const isHeld = isFile || value.length > SHORT_TEXT;
  return (
    <>
      <label for={id}>{label}</label>
      <textarea
        id={id}
        rows={rows}
        spellcheck={false}
        placeholder={placeholder}
        readOnly={isHeld}
        aria-describedby={isHeld ? `${id}-held` : undefined}
        value={isFile ? '' : isHeld ? `${value.slice(0, BEGINNING)}…` : value}
        onInput={(event) => onChange(event.currentTarget.value)}
        onPaste={(event) => {
          const field = event.currentTarget;
          const pasted = event.clipboardData?.getData('text/plain') ?? '';
          if (field.readOnly || pasted.length <= SHORT_TEXT) return;
          event.preventDefault();
          onChange(field.value.slice(0, field.selectionStart) + pasted + field.value.slice(field.selectionEnd));
        }}
      />
      {isHeld && (
        <p id={`${id}-held`} class="quiet">
          {isFile ? readingWords.chosenFile(value.name, value.size) : readingWords.longText(value.length)}{' '}
          <button type="button" class="chip" onClick={() => onChange('')}>
            {readingWords.clear}
          </button>
        </p>
      )}
    </>
  );
}
