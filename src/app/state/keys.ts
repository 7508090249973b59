import { type OpeningPlace, openFile, openPasted, saveFile } from './files.ts';
import type { OpenSets } from './open-sets.ts';

const isField = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.matches('input:not([type=range]):not([type=radio]):not([type=checkbox]), textarea');

/** Keys, dropping and pasting that work anywhere on the page, for the set in focus. Called once. */
export function listenToThePage({ focused }: Pick<OpenSets, 'focused'>, place: OpeningPlace): void {
  addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key === 's') {
      event.preventDefault();
      void saveFile(focused.peek(), { as: event.shiftKey });
    } else if (key === 'o') {
      event.preventDefault();
      document.getElementById('open-file')?.click();
    } else if ((key === 'z' || key === 'y') && !isTyping(event.target)) {
      event.preventDefault();
      if (key === 'y' || event.shiftKey) focused.peek().redo();
      else focused.peek().undo();
    }
  });
  addEventListener('dragover', (event) => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  });
  addEventListener('drop', (event) => {
    // What the file was dropped on has taken it.
    if (event.defaultPrevented) return;
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    event.preventDefault();
    void openFile(place, file);
  });
  addEventListener('paste', (event) => {
    if (isField(event.target)) return;
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (text.trim() === '') return;
    event.preventDefault();
    void openPasted(place, text);
  });
}

/** In a field with text not yet taken, undo is the field's own. */
function isTyping(target: EventTarget | null): boolean {
  return isField(target) && target instanceof HTMLElement && target.dataset.typing === 'true';
}
