import { useMemo } from 'preact/hooks';
import { termPicture } from '../../outputs/drawings/index.ts';
import type { GlossaryId } from '../../outputs/words/index.ts';
import { SceneView } from './Plot.tsx';

/** The small picture of a term; nothing for a term without one. */
export function TermPicture({ id }: { readonly id: GlossaryId }) {
  const scene = useMemo(() => termPicture(id), [id]);
  return (
    scene && (
      <figure class="term-picture">
        <SceneView scene={scene} />
      </figure>
    )
  );
}
