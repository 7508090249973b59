import { useMemo } from 'preact/hooks';
import type { SetDescription } from '../../engine/index.ts';
import {
  drawAerial,
  drawCapacitor,
  drawCoil,
  drawDetector,
  drawLoad,
  type PaperRoom,
  tapsOf,
} from '../../outputs/drawings/index.ts';
import type { Scene } from '../../outputs/scene/index.ts';
import { useOpenSet } from '../state/set-context.ts';
import { SceneView } from './Plot.tsx';
import { useLater, useNear } from './use-near.ts';

/** Which part to draw; a coil by its place in the list. The aerial is drawn with its earth. */
export type DrawnPart = 'aerial' | 'tuning' | 'detector' | 'load' | { readonly coil: number };

/** Pixels for a millimetre of the drawing's paper: its letters, 3 mm high, are then as large as the page's own. */
const SCALE = 3.8;
const NARROWEST = 84;
const WIDEST = 130;
/** The sketches that are not to scale keep their size. */
const SKETCH: PaperRoom = { width: 104, height: 62 };

function roomFor(pixels: number): PaperRoom {
  const width = Math.min(WIDEST, Math.max(NARROWEST, Math.round(pixels / SCALE)));
  return { width, height: Math.round(width * 0.74) };
}

function draw(set: SetDescription, part: DrawnPart, position: number, room: PaperRoom): Scene | undefined {
  if (typeof part === 'object') {
    const coil = set.coils[part.coil];
    return coil && drawCoil(coil, { ...room, taps: tapsOf(set, part.coil) });
  }
  switch (part) {
    case 'aerial':
      return drawAerial(set.aerial, set.earth, room);
    case 'tuning':
      return drawCapacitor(set.tuning, { ...room, position });
    case 'detector':
      return drawDetector(set.detector, SKETCH);
    case 'load':
      return drawLoad(set.load, set.load.transformer ? {} : SKETCH);
  }
}

/** A part to scale, of the last valid set, its scale and sizes written in. */
export function Drawing({ part }: { part: DrawnPart }) {
  const { receptionSet, pointerPosition } = useOpenSet();
  const { width, isNear, holder } = useNear();
  const set = useLater(receptionSet.value, isNear);
  const position = useLater(part === 'tuning' ? (pointerPosition.value ?? 0.5) : 0, isNear);
  const scene = useMemo(() => {
    try {
      return set && width > 0 ? draw(set, part, position, roomFor(width)) : undefined;
    } catch {
      // Half-typed sizes may be beyond drawing; the field says what is wrong.
      return undefined;
    }
  }, [set, typeof part === 'object' ? part.coil : part, position, width]);
  return (
    <figure class="drawing part-drawing" ref={holder}>
      {scene && <SceneView scene={scene} />}
    </figure>
  );
}
