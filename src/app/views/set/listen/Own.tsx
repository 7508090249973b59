import { useState } from 'preact/hooks';
import type { StationReception } from '../../../../engine/reception/path/types.ts';
import type { SoundEngine } from './engine.ts';
import type { FromWorker } from './messages.ts';

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
    work.catch((error: Error) => onProblem(`${error.message}.`));
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
  return (
    <details class="listen-own">
      <summary>Your own sound, or a recorded band</summary>
      {station && (
        <div class="listen-row">
          <label>
            A recording for {station.name}{' '}
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
            The microphone as {station.name}
          </button>
          <button type="button" onClick={() => engine?.send({ kind: 'microphone', station: station.index })}>
            Its own programme again
          </button>
        </div>
      )}
      <div class="listen-row">
        <label>
          A recorded band (stereo WAV, in-phase and quadrature){' '}
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
          Its middle, kHz <input size={8} value={centre} onInput={(event) => setCentre(event.currentTarget.value)} />
        </label>
        <label>
          Full scale at the aerial, mV{' '}
          <input size={6} value={fullScale} onInput={(event) => setFullScale(event.currentTarget.value)} />
        </label>
        {file && (
          <button type="button" onClick={() => playBand(file)}>
            Play it so
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
            The stations again
          </button>
        )}
      </div>
      {file && band && (
        <p>
          {band.centre === undefined
            ? 'Neither the recording nor its name says its middle frequency: write it beside.'
            : `${Math.round(band.seconds)} s around ${(band.centre / 1e3).toFixed(1)} kHz.`}
        </p>
      )}
    </details>
  );
}
