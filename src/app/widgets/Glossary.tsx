import { useEffect, useRef } from 'preact/hooks';
import { type GlossaryId, glossary, glossaryInOrder, glossaryWords as texts } from '../../outputs/words/index.ts';
import { glossaryAt } from '../state/glossary.ts';
import { TermPicture } from './TermPicture.tsx';

const idOf = (id: GlossaryId): string => `term-${id}`;

/** Every term in a window, opened at one of them; the ones related lead on to each other. */
export function Glossary() {
  const dialog = useRef<HTMLDialogElement>(null);
  const at = glossaryAt.value;
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
    if (at === undefined || at === 'beginning') return;
    const entry = document.getElementById(idOf(at));
    entry?.scrollIntoView({ block: 'start' });
    entry?.focus({ preventScroll: true });
  }, [at]);
  const close = () => {
    glossaryAt.value = undefined;
  };
  return (
    <dialog ref={dialog} class="dialog glossary" aria-labelledby="glossary-title" onClose={close}>
      <div class="glossary-head">
        <h2 id="glossary-title">{texts.title}</h2>
        <button type="button" onClick={() => dialog.current?.close()}>
          {texts.close}
        </button>
      </div>
      <dl>
        {glossaryInOrder().map(([id, { term, also, text, related }]) => (
          <div key={id} id={idOf(id)} class={id === at ? 'is-chosen' : undefined} tabIndex={-1}>
            <dt>{term}</dt>
            <dd>
              {text} {also && <span class="quiet">{texts.also(also)}</span>}
              <TermPicture id={id} />
              {related && (
                <p class="glossary-related">
                  {texts.related}{' '}
                  {(related as readonly GlossaryId[]).map((other) => (
                    <button key={other} type="button" class="link" onClick={() => (glossaryAt.value = other)}>
                      {glossary[other].term}
                    </button>
                  ))}
                </p>
              )}
            </dd>
          </div>
        ))}
      </dl>
    </dialog>
  );
}
