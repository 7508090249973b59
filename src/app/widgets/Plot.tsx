import { useMemo, useRef, useState } from 'preact/hooks';
import type { PlotReadout } from '../../outputs/plots/index.ts';
import { type Scene, sceneToSvg } from '../../outputs/scene/index.ts';
import { widgetWords } from '../../outputs/words/index.ts';
import { DrawnSvg } from './DrawnSvg.tsx';
import { useLater, useNear } from './use-near.ts';

interface Props<Data> {
  title: string;
  data: Data;
  draw: (data: Data, size: { width: number }) => Scene;
  /** What the plot says under a pointer, drawn at the same size; left out: it is not read off. */
  read?: (data: Data, size: { width: number }) => PlotReadout | undefined;
}

/** A plot at the width there is, with its text equivalent a click away. */
export function Plot<Data>({ title, data, draw, read }: Props<Data>) {
  const { width, isNear, holder } = useNear();
  const late = useLater(data, isNear);
  const scene = useMemo(() => (width > 0 ? draw(late, { width }) : undefined), [late, draw, width]);
  const readout = useMemo(() => (width > 0 ? read?.(late, { width }) : undefined), [late, read, width]);
  return (
    <figure class="plot">
      <figcaption>{title}</figcaption>
      <div ref={holder} class="drawing">
        {scene && (readout ? <ReadOff title={title} scene={scene} readout={readout} /> : <SceneView scene={scene} />)}
      </div>
      {scene && (
        <details class="in-words">
          <summary>{widgetWords.inWords}</summary>
          <p>{scene.description}</p>
        </details>
      )}
    </figure>
  );
}

/** Places that Page Up and Page Down go over. */
const FAR = 10;

/** A plot with a hair line that follows the pointer and the arrow keys, and a line below it that says what stands there. */
function ReadOff({ title, scene, readout }: { title: string; scene: Scene; readout: PlotReadout }) {
  const { box, places, at } = readout;
  const [chosen, setChosen] = useState<number | undefined>();
  const slider = useRef<HTMLDivElement>(null);
  const last = places.length - 1;
  const index = chosen === undefined ? undefined : Math.min(chosen, last);
  const reading = index === undefined ? undefined : at(index);
  const choose = (next: number) => setChosen(Math.max(0, Math.min(last, next)));
  const point = (event: PointerEvent & { currentTarget: HTMLElement }) => {
    const drawn = event.currentTarget.getBoundingClientRect();
    choose(nearest(places, ((event.clientX - drawn.left) / drawn.width) * scene.width));
  };
  const key = (event: KeyboardEvent) => {
    const from = index ?? Math.round(last / 2);
    const next: Readonly<Record<string, number>> = {
      ArrowLeft: from - 1,
      ArrowDown: from - 1,
      ArrowRight: from + 1,
      ArrowUp: from + 1,
      PageDown: from - FAR,
      PageUp: from + FAR,
      Home: 0,
      End: last,
    };
    if (!Object.hasOwn(next, event.key) || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    event.stopPropagation();
    choose(next[event.key]);
  };
  const share = (part: number, whole: number): string => `${(part / whole) * 100}%`;
  return (
    <>
      <div
        class="plot-reader"
        onPointerMove={point}
        onPointerDown={(event) => {
          point(event);
          slider.current?.focus({ preventScroll: true });
        }}
      >
        <SceneView scene={scene} />
        <div
          ref={slider}
          class="plot-slider"
          role="slider"
          tabIndex={0}
          aria-label={widgetWords.readOff(title)}
          aria-valuemin={0}
          aria-valuemax={last}
          aria-valuenow={index ?? Math.round(last / 2)}
          aria-valuetext={reading ?? widgetWords.readOffHint}
          style={{
            left: share(box.x, scene.width),
            width: share(box.w, scene.width),
            top: share(box.y, scene.height),
            height: share(box.h, scene.height),
          }}
          onKeyDown={key}
        >
          {index !== undefined && <span class="hair-line" style={{ left: share(places[index] - box.x, box.w) }} />}
        </div>
      </div>
      <p class="plot-reading" aria-hidden="true">
        {reading ?? <span class="quiet">{widgetWords.readOffHint}</span>}
      </p>
    </>
  );
}

/** @param places rising */
function nearest(places: readonly number[], at: number): number {
  let best = 0;
  for (const [i, place] of places.entries()) if (Math.abs(place - at) < Math.abs(places[best] - at)) best = i;
  return best;
}

/** A scene as it stands; the writer of SVG escapes every text in it. */
export function SceneView({ scene }: { scene: Scene }) {
  const svg = useMemo(() => sceneToSvg(scene), [scene]);
  return <DrawnSvg svg={svg} />;
}
