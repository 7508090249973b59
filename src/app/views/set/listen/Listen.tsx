import { useEffect, useRef, useState } from 'preact/hooks';
import { hasHeater, type Reception, type SetDescription } from '../../../../engine/index.ts';
import type { HowLoud } from '../../../../outputs/audio/index.ts';
import { listeningTexts } from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import type { DialScale } from '../dial/dial-scale.ts';
import { type SoundEngine, startSound } from './engine.ts';
import './listen.css';
import type { FromWorker, Moving, PlayerState } from './messages.ts';
import { Own } from './Own.tsx';
import { Traces } from './Scope.tsx';
import { listeningProblem } from './sound-problem.ts';

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
  const [how, setHow] = useState<HowLoud>('amplified');
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
    } else if (message.kind === 'problem') setProblem(message.message);
    else if (message.kind === 'band') setBand(message);
  };
  const stop = () => {
    engine.current?.stop();
    engine.current = undefined;
    setState('off');
    setMoving(undefined);
  };
  const texts = listeningTexts;
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
        level: reception.stations[reception.best[0]]?.soundPressureLevel,
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
      setProblem(listeningProblem(error, texts.problems.noSound));
    }
  };

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
      {!on && <p class="listen-care">{texts.care}</p>}
      <div class="listen-row">
        <h2 id="listen-title">{texts.title}</h2>
        <button type="button" class="listen-start primary" onClick={on ? stop : start} disabled={state === 'starting'}>
          {on ? texts.stop : state === 'starting' ? texts.starting : texts.start}
        </button>
        <fieldset class="listen-how">
          <legend class="visually-hidden">{texts.loudness}</legend>
          {(['amplified', 'as in the phones'] as const).map((word) => (
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
              {texts.loudnessChoices[word]}
            </label>
          ))}
        </fieldset>
        <label class="listen-volume">
          {texts.volume}{' '}
          <input
            type="range"
            min={-60}
            max={20}
            step={1}
            value={volume}
            aria-valuetext={texts.volumeValue(volume)}
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
          {texts.detectorRemoved}
        </label>
        {hasHeater(set.detector) && (
          <label>
            <input
              type="checkbox"
              checked={heated}
              onChange={(event) => {
                setHeated(event.currentTarget.checked);
                engine.current?.send({ kind: 'heater', on: event.currentTarget.checked });
              }}
            />{' '}
            {texts.heater}
            {moving?.cathode !== undefined && <span class="quiet"> · {texts.cathode(moving.cathode)}</span>}
          </label>
        )}
      </div>
      <div class="listen-row">
        <ByHand
          reception={reception}
          scale={scale}
          frequency={frequency}
          nearest={nearest?.name}
          onPosition={onPosition}
        />
        {on && (
          <p class="listen-level">
            <label>
              {texts.level}{' '}
              <meter min={0} max={100} low={20} high={85} value={Math.max(0, level ?? 0)}>
                {texts.levelValue(level ?? 0)}
              </meter>{' '}
              {isSilent ? texts.silent : texts.levelValue(level)}
            </label>
            {moving && moving.limited < -0.5 ? <span> · {texts.limited}</span> : null}
            <span class="quiet"> · {texts.gaps(player.gaps, player.seconds)}</span>
          </p>
        )}
      </div>
      {problem !== '' && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      {on && (
        <div class="listen-more">
          <Traces moving={moving} isSilent={moving !== undefined && isSilent} />
          <Own engine={engine.current} station={nearest} band={band} onProblem={setProblem} />
        </div>
      )}
    </section>
  );
}

interface ByHandProps extends Pick<ListenProps, 'reception' | 'scale' | 'frequency' | 'onPosition'> {
  /** Name of the station nearest to the frequency. */
  readonly nearest: string | undefined;
}

/** Tuned by buttons: to the next station, by a channel, by 1 kHz. */
function ByHand({ reception, scale, frequency, nearest, onPosition }: ByHandProps) {
  const texts = listeningTexts;
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
  return (
    <fieldset class="listen-row listen-tune">
      <legend class="visually-hidden">{texts.tune}</legend>
      <TuneButton label={texts.stationBelow} short="‹" onClick={() => nextStation(-1)} />
      <TuneButton label={texts.down(channel)} short={texts.downShort(channel)} onClick={() => step(-1, channel)} />
      <TuneButton label={texts.down(1e3)} short={texts.downShort(1e3)} onClick={() => step(-1, 1e3)} />
      <output>{nearest !== undefined ? texts.nearest(frequency, nearest) : texts.frequency(frequency)}</output>
      <TuneButton label={texts.up(1e3)} short={texts.upShort(1e3)} onClick={() => step(1, 1e3)} />
      <TuneButton label={texts.up(channel)} short={texts.upShort(channel)} onClick={() => step(1, channel)} />
      <TuneButton label={texts.stationAbove} short="›" onClick={() => nextStation(1)} />
    </fieldset>
  );
}

/** What it does; on a phone only so much of it that all stand in one row. */
const TuneButton = ({ label, short, onClick }: { label: string; short: string; onClick: () => void }) => (
  <button type="button" aria-label={label} onClick={onClick}>
    <span class="listen-long">{label}</span>
    <span class="listen-short">{short}</span>
  </button>
);
