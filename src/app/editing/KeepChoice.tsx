import type { Path } from '../../engine/index.ts';
import { wantTexts as texts } from '../../outputs/words/index.ts';
import { fieldPath } from '../description/places.ts';
import { pathText } from '../description/schema-at.ts';
import { keptIn, writeKept } from '../description/wants.ts';
import { useEdited } from '../state/edited.ts';

/** Whether suggestions leave a part as it is. */
export function KeepChoice({ path }: { path: Path }) {
  const { written, change } = useEdited();
  const text = pathText(path);
  const isKept = keptIn(written.value).includes(text);
  return (
    <label class="keep-choice">
      <input
        type="checkbox"
        checked={isKept}
        onChange={(event) => {
          const keeps = event.currentTarget.checked;
          change((base) => writeKept(base, text, keeps), { label: texts.keep });
        }}
      />{' '}
      {texts.keepPart}
      <span class="visually-hidden"> ({fieldPath(text, written.value)})</span>
    </label>
  );
}
