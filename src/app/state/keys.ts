import { redo, undo } from './document.ts';
import { openFile, openText, saveFile } from './files.ts';

const isField = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.matches('input:not([type=range]):not([type=radio]):not([type=checkbox]), textarea');

/** Keys, dropping and pasting that work anywhere on the page. Called once. */
export function listenToThePage(): void {
  addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key === 's') {
      event.preventDefault();
      void saveFile({ as: event.shiftKey });
    } else if (key === 'o') {
      event.preventDefault();
      document.getElementById('open-file')?.click();
    } else if ((key === 'z' || key === 'y') && !isTyping(event.target)) {
      event.preventDefault();
      if (key === 'y' || event.shiftKey) redo();
      else undo();
    }
  });
  addEventListener('dragover', (event) => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  });
  addEventListener('drop', (event) => {
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    event.preventDefault();
    void openFile(file);
  });
  addEventListener('paste', (event) => {
    if (isField(event.target)) return;
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (text.trim() === '') return;
    event.preventDefault();
    openText(text, 'pasted.json');
  });
}

/** In a field with text not yet taken, undo is the field's own. */
function isTyping(target: EventTarget | null): boolean {
  return isField(target) && target instanceof HTMLElement && target.dataset.typing === 'true';
}
