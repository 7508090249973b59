import { compareView } from '../../../outputs/words/index.ts';
import { besideOf, comparedIds, MOST_BESIDE } from '../../state/compared-sets.ts';
import { view } from '../../state/page-view.ts';
import { useOpenSet, useShelf } from '../../state/set-context.ts';

const { shelf: texts } = compareView;

/** Whether a set shall stand beside the one that is open. */
export function CompareChoice({ id, name }: { readonly id: string; readonly name: string }) {
  const beside = useBeside();
  const isChosen = beside.includes(id);
  const isFull = !isChosen && beside.length >= MOST_BESIDE;
  return (
    <button
      type="button"
      class="shelf-compare"
      aria-pressed={isChosen}
      aria-label={texts.compareNamed(name)}
      disabled={isFull}
      title={isFull ? texts.full : undefined}
      onClick={() => {
        comparedIds.value = isChosen ? beside.filter((one) => one !== id) : [...beside, id];
      }}
    >
      {texts.compare}
    </button>
  );
}

/** To the sets side by side. */
export function CompareButton() {
  const count = useBeside().length;
  return (
    <button type="button" class={count > 0 ? 'primary' : ''} onClick={() => (view.value = 'compare')}>
      {texts.start(count)}
    </button>
  );
}

/** The chosen sets, without the one in focus. */
function useBeside(): readonly string[] {
  const shelf = useShelf();
  return besideOf(comparedIds.value, useOpenSet().id, shelf.entries.value ?? []);
}
