import { useEffect, useRef, useState } from 'preact/hooks';
import type { Reception } from '../../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../../engine/set/description.ts';
import type { HowLoud } from '../../../../outputs/audio/index.ts';
import type { When } from '../../../description/when.ts';
import { showLive, showNothingLive } from '../../../state/live-levels.ts';
import { kilohertz } from '../../../widgets/figure.ts';
import type { DialScale } from '../dial/dial-scale.ts';
import { type SoundEngine, startSound } from './engine.ts';
import './listen.css';
import type { FromWorker, Moving, PlayerState } from './messages.ts';
import { Own } from './Own.tsx';
import { Traces } from './Scope.tsx';

export interface ListenProps {
  written: unknown;
  set: SetDescription;
  reception: Reception;
  scale: DialScale;
  /** Where the pointer stands, 0 open … 1 meshed, and the frequency there as the dial says it. */
  position: number;
  frequency: number;
  onPosition(position: number): void;
  time: When;
}

/** Below this nothing is heard, dB SPL. */
const SILENT = -40;

/** Turn the dial and hear the set. Silent until asked. */
export function Listen({ set, reception, scale, position, frequency, onPosition, time }: ListenProps) {
  const [state, setState] = useState<'off' | 'starting' | 'on'>('off');
  const [problem, setProblem] = useState('');
  const [how, setHow] = useState<HowLoud>('brought up');
  const [volume, setVolume] = useState(-10);
  const [lifted, setLifted] = useState(false);
  const [heated, setHeated] = useState(true);
  const [moving, setMoving] = useState<Moving | undefined>();
  const [player, setPlayer] = useState<PlayerState>({ gaps: 0, seconds: 0 });
  const [band, setBand] = useState<Extract<FromWorker, { kind: 'band' }> | undefined>();
  const engine = useRef<SoundEngine | undefined>(undefined);
  const nearest = reception.stations.reduce(
    (best, s) => (!best || Math.abs(s.frequency - frequency) < Math.abs(best.frequency - frequency) ? s : best),
    reception.stations[0],
  );
  const here = useRef(true);

  useEffect(() => {
    here.current = true;
    return () => {
      here.current = false;
      engine.current?.stop();
      engine.current = undefined;
      showNothingLive();
    };
  }, []);
  useEffect(() => engine.current?.send({ kind: 'tune', position }), [position]);
  useEffect(() => {
    const pause = setTimeout(() => engine.current?.send({ kind: 'change', set, time }), 50);
    return () => clearTimeout(pause);
  }, [set, time]);

  const listen = (message: FromWorker) => {
    if (message.kind === 'moving') {
      setMoving(message);
      showLive(message);
    } else if (message.kind === 'problem') setProblem(message.message);
    else if (message.kind === 'band') setBand(message);
  };
  const stop = () => {
    engine.current?.stop();
    engine.current = undefined;
    setState('off');
    setMoving(undefined);
    showNothingLive();
  };
  const start = async () => {
    setState('starting');
    setProblem('');
    setPlayer({ gaps: 0, seconds: 0 });
    try {
      const started = await startSound({
        set,
        time,
        position,
        station: reception.best[0],
        how,
        volume,
        onMessage: listen,
        onPlayer: setPlayer,
      });
      if (!here.current) return started.stop();
      engine.current = started;
      if (lifted) started.send({ kind: 'lifted', lifted });
      if (!heated) started.send({ kind: 'heater', on: false });
      setState('on');
    } catch (error) {
      setState('off');
      setProblem(`No sound could be had: ${(error as Error).message}.`);
    }
  };

  const tuneTo = (wanted: number) =>
    onPosition(scale.positionOf(Math.max(reception.dial.lowest, Math.min(reception.dial.highest, wanted))));
  const nextStation = (way: 1 | -1) => {
    const list = reception.stations.filter((s) => s.dial).sort((a, b) => (a.frequency - b.frequency) * way);
    const next = list.find((s) => (s.frequency - frequency) * way > 500) ?? list[0];
    if (next?.dial) onPosition(next.dial.position);
  };
  const raster = reception.stations.filter((s) => s.frequency % 9000 === 0).length * 2 >= reception.stations.length;
  const channel = raster ? 9000 : 10_000;
  const step = (by: number, grid: number) => tuneTo((Math.round(frequency / grid) + by) * grid);
  const on = state === 'on';
  const level = moving ? Math.round(moving.level) : undefined;
  const isSilent = level === undefined || level <= SILENT;
  return (
    <section
      class="listen-panel"
      aria-labelledby="listen-title"
      data-state={state}
      data-gaps={player.gaps}
      data-seconds={player.seconds}
    >
      <h2 id="listen-title">Listening</h2>
      <p class="listen-care">With headphones on, turn the volume down first. Nothing sounds until you start it.</p>
      <div class="listen-row">
        <button type="button" class="listen-start" onClick={on ? stop : start} disabled={state === 'starting'}>
          {on ? 'Stop' : state === 'starting' ? 'Starting…' : 'Start listening'}
        </button>
        <fieldset class="listen-how">
          <legend>How loud</legend>
          {(['brought up', 'as in the phones'] as const).map((word) => (
            <label key={word}>
              <input
                type="radio"
                name="listen-how"
                checked={how === word}
                onChange={() => {
                  setHow(word);
                  engine.current?.send({ kind: 'how', how: word });
                }}
              />{' '}
              {word === 'brought up' ? 'Brought up, as with an amplifier' : 'As in the phones, with the room'}
            </label>
          ))}
        </fieldset>
        <label class="listen-volume">
          Volume{' '}
          <input
            type="range"
            min={-60}
            max={20}
            step={1}
            value={volume}
            aria-valuetext={`${volume} decibels`}
            onInput={(event) => {
              const to = event.currentTarget.valueAsNumber;
              setVolume(to);
              engine.current?.send({ kind: 'volume', level: to });
            }}
          />
        </label>
        <label>
          <input
            type="checkbox"
            checked={lifted}
            onChange={(event) => {
              setLifted(event.currentTarget.checked);
              engine.current?.send({ kind: 'lifted', lifted: event.currentTarget.checked });
            }}
          />{' '}
          Detector taken out
        </label>
        {set.detector.kind === 'valve' && (
          <label>
            <input
              type="checkbox"
              checked={heated}
              onChange={(event) => {
                setHeated(event.currentTarget.checked);
                engine.current?.send({ kind: 'heater', on: event.currentTarget.checked });
              }}
            />{' '}
            Heater on
            {moving?.cathode !== undefined && <span class="quiet"> · cathode {Math.round(moving.cathode)} K</span>}
          </label>
        )}
      </div>
      <fieldset class="listen-row listen-tune">
        <legend class="visually-hidden">Tune</legend>
        <button type="button" onClick={() => nextStation(-1)}>
          Station below
        </button>
        <button type="button" onClick={() => step(-1, channel)}>
          −{channel / 1e3} kHz
        </button>
        <button type="button" onClick={() => step(-1, 1e3)}>
          −1 kHz
        </button>
        <output>
          {kilohertz(frequency)}
          {nearest ? `, nearest ${nearest.name}` : ''}
        </output>
        <button type="button" onClick={() => step(1, 1e3)}>
          +1 kHz
        </button>
        <button type="button" onClick={() => step(1, channel)}>
          +{channel / 1e3} kHz
        </button>
        <button type="button" onClick={() => nextStation(1)}>
          Station above
        </button>
      </fieldset>
      {problem !== '' && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      {on && (
        <>
          <p class="listen-level">
            <label>
              Sound in the phones{' '}
              <meter min={0} max={100} low={20} high={85} value={Math.max(0, level ?? 0)}>
                {level} dB SPL
              </meter>{' '}
              {isSilent ? 'nothing' : `${level} dB SPL`}
            </label>
            {moving && moving.limited < -0.5 ? <span> · held back by the limiter</span> : null}
            <span class="quiet">
              {' '}
              · {player.gaps === 0 ? 'no gaps' : player.gaps === 1 ? '1 gap' : `${player.gaps} gaps`} in{' '}
              {Math.floor(player.seconds)} s
            </span>
          </p>
          <Traces moving={moving} isSilent={moving !== undefined && isSilent} />
          <Own engine={engine.current} station={nearest} band={band} onProblem={setProblem} />
        </>
      )}
    </section>
  );
}
