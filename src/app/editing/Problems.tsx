import type { Problem } from '../../engine/index.ts';
import { problemText, problemWords } from '../../outputs/words/index.ts';
import { nameOf } from '../description/places.ts';
import { standInText } from '../description/stand-in-text.ts';
import { useEdited } from '../state/edited.ts';

/** What is wrong with a field or part, said where it is. */
export function Problems({ id, problems }: { id: string; problems: readonly Problem[] }) {
  const { written, standIns } = useEdited();
  if (problems.length === 0) return null;
  return (
    <p class="problem" id={id}>
      {problems
        .map((problem) => problemText(problem, nameOf(written.value)))
        .map(({ path, expected, hint }) => (
          <span key={`${path} ${expected}`}>{problemWords.atField(expected, hint)} </span>
        ))}
      {standInText(standIns.value, problems[0].path)}
    </p>
  );
}
