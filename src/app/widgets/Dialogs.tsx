import { useEffect, useRef, useState } from 'preact/hooks';
import { problemText, dialogWords as texts } from '../../outputs/words/index.ts';
import { badFile, isPasting, openText } from '../state/files.ts';
import { useOpenSet } from '../state/set-context.ts';
import { LongText, type TextSource } from './LongText.tsx';

/** Keeps a modal dialog open exactly while `open` holds. */
function useModal(open: boolean) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (open && !dialog.current?.open) dialog.current?.showModal();
    if (!open && dialog.current?.open) dialog.current.close();
  }, [open]);
  return dialog;
}

/** A file that could not be read: everything wrong with it at once, and the assurance that nothing was touched. */
export function BadFileDialog() {
  const bad = badFile.value;
  const dialog = useModal(bad !== undefined);
  const close = () => {
    badFile.value = undefined;
  };
  return (
    <dialog ref={dialog} class="dialog" aria-labelledby="bad-file-title" onClose={close}>
      {bad && (
        <>
          <h2 id="bad-file-title">{texts.badFile(bad.name)}</h2>
          <p>{texts.problemCount(bad.problems.length)}</p>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long table must scroll from the keyboard */}
          <section class="table-scroll" tabIndex={0} aria-label={texts.problems}>
            <table class="problems-table">
              <thead>
                <tr>
                  <th scope="col">{texts.columns.where}</th>
                  <th scope="col">{texts.columns.expected}</th>
                  <th scope="col">{texts.columns.given}</th>
                  <th scope="col">{texts.columns.hint}</th>
                </tr>
              </thead>
              <tbody>
                {bad.problems
                  .slice(0, 200)
                  .map((problem) => problemText(problem))
                  .map((problem) => (
                    <tr key={problem.path + problem.expected}>
                      <td>
                        <code>{problem.path || texts.wholeFile}</code>
                      </td>
                      <td>{problem.expected}</td>
                      <td>{problem.received}</td>
                      <td>{problem.hint}</td>
                    </tr>
                  ))}
              </tbody>
            </table>
          </section>
          {bad.problems.length > 200 && <p>{texts.morePlain(bad.problems.length - 200)}</p>}
          <button type="button" class="primary" onClick={close}>
            {texts.close}
          </button>
        </>
      )}
    </dialog>
  );
}

export function PasteDialog() {
  const dialog = useModal(isPasting.value);
  const close = () => {
    isPasting.value = false;
  };
  return (
    <dialog ref={dialog} class="dialog" aria-labelledby="paste-title" onClose={close}>
      {isPasting.value && <PasteForm onClose={close} />}
    </dialog>
  );
}

function PasteForm({ onClose }: { readonly onClose: () => void }) {
  const set = useOpenSet();
  const [source, setSource] = useState<TextSource>('');
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        onClose();
        if (typeof source === 'string') openText(set, source, 'pasted.json');
      }}
    >
      <h2 id="paste-title">{texts.pasteTitle}</h2>
      <LongText id="pasted" label={texts.pasteLabel} rows={12} value={source} onChange={setSource} />
      <p class="buttons">
        <button type="submit" class="primary">
          {texts.openPasted}
        </button>
        <button type="button" onClick={onClose}>
          {texts.cancel}
        </button>
      </p>
    </form>
  );
}
