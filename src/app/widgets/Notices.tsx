import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { widgetWords } from '../../outputs/words/index.ts';
import { boxInView, dismiss, keepNotice, type Notice, notices, TRIED } from '../state/notices.ts';
import { useOpenSet } from '../state/set-context.ts';

/** Short messages about the page and the set in focus at its edge, with what can be done about them. */
export function Notices() {
  const { id } = useOpenSet();
  const shown = notices.value.filter(
    ({ key, of }) => key !== TRIED && (of === undefined || of === id || of === boxInView.value),
  );
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
      {shown.map((notice) => (
        <OneNotice key={`${notice.of} ${notice.key}`} notice={notice} />
      ))}
    </section>
  );
}

/** The first lines of a message; a longer one can be opened. */
function OneNotice({ notice: { key, of, text, action, onDismissed, isBusy } }: { readonly notice: Notice }) {
  const [isCut, setCut] = useState(false);
  const [isOpen, setOpen] = useState(false);
  const message = useRef<HTMLParagraphElement>(null);
  const id = useId();
  useLayoutEffect(() => {
    const shown = message.current;
    if (!shown) return;
    const measure = () => setCut((was) => (isOpen ? was : shown.scrollHeight > shown.clientHeight + 1));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(shown);
    return () => observer.disconnect();
  }, [text, isOpen]);
  return (
    <div class={isOpen ? 'notice is-open' : 'notice'}>
      {/* Opened it scrolls in its place, by the keyboard too. */}
      <p ref={message} id={id} tabIndex={isOpen ? 0 : undefined}>
        {text}
      </p>
      {isBusy && <progress aria-label={text} />}
      {isCut && (
        <button
          type="button"
          aria-expanded={isOpen}
          aria-controls={id}
          onClick={() => {
            // Who opens it reads it: it stays until it is dismissed.
            keepNotice(key, of);
            setOpen(!isOpen);
          }}
        >
          {isOpen ? widgetWords.less : widgetWords.wholeMessage}
        </button>
      )}
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
        <button
          type="button"
          class="leave-out"
          aria-label={widgetWords.dismiss}
          onClick={() => {
            dismiss(key, of);
            onDismissed?.();
          }}
        >
          ×
        </button>
      )}
    </div>
  );
}
