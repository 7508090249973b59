import { useEffect, useRef } from 'preact/hooks';
import { badFile, isPasting, openText } from '../state/files.ts';

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
          <h2 id="bad-file-title">“{bad.name}” cannot be opened as it is</h2>
          <p>
            {bad.problems.length === 1 ? 'One thing is' : `${bad.problems.length} things are`} wrong with it. Your own
            work is untouched.
          </p>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long table must scroll from the keyboard */}
          <section class="table-scroll" tabIndex={0} aria-label="Problems">
            <table class="problems-table">
              <thead>
                <tr>
                  <th scope="col">Where</th>
                  <th scope="col">Expected</th>
                  <th scope="col">Found</th>
                  <th scope="col">Hint</th>
                </tr>
              </thead>
              <tbody>
                {bad.problems.slice(0, 200).map((problem) => (
                  <tr key={problem.path + problem.expected}>
                    <td>
                      <code>{problem.path || 'the file'}</code>
                    </td>
                    <td>{problem.expected}</td>
                    <td>{problem.received}</td>
                    <td>{problem.hint}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
          {bad.problems.length > 200 && <p>and {bad.problems.length - 200} more.</p>}
          <button type="button" class="primary" onClick={close}>
            Close
          </button>
        </>
      )}
    </dialog>
  );
}

export function PasteDialog() {
  const dialog = useModal(isPasting.value);
  const text = useRef<HTMLTextAreaElement>(null);
  const close = () => {
    isPasting.value = false;
  };
  return (
    <dialog ref={dialog} class="dialog" aria-labelledby="paste-title" onClose={close}>
      {isPasting.value && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            const pasted = text.current?.value ?? '';
            close();
            openText(pasted, 'pasted.json');
          }}
        >
          <h2 id="paste-title">Paste a description</h2>
          <label for="pasted">The text of a set’s file</label>
          <textarea id="pasted" ref={text} rows={12} spellcheck={false} />
          <p class="buttons">
            <button type="submit" class="primary">
              Open it
            </button>
            <button type="button" onClick={close}>
              Cancel
            </button>
          </p>
        </form>
      )}
    </dialog>
  );
}
