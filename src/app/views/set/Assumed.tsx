import { useState } from 'preact/hooks';
import { assumedIn, confirmed, isRecord, type Path, placeOf, valueAtPath } from '../../../engine/index.ts';
import { assumedWords as texts } from '../../../outputs/words/index.ts';
import { fieldPath } from '../../description/places.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { focusIfLost } from '../../widgets/focus-if-lost.ts';
import { showField } from '../../widgets/show-field.ts';

const LIST_ID = 'assumed-list';

/** How many values are assumed; unfolded, each with its value, a way to it and a way to confirm it. */
export function Assumed() {
  const { written, stage, change } = useOpenSet();
  const [isOpen, setOpen] = useState(false);
  const places = assumedIn(written.value);
  if (places.length === 0) return null;
  const confirm = (which?: readonly string[], at = 0) => {
    change((base) => confirmed(base, which), { label: texts.confirmed });
    focusIfLost(() => {
      const left = document.querySelectorAll<HTMLElement>(`#${LIST_ID} li .chip`);
      return left[Math.min(at, left.length - 1)] ?? document.getElementById('workbench');
    });
  };
  return (
    <>
      <button
        type="button"
        class="chip assumed-chip"
        aria-expanded={isOpen}
        aria-controls={isOpen ? LIST_ID : undefined}
        onClick={() => setOpen(!isOpen)}
      >
        {texts.count(places.length)}
      </button>
      {isOpen && (
        <section
          class="assumed-list"
          id={LIST_ID}
          aria-label={texts.count(places.length)}
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return;
            setOpen(false);
            document.querySelector<HTMLElement>('.assumed-chip')?.focus();
          }}
        >
          <p class="about">{texts.about}</p>
          <ul>
            {places.map((place, i) => {
              const what = texts.valueOf(fieldPath(place, written.value), valueText(written.value, placeOf(place)));
              return (
                <li key={place}>
                  <button type="button" class="link" onClick={() => showField(stage, fieldIn(written.value, place))}>
                    {what}
                  </button>
                  <button
                    type="button"
                    class="chip"
                    aria-label={texts.confirmOne(what)}
                    onClick={() => confirm([place], i)}
                  >
                    {texts.confirm}
                  </button>
                </li>
              );
            })}
          </ul>
          <p>
            <button type="button" onClick={() => confirm()}>
              {texts.confirmAll}
            </button>
          </p>
        </section>
      )}
    </>
  );
}

/** As written; of a row its own figures. */
function valueText(written: unknown, path: Path): string {
  const value = valueAtPath(written, path);
  if (!isRecord(value)) return String(value);
  return Object.entries(value)
    .filter(([key, one]) => key !== 'name' && typeof one !== 'object')
    .map(([, one]) => one)
    .join(', ');
}

/** The field to go to: of a row its first. */
const fieldIn = (written: unknown, place: string): string => {
  const value = valueAtPath(written, placeOf(place));
  return isRecord(value) ? `${place}.${Object.keys(value)[0]}` : place;
};
