import { useRef } from 'preact/hooks';
import { headerWords as texts } from '../../outputs/words/index.ts';
import { writtenName } from '../description/written-name.ts';
import { useDraft } from '../editing/use-draft.ts';
import { isBeginning } from '../state/begin.ts';
import { EXAMPLES } from '../state/examples.ts';
import { openExample, openFile, saveFile, showPaste } from '../state/files.ts';
import { glossaryAt } from '../state/glossary.ts';
import { handbookAt, LICENCES } from '../state/handbook.ts';
import { type Theme, theme, view } from '../state/page-view.ts';
import { useOpenSet, useShelf } from '../state/set-context.ts';
import { FilePicker } from '../widgets/FilePicker.tsx';
import { Menu } from './Menu.tsx';
import { ViewChoice } from './Views.tsx';

const NEXT_THEME: Readonly<Record<Theme, Theme>> = { auto: 'light', light: 'dark', dark: 'auto' };

export function Header() {
  const set = useOpenSet();
  const shelf = useShelf();
  const { written, fileName, isSaved, undo, undoLabel, redo, redoLabel } = set;
  const picker = useRef<HTMLInputElement>(null);
  const name = useDraft(['name'], writtenName(written.value), (text) => text);
  return (
    <header class="header">
      <h1 class="wordmark">{texts.product}</h1>
      <div class="set-name">
        <input type="text" class="name-input" aria-label={texts.nameOfSet} autocomplete="off" {...name} />
        <span class="file-name">
          {fileName.value}
          {isSaved.value ? '' : texts.changed}
        </span>
      </div>
      <button
        type="button"
        class="to-shelf"
        aria-pressed={view.value === 'shelf'}
        onClick={() => {
          view.value = view.value === 'shelf' ? 'set' : 'shelf';
        }}
        title={texts.shelfTip}
      >
        {texts.shelf}
      </button>
      <ViewChoice />
      <div class="tools">
        <Menu label={texts.open}>
          <button type="button" onClick={() => (isBeginning.value = true)}>
            {texts.fromBench}
          </button>
          <button type="button" onClick={() => picker.current?.click()}>
            {texts.openFile} <kbd>{texts.openFileKey}</kbd>
          </button>
          <button type="button" onClick={showPaste}>
            {texts.paste}
          </button>
          <p class="menu-title">{texts.examples}</p>
          {EXAMPLES.map((example) => (
            <button key={example.file} type="button" onClick={() => openExample(shelf, example)}>
              {example.name}
            </button>
          ))}
        </Menu>
        <FilePicker
          picker={picker}
          id="open-file"
          accept=".json,application/json"
          label={texts.filePicker}
          onFile={(file) => void openFile(shelf, file)}
        />
        <button type="button" onClick={() => void saveFile(set)} title={texts.saveKey}>
          {texts.save}
        </button>
        <button
          type="button"
          class="icon"
          disabled={undoLabel.value === undefined}
          onClick={undo}
          title={texts.undoTip(undoLabel.value)}
        >
          <span aria-hidden="true">↶</span>
          <span class="visually-hidden">{texts.undo(undoLabel.value)}</span>
        </button>
        <button
          type="button"
          class="icon"
          disabled={redoLabel.value === undefined}
          onClick={redo}
          title={texts.redoTip(redoLabel.value)}
        >
          <span aria-hidden="true">↷</span>
          <span class="visually-hidden">{texts.redo(redoLabel.value)}</span>
        </button>
        <button
          type="button"
          class="icon"
          onClick={() => {
            theme.value = NEXT_THEME[theme.value];
          }}
          title={texts.colours[theme.value]}
        >
          <span aria-hidden="true">◐</span>
          <span class="visually-hidden">{texts.colours[theme.value]}</span>
        </button>
      </div>
      <div class="help">
        <Menu label={texts.help} icon="?">
          <button
            type="button"
            onClick={() => {
              if (handbookAt.value?.chapter === LICENCES) handbookAt.value = undefined;
              view.value = 'handbook';
            }}
          >
            {texts.handbook}
          </button>
          <button type="button" onClick={() => (glossaryAt.value = 'beginning')}>
            {texts.glossary}
          </button>
          <button
            type="button"
            onClick={() => {
              handbookAt.value = { chapter: LICENCES };
              view.value = 'handbook';
            }}
          >
            {texts.licences}
          </button>
        </Menu>
      </div>
    </header>
  );
}
