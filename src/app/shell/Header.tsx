import { useRef } from 'preact/hooks';
import { valueAtPath } from '../../engine/index.ts';
import { useDraft } from '../editing/use-draft.ts';
import { fileName, isSaved, redo, redoLabel, undo, undoLabel, written } from '../state/document.ts';
import { EXAMPLES } from '../state/examples.ts';
import { openExample, openFile, saveFile, showPaste } from '../state/files.ts';
import { type Theme, theme } from '../state/view.ts';
import { Menu } from './Menu.tsx';
import { ViewChoice } from './Views.tsx';

const NEXT_THEME: Readonly<Record<Theme, Theme>> = { auto: 'light', light: 'dark', dark: 'auto' };
const THEME_WORDS: Readonly<Record<Theme, string>> = { auto: 'as the device', light: 'light', dark: 'dark' };

export function Header() {
  const picker = useRef<HTMLInputElement>(null);
  const name = useDraft(['name'], String(valueAtPath(written.value, ['name']) ?? ''), (text) => text);
  return (
    <header class="header">
      <h1 class="wordmark">Faintwave</h1>
      <div class="set-name">
        <input type="text" class="name-input" aria-label="Name of the set" autocomplete="off" {...name} />
        <span class="file-name">
          {fileName.value}
          {isSaved.value ? '' : ' · changed'}
        </span>
      </div>
      <ViewChoice />
      <div class="tools">
        <Menu label="Open">
          <button type="button" onClick={() => picker.current?.click()}>
            A file… <kbd>Ctrl O</kbd>
          </button>
          <button type="button" onClick={showPaste}>
            Paste a description…
          </button>
          <p class="menu-title">Begin with an example</p>
          {EXAMPLES.map((example) => (
            <button key={example.file} type="button" onClick={() => openExample(example)}>
              {example.name}
            </button>
          ))}
        </Menu>
        <input
          ref={picker}
          id="open-file"
          class="visually-hidden"
          type="file"
          accept=".json,application/json"
          tabIndex={-1}
          aria-label="Open a file"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            // The same file may be chosen again after it was mended.
            event.currentTarget.value = '';
            if (file) void openFile(file);
          }}
        />
        <button type="button" onClick={() => void saveFile()} title="Ctrl S">
          Save
        </button>
        <button
          type="button"
          class="icon"
          disabled={undoLabel.value === undefined}
          onClick={undo}
          title={undoLabel.value === undefined ? 'Nothing to undo' : `Undo: ${undoLabel.value} (Ctrl Z)`}
        >
          <span aria-hidden="true">↶</span>
          <span class="visually-hidden">Undo {undoLabel.value}</span>
        </button>
        <button
          type="button"
          class="icon"
          disabled={redoLabel.value === undefined}
          onClick={redo}
          title={redoLabel.value === undefined ? 'Nothing to redo' : `Redo: ${redoLabel.value} (Ctrl Shift Z)`}
        >
          <span aria-hidden="true">↷</span>
          <span class="visually-hidden">Redo {redoLabel.value}</span>
        </button>
        <button
          type="button"
          class="icon"
          onClick={() => {
            theme.value = NEXT_THEME[theme.value];
          }}
          title={`Colours: ${THEME_WORDS[theme.value]}`}
        >
          <span aria-hidden="true">◐</span>
          <span class="visually-hidden">Colours: {THEME_WORDS[theme.value]}</span>
        </button>
      </div>
    </header>
  );
}
