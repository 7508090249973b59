import { beginWords as texts } from '../../../outputs/words/index.ts';
import { isBeginning } from '../../state/begin.ts';
import { EXAMPLES } from '../../state/examples.ts';
import { useOpenSet } from '../../state/set-context.ts';

/** As long as an example stands there as it came: the way to a set of one's own. */
export function BeginOwn() {
  const { fileName, isSaved } = useOpenSet();
  if (!isSaved.value || !EXAMPLES.some(({ file }) => file === fileName.value)) return null;
  return (
    <p class="begin-own">
      <span class="begin-own-words">{texts.invite}</span>{' '}
      <button type="button" class="chip" onClick={() => (isBeginning.value = true)}>
        {texts.inviteButton}
      </button>
    </p>
  );
}
