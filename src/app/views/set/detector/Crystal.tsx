import { useMemo, useState } from 'preact/hooks';
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
import { CrystalFace, type TriedSpot } from './CrystalFace.tsx';
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
  const [tried, setTried] = useState<readonly TriedSpot[]>([]);
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
  const resistance = slopeResistance(touch.detector);

  return (
    <details class="card" onToggle={(event) => setOpen((event.currentTarget as HTMLDetailsElement).open)}>
      <summary>{texts.title}</summary>
      <p>
        {texts.how} {answer?.text ?? texts.usual()}
      </p>
      <div class="bench">
        <CrystalFace surface={surface} whisker={whisker} tried={tried} onMove={move} />
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
