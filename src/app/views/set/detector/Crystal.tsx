import { useMemo, useRef, useState } from 'preact/hooks';
import {
  crystalSurface,
  type SetDescription,
  slopeResistance,
  WHISKERS,
  type Whisker,
  type WhiskerPosition,
} from '../../../../engine/index.ts';
import { crystalWords as texts, touchText, verdictWords, warningSentences } from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import { useAnswer } from '../../../workers/use-worker.ts';
import { HeardBars } from '../Heard.tsx';
import './detector.css';
import type { SpotsAnswer, SpotsQuestion } from './spots.worker.ts';

/** A touch as the description has it: what the spot measured. */
export interface SpotFound {
  readonly saturationCurrent: number;
  readonly ideality: number;
  readonly seriesResistance: number;
  readonly leakage: number;
  readonly words: string;
}

interface Props {
  /** Which crystal; the same seed is the same lump. */
  readonly seed: number;
  readonly set: SetDescription;
  /** The one that is listened to while probing. */
  readonly station?: { readonly index: number; readonly name: string };
  readonly time: When;
  readonly onFound: (spot: SpotFound) => void;
}

const ROOM = 300.15;
const STEP = 0.02;

/** The crystal as a surface to probe: most of it is dead. Pointer or arrow keys move the whisker. */
export function Crystal({ seed, set, station, time, onFound }: Props) {
  const [open, setOpen] = useState(false);
  const surface = useMemo(() => crystalSurface(seed), [seed]);
  const [whisker, setWhisker] = useState<WhiskerPosition>({
    x: surface.width / 2,
    y: surface.height / 2,
    pressure: 0.2,
    material: 'phosphor bronze',
  });
  const [knocks, setKnocks] = useState(0);
  const [tried, setTried] = useState<readonly { x: number; y: number; merit: number }[]>([]);
  const box = useRef<SVGSVGElement>(null);
  const touch = surface.probe(whisker.x, whisker.y, whisker.pressure, whisker.material);
  const law = touch.detector.law;
  const index = station?.index;
  const question = useMemo(
    (): SpotsQuestion | undefined =>
      open && index !== undefined ? { set, station: index, time, seed, whisker } : undefined,
    [open, set, index, time, seed, whisker],
  );
  const survey = useAnswer<SpotsQuestion, SpotsAnswer>(
    () => new Worker(new URL('./spots.worker.ts', import.meta.url), { type: 'module', name: 'spots' }),
    question,
  );
  const answer = survey.error === '' ? survey.answer : undefined;

  const move = (x: number, y: number) => {
    const next = {
      ...whisker,
      x: Math.min(surface.width, Math.max(0, x)),
      y: Math.min(surface.height, Math.max(0, y)),
    };
    setWhisker(next);
    const { merit } = surface.probe(next.x, next.y, next.pressure, next.material).spot;
    setTried((list) => [...list.slice(-60), { x: next.x, y: next.y, merit }]);
  };
  const point = (event: PointerEvent) => {
    const area = box.current!.getBoundingClientRect();
    move(
      ((event.clientX - area.left) / area.width) * surface.width,
      ((event.clientY - area.top) / area.height) * surface.height,
    );
  };
  const key = (event: KeyboardEvent) => {
    const by: Record<string, readonly [number, number]> = {
      ArrowLeft: [-1, 0],
      ArrowRight: [1, 0],
      ArrowUp: [0, -1],
      ArrowDown: [0, 1],
    };
    const step = by[event.key];
    if (!step) return;
    event.preventDefault();
    const size = surface.width * STEP * (event.shiftKey ? 4 : 1);
    move(whisker.x + step[0] * size, whisker.y + step[1] * size);
  };
  const mm = 1e3;
  const resistance = slopeResistance(touch.detector);

  return (
    <details class="card" onToggle={(event) => setOpen((event.currentTarget as HTMLDetailsElement).open)}>
      <summary>{texts.title}</summary>
      <p>
        {texts.how} {answer?.worth ?? texts.usual}
      </p>
      <div class="bench">
        <div
          class="drawing crystal"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the whisker is moved with the arrow keys
          tabIndex={0}
          role="application"
          aria-label={texts.face}
          aria-describedby="crystal-words"
          onPointerDown={point}
          onKeyDown={key}
        >
          <svg ref={box} viewBox={`0 0 ${surface.width * mm} ${surface.height * mm}`} aria-hidden="true">
            <rect width={surface.width * mm} height={surface.height * mm} rx={0.4} style={{ fill: 'var(--metal)' }} />
            {tried.map((t, i) => (
              <circle
                key={`${i}-${t.x}`}
                cx={t.x * mm}
                cy={t.y * mm}
                r={0.05 + 0.14 * t.merit}
                style={{ fill: t.merit > 0.05 ? 'var(--copper-bright)' : 'var(--ink)', opacity: 0.7 }}
              />
            ))}
            <path
              d={`M ${whisker.x * mm + 1.6} ${whisker.y * mm - 1.8} q -1.3 0.3 -1.6 1.8`}
              style={{ fill: 'none', stroke: 'var(--copper)', strokeWidth: 0.09 }}
            />
            <circle
              cx={whisker.x * mm}
              cy={whisker.y * mm}
              r={0.16}
              style={{ fill: 'none', stroke: 'var(--copper)', strokeWidth: 0.07 }}
            />
          </svg>
        </div>
        <div class="crystal-hand">
          <p id="crystal-words" aria-live="polite">
            <strong>{texts.spot(touchText(touch))}</strong> {texts.resistance(resistance)}
            {answer && station && (
              <>
                {' '}
                {texts.heard(station.name, answer.here.soundPressureLevel, answer.overGood)}{' '}
                <HeardBars verdict={answer.here.heard} /> {texts.verdict(verdictWords[answer.here.heard])}
              </>
            )}
          </p>
          <label class="field">
            <span>{texts.pressure}</span>
            <input
              type="range"
              min={0}
              max={1}
              step={0.02}
              value={whisker.pressure}
              onInput={(e) => setWhisker({ ...whisker, pressure: Number(e.currentTarget.value) })}
            />
          </label>
          <label class="field">
            <span>{texts.whisker}</span>
            <select
              value={whisker.material}
              onChange={(e) => setWhisker({ ...whisker, material: e.currentTarget.value as Whisker })}
            >
              {WHISKERS.map((w) => (
                <option key={w} value={w}>
                  {texts.whiskers[w]}
                </option>
              ))}
            </select>
          </label>
          <p class="buttons">
            <button
              type="button"
              onClick={() => {
                setKnocks(knocks + 1);
                const to = surface.knock(whisker, 0.6, knocks + 1);
                move(to.x, to.y);
              }}
            >
              {texts.knock}
            </button>
            <button
              type="button"
              disabled={!law}
              onClick={() =>
                law &&
                onFound({
                  saturationCurrent: law.saturationCurrent,
                  ideality: law.slopeVoltage / ((1.380649e-23 * ROOM) / 1.602176634e-19),
                  seriesResistance: law.seriesResistance,
                  leakage: law.leakage > 0 ? 1 / law.leakage : 1e10,
                  words: touchText(touch),
                })
              }
            >
              {texts.use}
            </button>
          </p>
          {warningSentences(touch.warnings).map((w) => (
            <p key={w} class="quiet">
              {w}
            </p>
          ))}
        </div>
      </div>
    </details>
  );
}
