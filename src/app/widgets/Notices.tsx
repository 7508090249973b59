import { widgetWords } from '../../outputs/words/index.ts';
import { dismiss, notices } from '../state/notices.ts';

/** Short messages at the edge of the page, with what can be done about them. */
export function Notices() {
  return (
    <section class="notices" aria-label={widgetWords.messages} aria-live="polite">
      {notices.value.map(({ key, text, action, isBusy }) => (
        <div class="notice" key={key}>
          <p>{text}</p>
          {isBusy && <progress aria-label={text} />}
          {action && (
            <button
              type="button"
              onClick={() => {
                dismiss(key);
                action.run();
              }}
            >
              {action.label}
            </button>
          )}
          {!isBusy && (
            <button type="button" class="leave-out" aria-label={widgetWords.dismiss} onClick={() => dismiss(key)}>
              ×
            </button>
          )}
        </div>
      ))}
    </section>
  );
}
