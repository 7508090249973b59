import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { type GlossaryId, glossary, glossaryWords as texts } from '../../outputs/words/index.ts';
import { glossaryAt } from '../state/glossary.ts';
import { TermPicture } from './TermPicture.tsx';

/** Kept free between the note, its label and the edges of the window, px. */
const GAP = 8;

/** A label that explains its term where it stands; from there the glossary is one step further. */
export function Term({ id, label }: { readonly id: GlossaryId; readonly label: string }) {
  const noteId = useId();
  const button = useRef<HTMLButtonElement>(null);
  const note = useRef<HTMLDivElement>(null);
  // A page has many terms: each is drawn when it is asked for.
  const [isOpen, setOpen] = useState(false);
  const { term, text } = glossary[id];
  // Below its label, or above it where there is no room, and never over an edge of the window.
  const place = () => {
    const at = button.current?.getBoundingClientRect();
    const box = note.current?.getBoundingClientRect();
    if (!at || !box || !note.current) return;
    const left = Math.max(GAP, Math.min(at.left, innerWidth - box.width - GAP));
    const below = at.bottom + GAP;
    const top = below + box.height < innerHeight ? below : Math.max(GAP, at.top - box.height - GAP);
    note.current.style.translate = `${left}px ${top}px`;
  };
  useEffect(() => {
    if (isOpen) place();
  }, [isOpen]);
  return (
    <>
      <button ref={button} type="button" class="term" aria-label={texts.explain(label)} popovertarget={noteId}>
        {label}
      </button>
      <div
        ref={note}
        id={noteId}
        class="term-note"
        popover="auto"
        role="note"
        onBeforeToggle={(event) => setOpen(event.newState === 'open')}
        onToggle={place}
      >
        <p>
          <strong>{term}</strong> {text}
        </p>
        {isOpen && <TermPicture id={id} />}
        <button
          type="button"
          class="link"
          onClick={() => {
            note.current?.hidePopover();
            glossaryAt.value = id;
          }}
        >
          {texts.inGlossary}
        </button>
      </div>
    </>
  );
}
