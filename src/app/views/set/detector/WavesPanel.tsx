import { useEffect, useRef, useState } from 'preact/hooks';
import { formatQuantity, type SetDescription, usualPlaces, type WavePlace } from '../../../../engine/index.ts';
import type { View } from '../../../../outputs/explain/index.ts';
import {
  closer,
  nodeWaveScene,
  nodeWavesCsv,
  type ShownWaves,
  viewWithin,
} from '../../../../outputs/explain/node-waves/index.ts';
import { sceneToSvg } from '../../../../outputs/scene/index.ts';
import {
  nodeWaveTexts,
  wavesPanelWords as texts,
  warningSentences,
  wavePointText,
  widgetWords,
} from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import { download, downloadFile } from '../../../state/download.ts';
import './node-waves.css';
import type { NodeWavesQuestion, NodeWavesReply } from './node-waves.worker.ts';
import { WaveCanvas, type WaveCanvasHandle } from './WaveCanvas.tsx';

export interface WavesPanelProps {
  readonly set: SetDescription;
  readonly station: { readonly index: number; readonly name: string; readonly frequency: number };
  readonly time: When;
}

/** A change of the set is followed after this pause. */
const PAUSE_MS = 400;
const MOST_PLACES = 6;
const LENGTHS = [1e-3, 5e-3, 20e-3, 50e-3];

export function WavesPanel({ set, station, time }: WavesPanelProps) {
  const [places, setPlaces] = useState<readonly WavePlace[]>([]);
  const [picked, setPicked] = useState<readonly string[] | undefined>();
  const [neighbours, setNeighbours] = useState(true);
  const [begin, setBegin] = useState<'settled' | 'coming on'>('settled');
  const [duration, setDuration] = useState(5e-3);
  const [waves, setWaves] = useState<ShownWaves | undefined>();
  const [view, setView] = useState<View>({ from: 0, span: 5e-3 });
  const [done, setDone] = useState<number | undefined>();
  const [problem, setProblem] = useState('');
  const [again, setAgain] = useState(0);
  const stop = useRef(() => {});
  const here = picked?.filter((id) => places.some((p) => p.id === id)) ?? [];
  const shown = here.length > 0 ? here : usualPlaces(places);
  const asked = here.join('\n');

  // The same run as before but for other points keeps its view.
  const fits = useRef('');
  useEffect(() => {
    setProblem('');
    let worker: Worker | undefined;
    const pause = setTimeout(() => {
      setDone(0);
      worker = new Worker(new URL('./node-waves.worker.ts', import.meta.url), { type: 'module', name: 'node-waves' });
      worker.onmessage = ({ data }: MessageEvent<NodeWavesReply>) => {
        if ('places' in data) {
          setPlaces(data.places);
          return;
        }
        if ('done' in data) {
          setDone(data.done);
          return;
        }
        worker?.terminate();
        setDone(undefined);
        if ('error' in data) setProblem(data.error);
        else {
          const { answer } = data;
          setWaves(answer);
          const kind = `${answer.carrier} ${answer.duration}`;
          setView((v) => (fits.current === kind ? viewWithin(v, answer) : { from: 0, span: answer.duration }));
          fits.current = kind;
        }
      };
      worker.onerror = (event) => {
        setDone(undefined);
        setProblem(event.message || widgetWords.workerStopped);
      };
      const question: NodeWavesQuestion = {
        set,
        time,
        options: {
          station: station.index,
          places: asked === '' ? undefined : asked.split('\n'),
          neighbours,
          begin,
          duration,
        },
      };
      worker.postMessage(question);
    }, PAUSE_MS);
    stop.current = () => {
      clearTimeout(pause);
      worker?.terminate();
      setDone(undefined);
    };
    return () => stop.current();
  }, [set, time, station.index, asked, neighbours, begin, duration, again]);

  const toggle = (id: string) =>
    setPicked(
      shown.includes(id)
        ? shown.filter((one) => one !== id)
        : places.map((p) => p.id).filter((one) => one === id || shown.includes(one)),
    );
  return (
    <div class="node-waves">
      <p>{texts.about}</p>
      <fieldset class="node-waves-places">
        <legend>{texts.points(MOST_PLACES)}</legend>
        {places.map((place) => (
          <label key={place.id}>
            <input
              type="checkbox"
              checked={shown.includes(place.id)}
              disabled={shown.includes(place.id) ? shown.length === 1 : shown.length >= MOST_PLACES}
              onChange={() => toggle(place.id)}
            />{' '}
            {wavePointText(place.point)}
          </label>
        ))}
      </fieldset>
      <div class="node-waves-how">
        <label>
          {texts.duration}{' '}
          <select value={duration} onChange={(e) => setDuration(Number(e.currentTarget.value))}>
            {LENGTHS.map((t) => (
              <option key={t} value={t}>
                {formatQuantity(t, 'time', 2)}
              </option>
            ))}
          </select>
        </label>
        <label>
          {texts.begin}{' '}
          <select value={begin} onChange={(e) => setBegin(e.currentTarget.value as typeof begin)}>
            <option value="settled">{texts.begins.settled}</option>
            <option value="coming on">{texts.begins['coming on']}</option>
          </select>
        </label>
        <label>
          <input type="checkbox" checked={neighbours} onChange={() => setNeighbours(!neighbours)} /> {texts.neighbours}
        </label>
      </div>
      <div class="node-waves-run" aria-live="polite">
        {done !== undefined ? (
          <>
            <progress max={1} value={done} aria-label={texts.progress} />
            <button type="button" onClick={() => stop.current()}>
              {texts.stop}
            </button>
          </>
        ) : (
          <button type="button" onClick={() => setAgain(again + 1)}>
            {texts.again}
          </button>
        )}
        {problem !== '' && <span class="problem">{texts.failed(problem)}</span>}
      </div>
      {waves && <WavesRun waves={waves} view={view} onView={setView} frequency={station.frequency} />}
    </div>
  );
}

interface WavesRunProps {
  readonly waves: ShownWaves;
  readonly view: View;
  readonly onView: (view: View) => void;
  /** Of the station, Hz. */
  readonly frequency: number;
}

/** A run as it is looked at: its waves, what is read off them, and files of it. */
function WavesRun({ waves, view, onView, frequency }: WavesRunProps) {
  const canvas = useRef<WaveCanvasHandle>(null);
  const name = (ending: string) => `waves-${Math.round(frequency / 1e3)}-khz.${ending}`;
  const zoom = (factor: number) => onView(closer(view, factor, 0.5, waves));
  const along = (share: number) => onView(viewWithin({ ...view, from: view.from + share * view.span }, waves));
  return (
    <>
      <div class="buttons">
        <button type="button" aria-label={texts.closer} onClick={() => zoom(1 / 1.6)}>
          +
        </button>
        <button type="button" aria-label={texts.farther} onClick={() => zoom(1.6)}>
          −
        </button>
        <button type="button" aria-label={texts.earlier} onClick={() => along(-0.25)}>
          ←
        </button>
        <button type="button" aria-label={texts.later} onClick={() => along(0.25)}>
          →
        </button>
        <button type="button" onClick={() => onView({ from: 0, span: waves.duration })}>
          {texts.wholeRun}
        </button>
        <button
          type="button"
          onClick={() => onView(viewWithin({ from: view.from + view.span / 2, span: 3 / waves.carrier }, waves))}
        >
          {texts.singleCycles}
        </button>
      </div>
      <WaveCanvas waves={waves} view={view} onView={onView} handle={canvas} label={texts.canvas} />
      <p class="quiet">{texts.how(nodeWaveTexts.stretch(waves.carrier, view.from, view.span))}</p>
      <h4>{texts.readings}</h4>
      <ul class="node-waves-readings">
        {waves.waves.map((wave) => (
          <li key={wave.id}>{nodeWaveTexts.reading(wave)}</li>
        ))}
      </ul>
      <p class="quiet">{nodeWaveTexts.run(waves)}</p>
      {warningSentences(waves.warnings).map((warning) => (
        <p key={warning} class="figure-warning">
          <span aria-hidden="true">⚠ </span>
          {warning}
        </p>
      ))}
      <p class="buttons">
        <button type="button" onClick={() => download(name('csv'), nodeWavesCsv(waves, view), 'text/csv')}>
          {texts.saveCsv}
        </button>
        <button
          type="button"
          onClick={() => {
            const scene = nodeWaveScene(waves, { width: 1000, height: 40 + 140 * waves.waves.length, view });
            download(name('svg'), sceneToSvg(scene, { colours: 'day', size: 'true' }), 'image/svg+xml');
          }}
        >
          {texts.saveSvg}
        </button>
        <button
          type="button"
          onClick={() => canvas.current?.element.toBlob((blob) => blob && downloadFile(name('png'), blob))}
        >
          {texts.savePng}
        </button>
      </p>
    </>
  );
}
