import { useMemo } from 'preact/hooks';
import { type Scene, sceneToSvg } from '../../outputs/scene/index.ts';
import { widgetWords } from '../../outputs/words/index.ts';
import { DrawnSvg } from './DrawnSvg.tsx';
import { useLater, useNear } from './use-near.ts';

interface Props<Data> {
  title: string;
  data: Data;
  draw: (data: Data, size: { width: number }) => Scene;
}

/** A plot at the width there is, with its text equivalent a click away. */
export function Plot<Data>({ title, data, draw }: Props<Data>) {
  const { width, isNear, holder } = useNear();
  const late = useLater(data, isNear);
  const scene = useMemo(() => (width > 0 ? draw(late, { width }) : undefined), [late, draw, width]);
  return (
    <figure class="plot">
      <figcaption>{title}</figcaption>
      <div ref={holder} class="drawing">
        {scene && <SceneView scene={scene} />}
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

/** A scene as it stands; the writer of SVG escapes every text in it. */
export function SceneView({ scene }: { scene: Scene }) {
  const svg = useMemo(() => sceneToSvg(scene), [scene]);
  return <DrawnSvg svg={svg} />;
}
