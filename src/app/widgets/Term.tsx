import { type GlossaryId, glossaryWords } from '../../outputs/words/index.ts';
import { glossaryAt } from '../state/glossary.ts';

/** A label that leads to its term in the glossary. */
export function Term({ id, label }: { readonly id: GlossaryId; readonly label: string }) {
  return (
    <button
      type="button"
      class="term"
      aria-haspopup="dialog"
      aria-label={glossaryWords.explain(label)}
      onClick={() => (glossaryAt.value = id)}
    >
      {label}
    </button>
  );
}
