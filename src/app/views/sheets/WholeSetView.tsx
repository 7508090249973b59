import { useId, useMemo, useState } from 'preact/hooks';
import { type BoardLayout, setView, standpointFor } from '../../../outputs/sheets/index.ts';
import { setViewWords as texts } from '../../../outputs/words/index.ts';
import { SceneView } from '../../widgets/Plot.tsx';
import { useNear } from '../../widgets/use-near.ts';

/** Pixels for a millimetre of the drawing: its letters are then 12 px at any width. */
const PIXELS = 4.5;
const HEIGHT = 0.62;

/** The whole set to scale, turned by two sliders; nothing moves by itself. */
export function WholeSetView({ board }: { readonly board: BoardLayout }) {
  const first = useMemo(() => standpointFor(board), [board]);
  const [chosenTurn, setTurn] = useState<number | undefined>();
  const [chosenElevation, setElevation] = useState<number | undefined>();
  const [turn, elevation] = [chosenTurn ?? first.turn, chosenElevation ?? first.elevation];
  const { width, holder } = useNear();
  const id = useId();
  const scene = useMemo(() => {
    const w = width / PIXELS;
    return width > 0 ? setView(board, { w, h: w * HEIGHT }, { from: { turn, elevation }, tags: true }) : undefined;
  }, [board, width, turn, elevation]);
  const slider = (name: 'turn' | 'tilt', value: number, set: (value: number) => void, min: number, max: number) => (
    <div>
      <label for={`${id}-${name}`}>{texts[name]}</label>
      <input
        id={`${id}-${name}`}
        type="range"
        min={min}
        max={max}
        step={5}
        value={value}
        aria-valuetext={texts.degrees(value)}
        onInput={(event) => set(Number(event.currentTarget.value))}
      />
    </div>
  );
  return (
    <figure class="set-view">
      <figcaption>{texts.title}</figcaption>
      <div ref={holder} class="drawing">
        {scene && <SceneView scene={scene} />}
      </div>
      <div class="set-view-turn">
        {slider('turn', turn, setTurn, -180, 180)}
        {slider('tilt', elevation, setElevation, 15, 75)}
      </div>
      <ul class="set-view-names">
        {board.placed.map(({ part }) => (
          <li key={part.tag}>{texts.name(part)}</li>
        ))}
      </ul>
      <p class="set-view-note">{texts.note}</p>
    </figure>
  );
}
