import { useLayoutEffect, useRef } from 'preact/hooks';
import { widgetWords } from '../../outputs/words/index.ts';
import { boxInView, dismiss, notices } from '../state/notices.ts';
import { useOpenSet } from '../state/set-context.ts';

/** Short messages about the page and the set in focus at its edge, with what can be done about them. */
export function Notices() {
  const { id } = useOpenSet();
  const shown = notices.value.filter(({ of }) => of === undefined || of === id || of === boxInView.value);
  const place = useRef<HTMLElement>(null);
  // The control that was just used stays in sight.
  useLayoutEffect(() => {
    const used = document.activeElement;
    const top = place.current?.getBoundingClientRect().top;
    if (shown.length === 0 || top === undefined || !used?.closest('main')) return;
    if (used.getBoundingClientRect().bottom > top) used.scrollIntoView({ block: 'center' });
  }, [shown.length]);
  return (
    <section ref={place} class="notices" aria-label={widgetWords.messages} aria-live="polite">
      {shown.map(({ key, of, text, action, isBusy }) => (
        <div class="notice" key={key}>
          <p>{text}</p>
          {isBusy && <progress aria-label={text} />}
          {action && (
            <button
              type="button"
              onClick={() => {
                dismiss(key, of);
                action.run();
              }}
            >
              {action.label}
            </button>
          )}
          {!isBusy && (
            <button type="button" class="leave-out" aria-label={widgetWords.dismiss} onClick={() => dismiss(key, of)}>
              ×
            </button>
          )}
        </div>
      ))}
    </section>
  );
}
