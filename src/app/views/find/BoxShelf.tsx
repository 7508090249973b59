import { useRef } from 'preact/hooks';
import { isRecord, LARGEST_FILE, readBox, tooLarge, writeText } from '../../../engine/index.ts';
import { findView as texts } from '../../../outputs/words/index.ts';
import { download, fileStem } from '../../state/download.ts';
import { EXAMPLE_BOXES } from '../../state/example-boxes.ts';
import { badFile } from '../../state/files.ts';
import { tell } from '../../state/notices.ts';
import { addBox, chooseBox, openBox, removeBox, shelvedBoxes } from '../../state/open-boxes.ts';
import { textOfFile } from '../../state/text-of-file.ts';
import { FilePicker } from '../../widgets/FilePicker.tsx';

/** Opens a file beside the boxes that are there; if it cannot be read, they are as they were. */
async function openFile(file: File): Promise<void> {
  if (file.size > 4 * LARGEST_FILE) {
    badFile.value = { name: file.name, problems: [tooLarge(file.size)] };
    return;
  }
  const found = await textOfFile(file);
  const read = found.text === undefined ? undefined : readBox(found.text);
  if (found.text === undefined) badFile.value = { name: file.name, problems: [found.problem] };
  else if (!read?.ok) badFile.value = { name: file.name, problems: read?.problems ?? [] };
  else addBox(read.written, file.name);
}

/** The boxes that are kept: choose one, open, save, undo. */
export function BoxShelf() {
  const picker = useRef<HTMLInputElement>(null);
  const box = openBox.value;
  const boxes = shelvedBoxes.value;
  return (
    <div class="find-shelf">
      <div class="find-choice">
        <label for="box-choice">{texts.box}</label>
        <select
          id="box-choice"
          value={box?.id ?? ''}
          onChange={(event) => {
            const { value } = event.currentTarget;
            const example = EXAMPLE_BOXES.find(({ file }) => file === value);
            if (example) addBox(JSON.parse(example.text), example.file);
            else chooseBox(value);
          }}
        >
          {!box && <option value="">—</option>}
          <optgroup label={texts.boxes}>
            {boxes.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </optgroup>
          <optgroup label={texts.exampleBoxes}>
            {EXAMPLE_BOXES.map(({ file, name }) => (
              <option key={file} value={file}>
                {name}
              </option>
            ))}
          </optgroup>
        </select>
      </div>
      <p class="find-tools">
        <button type="button" onClick={() => addBox()}>
          {texts.addBox}
        </button>
        <button type="button" onClick={() => picker.current?.click()}>
          {texts.openBox}
        </button>
        {box && (
          <>
            <button
              type="button"
              onClick={() => {
                const written = box.written.peek();
                const name = isRecord(written) ? String(written.name) : '';
                download(`${fileStem(name, 'box')}.json`, writeText(written));
                box.savedWritten.value = written;
              }}
            >
              {texts.saveBox}
            </button>
            <button
              type="button"
              class="icon"
              disabled={box.undoLabel.value === undefined}
              title={texts.undo(box.undoLabel.value)}
              onClick={box.undo}
            >
              <span aria-hidden="true">↶</span>
              <span class="visually-hidden">{texts.undo(box.undoLabel.value)}</span>
            </button>
            <button
              type="button"
              class="icon"
              disabled={box.redoLabel.value === undefined}
              title={texts.redo(box.redoLabel.value)}
              onClick={box.redo}
            >
              <span aria-hidden="true">↷</span>
              <span class="visually-hidden">{texts.redo(box.redoLabel.value)}</span>
            </button>
            <button
              type="button"
              onClick={() => {
                const name = boxes.find(({ id }) => id === box.id)?.name ?? '';
                const putBack = removeBox();
                tell(texts.removed(name), { key: 'box-removed', action: { label: texts.putBack, run: putBack } });
              }}
            >
              {texts.removeBox}
            </button>
          </>
        )}
      </p>
      {!box && <p class="quiet">{texts.noBox}</p>}
      <FilePicker
        picker={picker}
        accept=".json,application/json"
        label={texts.boxPicker}
        onFile={(file) => void openFile(file)}
      />
    </div>
  );
}
