import { useRef } from 'preact/hooks';
import {
  DETECTOR_CHOICES,
  isPoint,
  isRetuned,
  limited,
  POINTS,
  type Settings,
  SOUND_SPEEDS,
  type SoundSpeed,
  type StoryScene,
} from '../../../outputs/explain/index.ts';
import { detectorName, explainTexts, pointTitles, waveTexts } from '../../../outputs/words/index.ts';
import { TypedLine } from '../../editing/TypedLine.tsx';
import { focusIfLost } from '../../widgets/focus-if-lost.ts';

interface Props {
  scene: StoryScene;
  onEdit(part: Partial<StoryScene>): void;
}

type Row = StoryScene['rows'][number];

/** At most so many rows are legible. */
const MOST_ROWS = 8;

/** The rows of a scene: their points, titles, heights, detectors and order. */
export function SceneRows({ scene, onEdit }: Props) {
  const texts = explainTexts.scenes;
  const { rows } = scene;
  const put = (at: number, row: Row) => onEdit({ rows: rows.map((r, i) => (i === at ? row : r)) });
  const swap = (at: number) => {
    const next = [...rows];
    [next[at - 1], next[at]] = [next[at], next[at - 1]];
    onEdit({ rows: next });
  };
  const addButton = useRef<HTMLButtonElement>(null);
  const remove = (at: number) => {
    onEdit({ rows: rows.filter((_, i) => i !== at) });
    focusIfLost(() => addButton.current);
  };
  return (
    <fieldset class="explain-rows">
      <legend>{texts.rows}</legend>
      {rows.map((row, i) => (
        <div key={i} class="explain-row">
          <select
            aria-label={texts.rowPoint(i + 1)}
            value={row.point}
            onChange={(event) =>
              isPoint(event.currentTarget.value) && put(i, { ...row, point: event.currentTarget.value })
            }
          >
            {POINTS.map((id) => (
              <option key={id} value={id}>
                {pointTitles[id]}
              </option>
            ))}
          </select>
          <TypedLine
            text={row.title ?? ''}
            take={(title) => put(i, withTitle(row, title))}
            maxLength={80}
            aria-label={texts.rowTitle(i + 1)}
            placeholder={pointTitles[row.point]}
          />
          <select
            aria-label={texts.rowHeight(i + 1)}
            value={heightChoiceOf(row)}
            onChange={(event) => put(i, withHeight(row, event.currentTarget.value as HeightChoice))}
          >
            {HEIGHT_CHOICES.map((id) => (
              <option key={id} value={id}>
                {texts.heights[id]}
              </option>
            ))}
          </select>
          <select
            aria-label={texts.rowDetector(i + 1)}
            value={row.with?.detector ?? ''}
            onChange={(event) => put(i, withDetector(row, event.currentTarget.value))}
          >
            <option value="">{texts.sameDetector}</option>
            {DETECTOR_CHOICES.map((id) => (
              <option key={id} value={id}>
                {detectorName(id)}
              </option>
            ))}
          </select>
          {(isRetuned(scene.settings ?? {}) || row.with?.carrier !== undefined) && (
            <select
              aria-label={texts.rowCoil(i + 1)}
              value={coilOf(row)}
              onChange={(event) => put(i, withCoil(row, event.currentTarget.value))}
            >
              {COILS.map((id) => (
                <option key={id} value={id}>
                  {texts.coils[id]}
                </option>
              ))}
            </select>
          )}
          <div class="explain-buttons">
            <button type="button" disabled={i === 0} aria-label={texts.rowUp(i + 1)} onClick={() => swap(i)}>
              {texts.up}
            </button>
            <button
              type="button"
              disabled={rows.length === 1 && !scene.picture}
              aria-label={texts.rowRemove(i + 1)}
              onClick={() => remove(i)}
            >
              {texts.remove}
            </button>
          </div>
        </div>
      ))}
      <button
        ref={addButton}
        type="button"
        disabled={rows.length >= MOST_ROWS}
        onClick={() => onEdit({ rows: [...rows, { point: rows.at(-1)?.point ?? 'tuned' }] })}
      >
        {texts.addRow}
      </button>
    </fieldset>
  );
}

const withTitle = ({ title: _, ...row }: Row, title: string): Row => (title.trim() === '' ? row : { ...row, title });

const withSetting = ({ with: _, ...row }: Row, next: Settings): Row =>
  Object.keys(next).length > 0 ? { ...row, with: next } : row;

function withDetector(row: Row, detector: string): Row {
  const { detector: _, ...rest } = row.with ?? {};
  return withSetting(row, detector === '' ? rest : { ...rest, detector });
}

const HEIGHTS = { half: 0.5, usual: 1, double: 2, triple: 3 } as const;
type HeightChoice = keyof typeof HEIGHTS;
const HEIGHT_CHOICES = Object.keys(HEIGHTS) as HeightChoice[];

/** The choice nearest to what a file may say. */
const heightChoiceOf = ({ height = 1 }: Row): HeightChoice =>
  HEIGHT_CHOICES.reduce((a, b) => (Math.abs(HEIGHTS[b] - height) < Math.abs(HEIGHTS[a] - height) ? b : a));

const withHeight = ({ height: _, ...row }: Row, choice: HeightChoice): Row =>
  choice === 'usual' ? row : { ...row, height: HEIGHTS[choice] };

/** On another carrier: the coil of a row. */
const COILS = ['scene', 'band', 'own'] as const;
const coilOf = ({ with: own }: Row): (typeof COILS)[number] =>
  own?.keepsCoil === undefined ? 'scene' : own.keepsCoil ? 'own' : 'band';

function withCoil(row: Row, coil: string): Row {
  const { keepsCoil: _, ...rest } = row.with ?? {};
  return withSetting(row, coil === 'scene' ? rest : { ...rest, keepsCoil: coil === 'own' });
}

/** A zoom in so many seconds, unless another time is given. */
const USUAL_ZOOM_SECONDS = 9;
const [SHORTEST_ZOOM, LONGEST_ZOOM] = [0.5, 120];

/** Where the slow zoom starts and ends, taken from the view, and how long it takes. */
export function SceneZoom({ scene, onEdit, current }: Props & { current(): StoryScene }) {
  const texts = explainTexts.scenes;
  const { to } = scene;
  if (scene.rows.length === 0) return null;
  const viewNow = () => limited(current());
  return (
    <fieldset class="explain-rows">
      <legend>{texts.zoom}</legend>
      <p class="quiet">
        {to
          ? texts.zoomFromTo(waveTexts.span(scene.span), waveTexts.span(to.span))
          : texts.noZoom(waveTexts.span(scene.span))}
      </p>
      <div class="explain-buttons">
        <button type="button" onClick={() => onEdit(viewNow())}>
          {texts.zoomStart}
        </button>
        <button
          type="button"
          onClick={() => onEdit({ to: { ...viewNow(), seconds: to?.seconds ?? USUAL_ZOOM_SECONDS } })}
        >
          {texts.zoomEnd}
        </button>
        {to && (
          <button type="button" onClick={() => onEdit({ to: undefined })}>
            {texts.zoomRemove}
          </button>
        )}
      </div>
      {to && (
        <p class="explain-field">
          <label for="zoom-seconds">{texts.zoomSeconds}</label>
          <TypedLine
            id="zoom-seconds"
            type="number"
            min={SHORTEST_ZOOM}
            max={LONGEST_ZOOM}
            step={0.5}
            text={String(to.seconds)}
            take={(text) => {
              const typed = text === '' ? to.seconds : Number(text);
              const seconds = Math.min(LONGEST_ZOOM, Math.max(SHORTEST_ZOOM, typed));
              if (seconds !== to.seconds) onEdit({ to: { ...to, seconds } });
            }}
          />
        </p>
      )}
    </fieldset>
  );
}

/** What is heard in a scene, and how fast. */
export function SceneSound({ scene, onEdit }: Props) {
  const texts = explainTexts.scenes;
  return (
    <>
      <label>
        <span>{texts.heard}</span>
        <select
          value={scene.hear ?? ''}
          onChange={(event) => {
            const { value } = event.currentTarget;
            onEdit({ hear: isPoint(value) ? value : undefined });
          }}
        >
          <option value="">{texts.heardUsual}</option>
          {POINTS.map((id) => (
            <option key={id} value={id}>
              {pointTitles[id]}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span>{explainTexts.stage.speed}</span>
        <select
          value={scene.sound ?? 'real time'}
          onChange={(event) => onEdit({ sound: event.currentTarget.value as SoundSpeed })}
        >
          {SOUND_SPEEDS.map((id) => (
            <option key={id} value={id}>
              {explainTexts.stage.speeds[id]}
            </option>
          ))}
        </select>
      </label>
    </>
  );
}
