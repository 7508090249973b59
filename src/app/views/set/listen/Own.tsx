import { useState } from 'preact/hooks';
import type { StationReception } from '../../../../engine/index.ts';
import { listeningTexts } from '../../../../outputs/words/index.ts';
import type { SoundEngine } from './engine.ts';
import type { FromWorker } from './messages.ts';
import { listeningProblem } from './sound-problem.ts';

interface Props {
  readonly engine: SoundEngine | undefined;
  /** The one nearest the pointer. */
  readonly station: StationReception | undefined;
  readonly band: Extract<FromWorker, { kind: 'band' }> | undefined;
  onProblem(words: string): void;
}

/** One's own sound on a station, or a recorded band instead of all of them. */
export function Own({ engine, station, band, onProblem }: Props) {
  const [file, setFile] = useState<File | undefined>();
  const [centre, setCentre] = useState('');
  const [fullScale, setFullScale] = useState('10');
  const attempt = (work: Promise<void>) => {
    onProblem('');
    work.catch((error: unknown) => onProblem(listeningProblem(error, listeningTexts.problems.microphone)));
  };
  const playBand = (of: File | undefined) => {
    onProblem('');
    const kHz = Number(centre.replace(',', '.'));
    const mV = Number(fullScale.replace(',', '.'));
    engine?.send({
      kind: 'band',
      file: of,
      centre: centre.trim() !== '' && kHz > 0 ? kHz * 1e3 : undefined,
      fullScale: (mV > 0 ? mV : 10) / 1e3,
    });
  };
  const texts = listeningTexts.own;
  return (
    <details class="listen-own">
      <summary>{texts.title}</summary>
      {station && (
        <div class="listen-row">
          <label>
            {texts.file(station.name)}{' '}
            <input
              type="file"
              accept="audio/*,.opus"
              onChange={(event) => {
                const chosen = event.currentTarget.files?.[0];
                if (chosen && engine) attempt(engine.playFile(chosen, station.index));
              }}
            />
          </label>
          <button type="button" onClick={() => engine && attempt(engine.playMicrophone(station.index))}>
            {texts.microphone(station.name)}
          </button>
          <button type="button" onClick={() => engine?.send({ kind: 'microphone', station: station.index })}>
            {texts.restore}
          </button>
        </div>
      )}
      <div class="listen-row">
        <label>
          {texts.band}{' '}
          <input
            type="file"
            accept=".wav,audio/wav"
            onChange={(event) => {
              const chosen = event.currentTarget.files?.[0];
              setFile(chosen);
              if (chosen) playBand(chosen);
            }}
          />
        </label>
        <label>
          {texts.centre} <input size={8} value={centre} onInput={(event) => setCentre(event.currentTarget.value)} />
        </label>
        <label>
          {texts.fullScale}{' '}
          <input size={6} value={fullScale} onInput={(event) => setFullScale(event.currentTarget.value)} />
        </label>
        {file && (
          <button type="button" onClick={() => playBand(file)}>
            {texts.play}
          </button>
        )}
        {file && (
          <button
            type="button"
            onClick={() => {
              setFile(undefined);
              playBand(undefined);
            }}
          >
            {texts.stations}
          </button>
        )}
      </div>
      {file && band && (
        <p>{band.centre === undefined ? texts.centreMissing : texts.playing(band.seconds, band.centre)}</p>
      )}
    </details>
  );
}
