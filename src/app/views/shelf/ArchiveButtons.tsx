import { useRef, useState } from 'preact/hooks';
import { errorText, findView, shelfWords as texts } from '../../../outputs/words/index.ts';
import { downloadFile } from '../../state/download.ts';
import { tell } from '../../state/notices.ts';
import { boxEntries, shelveBox, unreadableBoxes } from '../../state/open-boxes.ts';
import { usePlaces, useShelf } from '../../state/set-context.ts';
import { type KeptBeside, makeArchive, readArchive } from '../../state/shelf/archive.ts';
import { FilePicker } from '../../widgets/FilePicker.tsx';

/** All sets to one file, and back from it. */
export function ArchiveButtons() {
  const shelf = useShelf();
  const places = usePlaces();
  const beside = {
    boxes: {
      all: () => boxEntries.peek(),
      unread: () => unreadableBoxes.peek().map(({ name }) => name),
      add: async ({ written, changed, fileName = findView.boxFile }: KeptBeside) =>
        shelveBox({ written, fileName, changed }),
    },
    places: {
      all: () => places.all.peek() ?? [],
      unread: () => (places.isUnread.peek() ? [texts.keptPlaces] : []),
      add: async ({ written }: KeptBeside) => (await places.add(written)) !== undefined,
    },
  };
  const picker = useRef<HTMLInputElement>(null);
  const [progress, setProgress] = useState('');
  const entries = shelf.entries.value ?? [];
  const during = async (work: () => Promise<string>) => {
    let outcome: string;
    try {
      outcome = await work();
    } catch (error) {
      outcome = errorText(error);
    }
    setProgress('');
    tell(outcome, { key: 'archive', stays: true });
  };
  const save = () =>
    during(async () => {
      await places.refresh();
      const {
        blob,
        sets,
        boxes,
        places: kept,
        leftOut,
        inPart,
      } = await makeArchive(shelf, entries, beside, (done) => setProgress(texts.working(done, entries.length)));
      downloadFile(texts.archiveName(new Date().toISOString().slice(0, 10)), blob);
      return [
        texts.archiveSaved(sets, boxes, kept),
        ...(leftOut.length > 0 ? [texts.archiveWithout(leftOut)] : []),
        ...(inPart.length > 0 ? [texts.archiveInPart(inPart)] : []),
      ].join(' ');
    });
  const open = (file: File) =>
    during(async () => {
      await places.refresh();
      const outcome = await readArchive(shelf, file, beside, (done, all) => setProgress(texts.working(done, all)));
      if ('refused' in outcome)
        return outcome.refused === 'too-large' ? texts.archiveTooLarge(file.name) : texts.notAnArchive(file.name);
      const { added, merged, same, boxes, places: placed, leftOut } = outcome;
      return [
        texts.archiveRead(added, merged, same),
        ...(boxes + placed > 0 ? [texts.archiveBeside(boxes, placed)] : []),
        ...(leftOut.length > 0 ? [texts.archiveLeftOut(leftOut)] : []),
      ].join(' ');
    });
  return (
    <>
      <button type="button" disabled={progress !== '' || entries.length === 0} onClick={() => void save()}>
        {texts.exportAll}
      </button>
      <button type="button" disabled={progress !== ''} onClick={() => picker.current?.click()}>
        {texts.importArchive}
      </button>
      <FilePicker
        picker={picker}
        accept=".zip,application/zip"
        label={texts.archivePicker}
        onFile={(file) => void open(file)}
      />
      <span class="quiet" role="status">
        {progress}
      </span>
    </>
  );
}
