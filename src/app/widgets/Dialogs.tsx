import { useEffect, useRef, useState } from 'preact/hooks';
import type { Problem } from '../../engine/index.ts';
import { problemText, dialogWords as texts } from '../../outputs/words/index.ts';
import { badFile, openFile, openPasted, pasting } from '../state/files.ts';
import { useShelf } from '../state/set-context.ts';
import { LongText, type TextSource } from './LongText.tsx';
import { TableScroll } from './TableScroll.tsx';

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
          <ProblemTable problems={bad.problems} />
          <button type="button" class="primary" onClick={close}>
            {texts.close}
          </button>
        </>
      )}
    </dialog>
  );
}

/** Everything wrong with a description: where, what was expected, what was given, a way out. */
function ProblemTable({ problems }: { readonly problems: readonly Problem[] }) {
  return (
    <>
      <TableScroll label={texts.problems}>
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
            {problems
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
      </TableScroll>
      {problems.length > 200 && <p>{texts.morePlain(problems.length - 200)}</p>}
    </>
  );
}

export function PasteDialog() {
  const now = pasting.value;
  const dialog = useModal(now !== undefined);
  const close = () => {
    pasting.value = undefined;
  };
  return (
    <dialog ref={dialog} class="dialog" aria-labelledby="paste-title" onClose={close}>
      {now && <PasteForm text={now.text} problems={now.problems} onClose={close} />}
    </dialog>
  );
}

interface PasteProps {
  /** What was refused before. */
  readonly text: string;
  readonly problems: readonly Problem[];
  readonly onClose: () => void;
}

function PasteForm({ text, problems, onClose }: PasteProps) {
  const shelf = useShelf();
  const [source, setSource] = useState<TextSource>(text);
  // What is refused at once leaves the form where it is, with another text to begin with.
  useEffect(() => setSource(text), [text]);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (typeof source === 'string') void openPasted(shelf, source);
        else {
          onClose();
          void openFile(shelf, source);
        }
      }}
    >
      <h2 id="paste-title">{texts.pasteTitle}</h2>
      <p class="about">{texts.pasteTakes}</p>
      <LongText id="pasted" label={texts.pasteLabel} rows={12} value={source} onChange={setSource} />
      {problems.length > 0 && (
        <>
          <p class="problem" role="alert">
            {texts.pasteRefused(problems.length)}
          </p>
          <ProblemTable problems={problems} />
        </>
      )}
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
