import { useState } from 'preact/hooks';
import { ringingOf } from '../../../../engine/index.ts';
import { soundCardWords as texts } from '../../../../outputs/words/index.ts';
import { CardStatus } from './CardStatus.tsx';
import { useCardSound } from './use-card-sound.ts';

interface Props {
  /** A decay as a file of readings has it. */
  readonly onTaken: (written: Readonly<Record<string, unknown>>, source: string) => void;
}

const SECONDS = 2;
const EDGES = 10;
const LEVEL = 0.3;
/** Of full scale: below it nothing was connected. */
const SILENT = 1e-3;
/** Digits of a sample: as many as a good converter has. */
const DIGITS = 6;

/** A ringing by the sound card, into the readings of a decay. */
export function RingingCapture({ onTaken }: Props) {
  const { doing, setDoing, problem, setProblem, stop, use } = useCardSound();
  const [hasEdges, setEdges] = useState(true);
  const capture = () =>
    use(async (card, signal) => {
      setDoing({ recording: SECONDS });
      const play = hasEdges ? squareWave(card.sampleRate) : undefined;
      const [samples] = await card.record({ play, seconds: SECONDS, signal });
      if (!(samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0) > SILENT)) {
        setProblem(texts.ringingSilent);
        return;
      }
      const ringing = Array.from(ringingOf(samples), (x) => Number(x.toPrecision(DIGITS)));
      onTaken({ kind: 'decay', sampleRate: card.sampleRate, samples: ringing }, texts.ringingSource);
    });
  return (
    <section class="card-sound" aria-labelledby="card-ringing-title">
      <h3 id="card-ringing-title">{texts.ringing}</h3>
      <p class="bench-trap">{texts.ringingTrap}</p>
      <ul class="sentences">
        {texts.ringingHow.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p class="about">{texts.lineInput}</p>
      <p class="about">{texts.privacy}</p>
      <label class="card-edges">
        <input type="checkbox" checked={hasEdges} onChange={(event) => setEdges(event.currentTarget.checked)} />{' '}
        {texts.edges}
      </label>
      <button
        type="button"
        aria-disabled={doing !== undefined || undefined}
        onClick={() => {
          if (doing === undefined) void capture();
        }}
      >
        {texts.ringingButton}
      </button>
      <CardStatus doing={doing} problem={problem} onStop={stop} />
    </section>
  );
}

/** Half a period high, half a period low: an edge at each change. */
function squareWave(sampleRate: number): Float32Array<ArrayBuffer> {
  const half = Math.round(sampleRate / EDGES);
  return new Float32Array(Math.ceil(SECONDS * sampleRate)).map((_, i) =>
    Math.floor(i / half) % 2 === 0 ? LEVEL : -LEVEL,
  );
}
