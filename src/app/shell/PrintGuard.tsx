import { effect } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { sheetsView as texts } from '../../outputs/words/index.ts';
import { isPrintAwaited, printedView } from '../state/printing.ts';

/** Printing the page prints these alone, and nothing else of it. */
const PRINTED = 'printed-sheets';

const remove = (): void => document.querySelector(`.${PRINTED}`)?.remove();

function put(): void {
  remove();
  const box = printedView.peek()?.make() ?? document.createElement('div');
  if (!printedView.peek()) box.append(texts.notYetDrawn);
  box.className = PRINTED;
  document.body.append(box);
}

const isPrintKey = ({ ctrlKey, metaKey, altKey, key }: KeyboardEvent): boolean =>
  (ctrlKey || metaKey) && !altKey && key.toLowerCase() === 'p';

/** The keys of printing wait for what is still being drawn; a browser's own menu cannot be held back, and prints that it is. */
function onKey(event: KeyboardEvent): void {
  if (isPrintKey(event) && !printedView.peek()?.isReady) {
    event.preventDefault();
    isPrintAwaited.value = true;
  }
}

/** While a view of sheets is in sight: what printing prints, and when. */
export function PrintGuard() {
  useEffect(() => {
    addEventListener('beforeprint', put);
    addEventListener('afterprint', remove);
    addEventListener('keydown', onKey);
    const stop = effect(() => {
      if (!isPrintAwaited.value || !printedView.value?.isReady) return;
      isPrintAwaited.value = false;
      setTimeout(print);
    });
    return () => {
      stop();
      isPrintAwaited.value = false;
      removeEventListener('beforeprint', put);
      removeEventListener('afterprint', remove);
      removeEventListener('keydown', onKey);
      remove();
    };
  }, []);
  return (
    <p class="print-awaited" role="status">
      {isPrintAwaited.value && (
        <>
          {texts.printAwaited}{' '}
          <button type="button" onClick={() => (isPrintAwaited.value = false)}>
            {texts.doNotPrint}
          </button>
        </>
      )}
    </p>
  );
}
