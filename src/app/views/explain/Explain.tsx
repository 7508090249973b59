import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import {
  filled,
  isPoint,
  LONGEST,
  limited,
  PICTURE_IDS,
  PICTURES,
  POINT_WORDS,
  POINTS,
  type PointId,
  type Programme,
  pictureWords,
  type Settings,
  SHORTEST,
  type Show,
  type StoryScene,
  scenesOf,
  shownWords,
  tidyTime,
  type View,
  withScenes,
} from '../../../outputs/explain/index.ts';
import { warningSentences } from '../../../outputs/words/index.ts';
import type { When } from '../../description/when.ts';
import { Controls } from './Controls.tsx';
import type { Background } from './colours.ts';
import './explain.css';
import { Hearing, loopSeconds } from './hear.ts';
import { Maker, type Shown } from './maker.ts';
import { Present } from './Present.tsx';
import { SceneList } from './SceneList.tsx';
import { Stage, type StageHandle } from './Stage.tsx';
import { TakeAway } from './TakeAway.tsx';

export interface ExplainProps {
  /** The description as written; scenes are kept in it under "scenes". */
  written: unknown;
  set?: SetDescription;
  reception?: Reception;
  /** The time of day the reception was worked out for. */
  time?: When;
  onChange(written: unknown): void;
}

const ALL: StoryScene = {
  title: 'The whole way',
  caption: 'From the programme to the phones.',
  note: '',
  rows: POINTS.map((point) => ({ point })),
  from: 0,
  span: 2e-3,
  show: { average: true },
  to: { from: 0.00098, span: 1e-5, seconds: 10 },
  hear: 'phones',
};

/** Sound follows what is turned after so long a rest. */
const SOUND_PAUSE_MS = 120;

const TOGGLES: readonly (readonly [keyof Show, string])[] = [
  ['average', 'Running average'],
  ['cover', 'Cover the lower half'],
  ['envelope', 'Envelope'],
  ['spectrum', 'Spectrum beside'],
];

const useReducedMotion = (): boolean => {
  const query = useMemo(() => matchMedia('(prefers-reduced-motion: reduce)'), []);
  const [reduced, setReduced] = useState(query.matches);
  useEffect(() => {
    const change = () => setReduced(query.matches);
    query.addEventListener('change', change);
    return () => query.removeEventListener('change', change);
  }, [query]);
  return reduced;
};

/** The stage on which a set explains itself. */
export function Explain({ written, set, reception, time, onChange }: ExplainProps) {
  const still = useReducedMotion();
  const { scenes, own } = useMemo(() => scenesOf(written), [written]);
  const [at, setAt] = useState<number | undefined>(undefined);
  const [scene, setScene] = useState<StoryScene>(ALL);
  const [background, setBackground] = useState<Background>('plain');
  const [presenting, setPresenting] = useState(false);
  const [zooming, setZooming] = useState(false);
  const [frozen, setFrozen] = useState(still);
  const [hear, setHear] = useState<PointId>('phones');
  const [sounding, setSounding] = useState(false);
  const [recording, setRecording] = useState<Programme | undefined>();
  const head = useRef<HTMLElement>(null);
  const stage = useRef<StageHandle>(null);
  const span = useRef<HTMLInputElement>(null);
  const spanText = useRef<HTMLOutputElement>(null);
  const hearing = useRef<Hearing | undefined>(undefined);

  // Waves are made beside the page; what was made last stays on the stage until the new is there.
  const [shown, setShown] = useState<Shown | undefined>();
  const [problem, setProblem] = useState('');
  const maker = useMemo(() => new Maker(setShown, setProblem), []);
  useEffect(() => () => maker.close(), [maker]);
  useEffect(() => maker.open({ set, reception, recording, time }), [maker, set, reception, recording, time]);
  const following = scenes[at === undefined ? 0 : at + 1];
  useEffect(() => {
    setProblem('');
    maker.want(scene, following);
  }, [maker, set, reception, recording, time, scene, following]);
  const isThere = shown?.scene === scene;

  const pick = useCallback(
    (index: number | undefined, list: readonly StoryScene[] = scenes) => {
      const next = index === undefined ? ALL : list[index];
      if (!next) return;
      setAt(index);
      setScene(next);
      setZooming(false);
      if (next.hear) setHear(next.hear);
    },
    [scenes],
  );
  const keepScenes = (list: readonly StoryScene[] | undefined, index?: number) => {
    onChange(withScenes(written, list));
    pick(index, list ?? []);
  };
  const edit = (part: Partial<StoryScene>) => {
    onChange(
      withScenes(
        written,
        scenes.map((s, i) => (i === at ? { ...s, ...part } : s)),
      ),
    );
    setScene({ ...scene, ...part });
  };

  useEffect(() => {
    if (!sounding) return;
    hearing.current ??= new Hearing();
    const { rate } = hearing.current;
    let wanted = true;
    const seconds = loopSeconds(scene.settings?.programme?.kind === 'recording' ? recording : undefined);
    const ask = () =>
      maker
        .take({ kind: 'samples', scene, point: hear, seconds, rate, loudest: 1 })
        .then((samples) => wanted && hearing.current?.play(samples as Float32Array))
        .catch((error: Error) => setProblem(error.message));
    // The picture goes first while something is being turned.
    const pause = setTimeout(ask, SOUND_PAUSE_MS);
    return () => {
      wanted = false;
      clearTimeout(pause);
    };
  }, [sounding, hear, maker, scene.settings, recording, set, reception]);
  useEffect(() => {
    if (!sounding) hearing.current?.stop();
  }, [sounding]);
  useEffect(() => () => hearing.current?.close(), []);

  const onView = useCallback((view: View) => {
    // Straight to the page: a frame must not wait for a new drawing of the controls.
    const text = tidyTime(view.span, 2);
    if (span.current) {
      span.current.value = String(spanStep(view.span));
      span.current.setAttribute('aria-valuetext', `${text} from side to side`);
    }
    if (spanText.current) spanText.current.textContent = text;
  }, []);
  const current = (): StoryScene => {
    const view = stage.current?.view() ?? limited(scene);
    return { ...scene, from: view.from, span: view.span };
  };
  const show = (key: keyof Show, on: boolean) => setScene({ ...scene, show: { ...scene.show, [key]: on } });
  /** On a small screen the list lies far below the stage. */
  const bringUp = () => {
    const box = head.current?.getBoundingClientRect();
    if (box && box.top < 0) head.current?.scrollIntoView({ block: 'start', behavior: still ? 'auto' : 'smooth' });
  };
  const turn = (settings: Settings) => {
    const given = Object.entries(settings).filter(([, value]) => value !== undefined);
    setScene({ ...scene, settings: Object.fromEntries(given) });
  };
  const rows = (point: PointId, on: boolean) => {
    const kept = on
      ? [...scene.rows, { point }].sort((a, b) => POINTS.indexOf(a.point) - POINTS.indexOf(b.point))
      : scene.rows.filter((r) => r.point !== point);
    if (kept.length > 0 || scene.picture) setScene({ ...scene, rows: kept });
  };
  const step = (by: number) => {
    const next = at === undefined ? (by > 0 ? 0 : scenes.length - 1) : at + by;
    if (next < 0 || next >= scenes.length) return;
    pick(next);
    // On the stage a scene plays itself.
    if (presenting) setZooming(!still && scenes[next].to !== undefined);
  };
  const zoomBy = (factor: number) => {
    setZooming(false);
    stage.current?.zoom(factor);
  };
  if (!shown)
    return (
      <p class="quiet" role="status">
        {problem || 'Working out the waves…'}
      </p>
    );
  const { prepared } = shown;
  const { figures } = prepared;
  const stageElement = (
    <Stage
      scene={shown.scene}
      prepared={prepared}
      background={background}
      presented={presenting}
      zooming={zooming && isThere}
      frozen={frozen}
      still={still}
      onZoomed={() => setZooming(false)}
      onTaken={() => setZooming(false)}
      onView={onView}
      handle={stage}
    />
  );
  if (presenting)
    return (
      <Present
        background={background}
        onBackground={setBackground}
        note={filled(shown.scene.note, figures)}
        place={at === undefined ? scene.title : `${at + 1} of ${scenes.length}`}
        frozen={frozen}
        onFreeze={setFrozen}
        onNext={() => step(1)}
        onBack={() => step(-1)}
        onZoomKey={() => setZooming(!zooming)}
        onZoom={zoomBy}
        onEnd={() => setPresenting(false)}
      >
        {stageElement}
      </Present>
    );
  return (
    <section class="explain" aria-label="Explain">
      <div class="explain-main">
        <header class="explain-head" ref={head}>
          <h2>{filled(shown.scene.title, figures)}</h2>
          <div class="explain-buttons">
            <button type="button" onClick={() => step(-1)} disabled={at === 0}>
              Back
            </button>
            <button type="button" onClick={() => step(1)} disabled={at === scenes.length - 1}>
              Next
            </button>
            <button
              type="button"
              class="primary"
              onClick={() => {
                setPresenting(true);
                setFrozen(still);
                setZooming(!still && scene.to !== undefined);
              }}
            >
              Present
            </button>
          </div>
        </header>
        <div class={`explain-frame${shown.scene.rows.length > 3 ? ' is-tall' : ''}`} aria-busy={!isThere}>
          {stageElement}
        </div>
        {problem && (
          <p class="problem" role="alert">
            {problem}
          </p>
        )}
        <div class="explain-tools">
          {scene.rows.length > 0 && (
            <div class="explain-zoom">
              <button type="button" class="icon" onClick={() => zoomBy(2)} aria-label="Show more time">
                −
              </button>
              <input
                ref={span}
                type="range"
                class="slider"
                min={0}
                max={1000}
                aria-label="How much time is shown"
                onInput={(event) => {
                  setZooming(false);
                  const view = stage.current!.view();
                  stage.current!.zoom(spanAt(Number(event.currentTarget.value)) / view.span);
                }}
              />
              <button type="button" class="icon" onClick={() => zoomBy(0.5)} aria-label="Show less time">
                +
              </button>
              <output ref={spanText}>{tidyTime(scene.span, 2)}</output>
              {scene.to && (
                <button type="button" aria-pressed={zooming} onClick={() => setZooming(!zooming)}>
                  Zoom slowly
                </button>
              )}
              <button
                type="button"
                onClick={() => {
                  setZooming(false);
                  stage.current?.show(limited(scene));
                }}
              >
                From the start
              </button>
            </div>
          )}
          {scene.picture && (
            <button type="button" aria-pressed={!frozen} onClick={() => setFrozen(!frozen)}>
              {frozen ? 'Run' : 'Freeze'}
            </button>
          )}
          <div class="explain-toggles">
            {scene.rows.length > 0 &&
              TOGGLES.map(([key, label]) => (
                <label key={key} class="explain-check">
                  <input
                    type="checkbox"
                    checked={scene.show?.[key] === true}
                    onChange={(event) => show(key, event.currentTarget.checked)}
                  />{' '}
                  {label}
                </label>
              ))}
          </div>
          <div class="explain-hear">
            <button type="button" aria-pressed={sounding} onClick={() => setSounding(!sounding)}>
              {sounding ? 'Stop the sound' : 'Hear this point'}
            </button>
            <select
              aria-label="The point that is heard"
              value={hear}
              onChange={(event) => isPoint(event.currentTarget.value) && setHear(event.currentTarget.value)}
            >
              {POINTS.map((point) => (
                <option key={point} value={point}>
                  {POINT_WORDS[point].title}
                </option>
              ))}
            </select>
            {sounding && (
              <span role="status" class="quiet">
                {hear === 'carrier' || hear === 'modulated' || hear === 'tuned'
                  ? 'Silence: its average is nothing.'
                  : 'The programme.'}
              </span>
            )}
          </div>
        </div>
        <p class="explain-caption">{filled(shown.scene.caption, figures)}</p>
        {shown.scene.picture && <p>{PICTURES[shown.scene.picture].about(prepared.facts)}</p>}
        {shown.scene.note && <blockquote class="explain-note">{filled(shown.scene.note, figures)}</blockquote>}
        {warningSentences(prepared.waves.warnings).map((w) => (
          <p key={w} class="quiet">
            ⚠ {w}
          </p>
        ))}
        <details class="in-words">
          <summary>In words</summary>
          {prepared.rows.map((row, i) => (
            <p key={i}>{shownWords(row, shown.scene.show ?? {})}</p>
          ))}
          {shown.scene.picture && <p>{pictureWords(shown.scene.picture, prepared.facts)}</p>}
          <p>
            What an ear can hear lies between about 30 Hz and 15 to 18 kHz; a carrier swings far faster (common
            practice).
          </p>
        </details>
      </div>
      <div class="explain-side">
        <details open>
          <summary>Scenes</summary>
          <button
            type="button"
            class="explain-all"
            aria-current={at === undefined ? 'true' : undefined}
            onClick={() => pick(undefined)}
          >
            The whole way, all at once
          </button>
          <SceneList
            scenes={scenes}
            own={own}
            at={at}
            onPick={(index) => {
              pick(index);
              bringUp();
            }}
            onScenes={keepScenes}
            onEdit={edit}
            current={current}
          />
        </details>
        <details>
          <summary>What is shown</summary>
          <fieldset class="explain-points">
            <legend>Points of the path</legend>
            {POINTS.map((point) => (
              <label key={point} class="explain-check">
                <input
                  type="checkbox"
                  checked={scene.rows.some((r) => r.point === point)}
                  onChange={(event) => rows(point, event.currentTarget.checked)}
                />{' '}
                {POINT_WORDS[point].title}
              </label>
            ))}
          </fieldset>
          <label class="explain-field">
            <span>Moving picture</span>
            <select
              value={scene.picture ?? ''}
              onChange={(event) => {
                const id = PICTURE_IDS.find((p) => p === event.currentTarget.value);
                if (id || scene.rows.length > 0) setScene({ ...scene, picture: id });
              }}
            >
              <option value="">none</option>
              {PICTURE_IDS.map((id) => (
                <option key={id} value={id}>
                  {PICTURES[id].title}
                </option>
              ))}
            </select>
          </label>
        </details>
        <details>
          <summary>Turn things</summary>
          <Controls
            settings={scene.settings ?? {}}
            base={prepared.base}
            reception={reception}
            recording={recording}
            onChange={turn}
            onRecording={setRecording}
          />
        </details>
        <details>
          <summary>Take away</summary>
          <TakeAway
            scene={scene}
            take={(order) => maker.take(order)}
            scenes={scenes}
            set={set}
            reception={reception}
            recording={recording}
            time={time}
            background={background}
            onBackground={setBackground}
            hear={hear}
            moment={() => ({
              view: stage.current?.view() ?? limited(scene),
              seconds: stage.current?.seconds() ?? 0,
            })}
          />
        </details>
      </div>
    </section>
  );
}

const spanStep = (span: number): number => Math.round((1000 * Math.log(LONGEST / span)) / Math.log(LONGEST / SHORTEST));
const spanAt = (step: number): number => LONGEST * (SHORTEST / LONGEST) ** (step / 1000);
