import { confirmed, isAssumed, type Path, placeText } from '../../engine/index.ts';
import { assumedWords as texts } from '../../outputs/words/index.ts';
import { pathText } from '../description/schema-at.ts';
import { useEdited } from '../state/edited.ts';
import { usePiece } from '../state/pieces.ts';
import { focusIfLost } from '../widgets/focus-if-lost.ts';

/** Beside a value that is assumed: says so, and confirms it when pressed. */
export function AssumedMark({ path, label }: { readonly path: Path; readonly label: string }) {
  const { change } = useEdited();
  const place = placeText(path);
  const isHere = usePiece(place, ({ written }) => isAssumed(written.value, path));
  if (!isHere) return null;
  return (
    <button
      type="button"
      class="assumed-mark"
      title={texts.confirmTip}
      aria-label={texts.confirmOne(label)}
      onClick={() => {
        change((base) => confirmed(base, placesAround(path)), { label: texts.confirmed });
        focusIfLost(() => document.getElementById(`f-${pathText(path)}`));
      }}
    >
      {texts.mark}
    </button>
  );
}

/** The place itself, and what it lies in. */
const placesAround = (path: Path): string[] => path.map((_, depth) => placeText(path.slice(0, depth + 1)));
