import { useCallback, useMemo, useRef, useState } from 'preact/hooks';
import type { Reception, SetDescription } from '../../../engine/index.ts';
import {
  filled,
  heardIn,
  LONGEST,
  limited,
  loudestMoment,
  type RecordedProgramme,
  recordingOf,
  type Settings,
  type Show,
  type StoryScene,
  scenesOf,
  secondsOf,
  type View,
  wholePath,
  withRecording,
  withScenes,
} from '../../../outputs/explain/index.ts';
import { explainTexts } from '../../../outputs/words/index.ts';
import type { When } from '../../description/when.ts';
import { Controls } from './Controls.tsx';
import type { SceneBackground } from './colours.ts';
import './explain.css';
import { Present } from './Present.tsx';
import { SceneList } from './SceneList.tsx';
import { SceneText } from './SceneText.tsx';
import { ShownParts } from './ShownParts.tsx';
import { type StageHandle, StageView } from './Stage.tsx';
import { TakeAway } from './TakeAway.tsx';
import { showSpan, Tools } from './Tools.tsx';
import { useFocusInView } from './use-focus-in-view.ts';
import { useReducedMotion } from './use-reduced-motion.ts';
import { useSound } from './use-sound.ts';
import { useWaves } from './use-waves.ts';

export interface ExplainProps {
  /** The description as written; scenes are kept in it under "scenes". */
  written: unknown;
  set?: SetDescription;
  reception?: Reception;
  /** The time of day the reception was worked out for. */
  time?: When;
  /** @param next makes it of the description as it then is. */
  onChange(next: (now: unknown) => unknown): void;
}

/** Which scene is on the stage, and the list it comes from. */
function useScenes(written: unknown, onChange: ExplainProps['onChange']) {
  const { scenes, own } = useMemo(() => scenesOf(written), [written]);
  /** Its place in the list; undefined: the whole path. */
  const [at, setAt] = useState<number | undefined>(undefined);
  const [scene, setScene] = useState<StoryScene>(wholePath);
  const pick = (index: number | undefined, list: readonly StoryScene[] = scenes): StoryScene | undefined => {
    const next = index === undefined ? wholePath() : list[index];
    if (!next) return undefined;
    setAt(index);
    setScene(next);
    return next;
  };
  const edit = (part: Partial<StoryScene>) => {
    onChange((now) =>
      withScenes(
        now,
        scenesOf(now).scenes.map((s, i) => (i === at ? { ...s, ...part } : s)),
      ),
    );
    setScene((scene) => ({ ...scene, ...part }));
  };
  return { scenes, own, at, scene, setScene, pick, edit };
}

/** The recording kept with the set, unpacked once. */
function useKeptRecording(written: unknown): RecordedProgramme | undefined {
  const kept = (written as { recording?: unknown } | undefined)?.recording;
  return useMemo(() => recordingOf({ recording: kept }), [kept]);
}

/** A zoom to single cycles of this carrier takes so long, s. */
const CLOSE_UP_SECONDS = 20;
/** Cycles at its end. */
const CLOSE_UP_CYCLES = 6;

/** The stage on which a set explains itself. */
export function Explain({ written, set, reception, time, onChange }: ExplainProps) {
  useFocusInView('.explain-side');
  const still = useReducedMotion();
  const story = useScenes(written, onChange);
  const { scenes, at, scene, setScene } = story;
  const [background, setBackground] = useState<SceneBackground>('plain');
  const [presenting, setPresenting] = useState(false);
  const [zooming, setZooming] = useState(false);
  const [frozen, setFrozen] = useState(still);
  const recording = useKeptRecording(written);
  const head = useRef<HTMLElement>(null);
  const stage = useRef<StageHandle>(null);
  const span = useRef<HTMLInputElement>(null);
  const spanText = useRef<HTMLOutputElement>(null);
  const opening = { set, reception, recording, time };
  const { maker, shown, problem, setProblem } = useWaves(opening, scene, scenes[at === undefined ? 0 : at + 1]);
  const sound = useSound(maker, opening, scene, setProblem, () => stage.current?.view() ?? limited(scene));
  const isThere = shown?.scene === scene;

  const pick = (index: number | undefined, list?: readonly StoryScene[]) => {
    const next = story.pick(index, list);
    if (!next) return;
    setZooming(false);
    const heard = heardIn({ ...next, sound: undefined });
    if (heard) sound.setPoint(heard);
  };
  const keepScenes = (list: readonly StoryScene[] | undefined, index?: number) => {
    onChange((now) => withScenes(now, list));
    pick(index, list ?? []);
  };
  const onView = useCallback((view: View) => showSpan(view, span.current, spanText.current), []);
  const viewNow = (): View => stage.current?.view() ?? limited(scene);
  const current = (): StoryScene => ({ ...scene, ...spanOf(viewNow()) });
  const show = (key: keyof Show, on: boolean) =>
    setScene((scene) => ({ ...scene, show: { ...scene.show, [key]: on } }));
  /** On a small screen the list lies far below the stage. */
  const bringUp = () => {
    const box = head.current?.getBoundingClientRect();
    if (box && box.top < 0) head.current?.scrollIntoView({ block: 'start', behavior: still ? 'auto' : 'smooth' });
  };
  /** Seen from end to end, and from there down to single cycles at its loudest moment. */
  const keepRecording = (recorded: RecordedProgramme) => {
    const carrier = shown?.prepared.waves.spec.carrier ?? 1e6;
    const span = CLOSE_UP_CYCLES / carrier;
    setScene((scene) => ({
      ...scene,
      settings: { ...scene.settings, programme: { kind: 'recording' } },
      from: 0,
      span: Math.min(secondsOf(recorded), LONGEST),
      to: { from: loudestMoment(recorded) - span / 2, span, seconds: CLOSE_UP_SECONDS },
    }));
    onChange((now) => withRecording(now, recorded));
  };
  /** From the view as it is to single cycles about the moment in its middle. */
  const closeUp = () => {
    const view = viewNow();
    // Where fewer cycles fill the view already it stays as it is.
    const span = Math.min(view.span, CLOSE_UP_CYCLES / (shown?.prepared.waves.spec.carrier ?? 1e6));
    const moment = view.from + view.span / 2;
    const decades = Math.log10(Math.max(10, view.span / span));
    const to = { from: moment - span / 2, span, seconds: Math.max(4, 2.5 * decades) };
    setScene((scene) => ({ ...scene, ...spanOf(view), to }));
    setZooming(true);
  };
  const turn = (settings: Settings) => {
    const given = Object.entries(settings).filter(([, value]) => value !== undefined);
    setScene((scene) => ({ ...scene, settings: Object.fromEntries(given) }));
  };
  const step = (by: number) => {
    const next = at === undefined ? (by > 0 ? 0 : scenes.length - 1) : at + by;
    if (next < 0 || next >= scenes.length) return;
    pick(next);
    // On the stage a scene plays itself.
    if (presenting) setZooming(!still && scenes[next].to !== undefined);
  };
  const present = () => {
    setPresenting(true);
    setFrozen(still);
    setZooming(!still && scene.to !== undefined);
  };
  const texts = explainTexts.stage;
  if (!shown)
    return (
      <p class="quiet" role="status">
        {problem || texts.loading}
      </p>
    );
  const { prepared } = shown;
  const stageElement = (
    <StageView
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
      playhead={sound.playhead}
      handle={stage}
    />
  );
  if (presenting)
    return (
      <Present
        background={background}
        onBackground={setBackground}
        note={filled(shown.scene.note, prepared.figures)}
        place={at === undefined ? scene.title : explainTexts.presenting.place(at + 1, scenes.length)}
        frozen={frozen}
        onFreeze={setFrozen}
        onNext={() => step(1)}
        onBack={() => step(-1)}
        onZoomKey={() => setZooming(!zooming)}
        onZoom={(factor) => {
          setZooming(false);
          stage.current?.zoom(factor);
        }}
        onEnd={() => setPresenting(false)}
      >
        {stageElement}
      </Present>
    );
  const side = explainTexts.side;
  return (
    <section class="explain" aria-label={texts.view}>
      <div class="explain-main">
        <header class="explain-head" ref={head}>
          <h2>{filled(shown.scene.title, prepared.figures)}</h2>
          <div class="explain-buttons">
            <button type="button" onClick={() => step(-1)} disabled={at === 0}>
              {texts.back}
            </button>
            <button type="button" onClick={() => step(1)} disabled={at === scenes.length - 1}>
              {texts.next}
            </button>
            <button type="button" class="primary" onClick={present}>
              {texts.present}
            </button>
          </div>
        </header>
        <p class="explain-caption">{filled(shown.scene.caption, prepared.figures)}</p>
        <div class={`explain-frame${shown.scene.rows.length > 3 ? ' is-tall' : ''}`} aria-busy={!isThere}>
          {stageElement}
        </div>
        {problem && (
          <p class="problem" role="alert">
            {problem}
          </p>
        )}
        <Tools
          scene={scene}
          stage={stage}
          span={span}
          spanText={spanText}
          zooming={zooming}
          onZooming={setZooming}
          frozen={frozen}
          onFrozen={setFrozen}
          onShow={show}
          sound={sound}
          onCloseUp={closeUp}
          onSound={(speed) => setScene((scene) => ({ ...scene, sound: speed }))}
        />
        <SceneText shown={shown} />
      </div>
      <div class="explain-side">
        <details open>
          <summary>{side.scenes}</summary>
          <button
            type="button"
            class="explain-all"
            aria-current={at === undefined ? 'true' : undefined}
            onClick={() => pick(undefined)}
          >
            {side.wholePath}
          </button>
          <SceneList
            scenes={scenes}
            own={story.own}
            at={at}
            onPick={(index) => {
              pick(index);
              bringUp();
            }}
            onScenes={keepScenes}
            onEdit={story.edit}
            current={current}
          />
        </details>
        <details>
          <summary>{side.shown}</summary>
          <ShownParts scene={scene} onScene={setScene} />
        </details>
        <details>
          <summary>{side.settings}</summary>
          <Controls
            settings={scene.settings ?? {}}
            base={prepared.base}
            reception={reception}
            recording={recording}
            onChange={turn}
            onRecording={keepRecording}
          />
        </details>
        <details>
          <summary>{side.export}</summary>
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
            hear={sound.point}
            moment={() => ({ view: viewNow(), seconds: stage.current?.seconds() ?? 0 })}
          />
        </details>
      </div>
    </section>
  );
}

const spanOf = ({ from, span }: View) => ({ from, span });
