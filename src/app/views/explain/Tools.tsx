import type { RefObject } from 'preact';
import {
  isPoint,
  LONGEST,
  limited,
  POINTS,
  SHORTEST,
  type Show,
  SOUND_SPEEDS,
  type SoundSpeed,
  type StoryScene,
  type View,
} from '../../../outputs/explain/index.ts';
import { explainTexts, pointTitles, waveTexts } from '../../../outputs/words/index.ts';
import type { StageHandle } from './Stage.tsx';
import type { useSound } from './use-sound.ts';

interface Props {
  scene: StoryScene;
  stage: RefObject<StageHandle | null>;
  /** Told of every view, straight to the page: a frame must not wait for a new drawing of the controls. */
  span: RefObject<HTMLInputElement | null>;
  spanText: RefObject<HTMLOutputElement | null>;
  zooming: boolean;
  onZooming(zooming: boolean): void;
  frozen: boolean;
  onFrozen(frozen: boolean): void;
  onShow(key: keyof Show, on: boolean): void;
  sound: ReturnType<typeof useSound>;
  /** Zoom from the view as it is to single cycles in its middle. */
  onCloseUp(): void;
  onSound(speed: SoundSpeed): void;
}

const TOGGLES = ['average', 'cover', 'envelope', 'spectrum'] as const;

/** What one does with the picture: zoom, run, draw over it, hear it. */
export function Tools(props: Props) {
  const { scene, frozen, onFrozen, onShow, onSound, sound } = props;
  const texts = explainTexts.stage;
  return (
    <div class="explain-tools">
      {scene.rows.length > 0 && <Zoom {...props} />}
      {scene.picture && (
        <button type="button" aria-pressed={!frozen} onClick={() => onFrozen(!frozen)}>
          {frozen ? texts.run : texts.freeze}
        </button>
      )}
      <div class="explain-toggles">
        {scene.rows.length > 0 &&
          TOGGLES.map((key) => (
            <label key={key} class="explain-check">
              <input
                type="checkbox"
                checked={scene.show?.[key] === true}
                onChange={(event) => onShow(key, event.currentTarget.checked)}
              />{' '}
              {explainTexts.show[key]}
            </label>
          ))}
      </div>
      <Sound {...sound} speed={scene.sound ?? 'real time'} onSpeed={onSound} />
    </div>
  );
}

function Zoom({ scene, stage, span, spanText, zooming, onZooming, onCloseUp }: Props) {
  const texts = explainTexts.stage;
  const zoomBy = (factor: number) => {
    onZooming(false);
    stage.current?.zoom(factor);
  };
  return (
    <div class="explain-zoom">
      <button type="button" class="icon" onClick={() => zoomBy(2)} aria-label={texts.zoomOut}>
        −
      </button>
      <input
        ref={span}
        type="range"
        class="slider"
        min={0}
        max={1000}
        aria-label={texts.span}
        onInput={(event) => {
          onZooming(false);
          const view = stage.current!.view();
          stage.current!.zoom(spanAt(Number(event.currentTarget.value)) / view.span);
        }}
      />
      <button type="button" class="icon" onClick={() => zoomBy(0.5)} aria-label={texts.zoomIn}>
        +
      </button>
      <output ref={spanText}>{waveTexts.span(scene.span)}</output>
      {scene.to && (
        <button type="button" aria-pressed={zooming} onClick={() => onZooming(!zooming)}>
          {texts.slowZoom}
        </button>
      )}
      <button type="button" onClick={onCloseUp}>
        {texts.closeUp}
      </button>
      <button
        type="button"
        onClick={() => {
          onZooming(false);
          stage.current?.show(limited(scene));
        }}
      >
        {texts.start}
      </button>
    </div>
  );
}

type SoundProps = ReturnType<typeof useSound> & { speed: SoundSpeed; onSpeed(speed: SoundSpeed): void };

function Sound({ point, setPoint, sounding, setSounding, slowed, speed, onSpeed }: SoundProps) {
  const texts = explainTexts.stage;
  return (
    <div class="explain-hear">
      <button type="button" aria-pressed={sounding} onClick={() => setSounding(!sounding)}>
        {sounding ? texts.stopSound : texts.hear}
      </button>
      <select
        aria-label={texts.heardPoint}
        value={point}
        onChange={(event) => isPoint(event.currentTarget.value) && setPoint(event.currentTarget.value)}
      >
        {POINTS.map((id) => (
          <option key={id} value={id}>
            {pointTitles[id]}
          </option>
        ))}
      </select>
      <select
        aria-label={texts.speed}
        value={speed}
        onChange={(event) => onSpeed(event.currentTarget.value as SoundSpeed)}
      >
        {SOUND_SPEEDS.map((id) => (
          <option key={id} value={id}>
            {texts.speeds[id]}
          </option>
        ))}
      </select>
      {sounding && speed !== 'silent' && (
        <span role="status" class="quiet">
          {slowed !== undefined
            ? texts.slowed(slowed)
            : point === 'carrier' || point === 'modulated' || point === 'tuned'
              ? texts.silence
              : texts.programme}
        </span>
      )}
    </div>
  );
}

/** Show a view's span on the slider and beside it. */
export function showSpan(view: View, slider: HTMLInputElement | null, output: HTMLOutputElement | null): void {
  if (slider) {
    slider.value = String(spanStep(view.span));
    slider.setAttribute('aria-valuetext', explainTexts.stage.spanValue(view.span));
  }
  if (output) output.textContent = waveTexts.span(view.span);
}

const spanStep = (span: number): number => Math.round((1000 * Math.log(LONGEST / span)) / Math.log(LONGEST / SHORTEST));
const spanAt = (step: number): number => LONGEST * (SHORTEST / LONGEST) ** (step / 1000);
