import { useMemo } from 'preact/hooks';
import type { SetDescription } from '../../engine/set/description.ts';
import { drawAerial, drawCapacitor, drawCoil, drawDetector, drawLoad, tapsOf } from '../../outputs/drawings/index.ts';
import type { Scene } from '../../outputs/scene/index.ts';
import { pointerPosition, receptionSet } from '../state/reception.ts';
import { SceneView } from './Plot.tsx';

/** Which part to draw; a coil by its place in the list. The aerial is drawn with its earth. */
export type DrawnPart = 'aerial' | 'tuning' | 'detector' | 'load' | { readonly coil: number };

function draw(set: SetDescription, part: DrawnPart, position: number): Scene | undefined {
  if (typeof part === 'object') {
    const coil = set.coils[part.coil];
    return coil && drawCoil(coil, { taps: tapsOf(set, part.coil) });
  }
  switch (part) {
    case 'aerial':
      return drawAerial(set.aerial, set.earth);
    case 'tuning':
      return drawCapacitor(set.tuning, { position });
    case 'detector':
      return drawDetector(set.detector);
    case 'load':
      return drawLoad(set.load);
  }
}

/** A part to scale, as last understood, its scale and sizes written in. */
export function Drawing({ part }: { part: DrawnPart }) {
  const set = receptionSet.value;
  const position = part === 'tuning' ? (pointerPosition.value ?? 0.5) : 0;
  const scene = useMemo(() => {
    try {
      return set && draw(set, part, position);
    } catch {
      // Half-typed sizes may be beyond drawing; the field says what is wrong.
      return undefined;
    }
  }, [set, typeof part === 'object' ? part.coil : part, position]);
  return scene ? (
    <figure class="drawing part-drawing">
      <SceneView scene={scene} />
    </figure>
  ) : null;
}
