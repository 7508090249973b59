import type { Problem } from '../../engine/index.ts';
import { withLabels } from '../description/places.ts';
import { written } from '../state/document.ts';

/** What is wrong with a field or part, said where it is. */
export function Problems({ id, problems }: { id: string; problems: readonly Problem[] }) {
  if (problems.length === 0) return null;
  return (
    <p class="problem" id={id}>
      {problems.map(({ path, expected, hint }) => (
        <span key={`${path} ${expected}`}>
          Expected {withLabels(expected, written.value)}
          {hint ? `: ${withLabels(hint, written.value)}` : ''}.{' '}
        </span>
      ))}
    </p>
  );
}
