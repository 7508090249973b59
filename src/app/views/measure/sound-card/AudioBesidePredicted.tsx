import { useId, useState } from 'preact/hooks';
import {
  type AudioPickup,
  parseQuantity,
  type RangedStation,
  type SetDescription,
  type SpectrumBeside,
  type StationReception,
} from '../../../../engine/index.ts';
import { audioSpectrumCurve } from '../../../../outputs/plots/index.ts';
import { audioSpectrumPlot, errorText, audioSpectrumWords as texts } from '../../../../outputs/words/index.ts';
import { Plot } from '../../../widgets/Plot.tsx';
import { askCard } from './ask-card.ts';
import { CardStatus } from './CardStatus.tsx';
import type { SpectrumQuestion } from './sound-card.worker.ts';
import { useCardSound } from './use-card-sound.ts';

interface Props {
  readonly set: SetDescription;
  /** The one that is chosen. */
  readonly station: StationReception | RangedStation | undefined;
}

const PICKUPS: readonly AudioPickup[] = ['line', 'microphone'];
/** Of ordinary programme: pauses of speech are in it as in the prediction. */
const SECONDS = 30;
/** Hours of it say no more than minutes. */
const LARGEST_MB = 100;

/** What was recorded, for which station and in which way: of another it says nothing. */
interface Compared {
  readonly of: string;
  readonly pickup: AudioPickup;
  readonly beside: SpectrumBeside;
}

/** Level of full scale as typed: dBV, or dB SPL; nothing where nothing is typed, NaN where it cannot be read. */
function fullScaleOf(typed: string, pickup: AudioPickup): number | undefined {
  if (typed.trim() === '') return undefined;
  const read = parseQuantity(typed, pickup === 'line' ? 'voltage' : 'level');
  if (!read.ok) return Number.NaN;
  return pickup === 'line' ? 20 * Math.log10(read.value) : read.value;
}

/** Level and spectrum of the real set's audio beside what is predicted for the station that is chosen. */
export function AudioBesidePredicted({ set, station }: Props) {
  const id = useId();
  const { doing, setDoing, problem, setProblem, stop, use } = useCardSound();
  const [pickup, setPickup] = useState<AudioPickup>('line');
  const [typed, setTyped] = useState('');
  const [compared, setCompared] = useState<Compared | undefined>();
  const index = station ? set.place.stations.findIndex(({ name }) => name === station.name) : -1;
  const of = station && index >= 0 ? station.name : undefined;

  const compare = async (recording: SpectrumQuestion['recording']) => {
    const fullScale = fullScaleOf(typed, pickup);
    if (Number.isNaN(fullScale) || fullScale === Number.NEGATIVE_INFINITY) {
      setProblem(texts.notRead);
      return;
    }
    setCompared(undefined);
    const { faults, beside, whyNotPredicted } = await askCard({
      about: 'spectrum',
      set,
      station: index,
      pickup,
      recording,
      fullScale,
    });
    if (whyNotPredicted !== undefined) setProblem(texts.notPredicted(whyNotPredicted));
    else if (faults.length > 0) setProblem(texts.faults[faults[0]]);
    else if (!beside) setProblem(texts.nothing);
    if (beside && !faults.includes('silent')) setCompared({ of: of ?? '', pickup, beside });
  };
  const record = () =>
    use(async (card, signal) => {
      setDoing({ recording: SECONDS });
      const [samples] = await card.record({ seconds: SECONDS, signal });
      setDoing('working');
      await compare({ sampleRate: card.sampleRate, samples });
    });
  const take = async (file: File) => {
    if (file.size > LARGEST_MB * 1e6) {
      setProblem(texts.tooLarge(file.name, LARGEST_MB));
      return;
    }
    setProblem('');
    setDoing('working');
    try {
      await compare(new Uint8Array(await file.arrayBuffer()));
    } catch (error) {
      setProblem(texts.notRecording(file.name, errorText(error)));
    } finally {
      setDoing(undefined);
    }
  };

  const shown = compared?.of === of && compared?.pickup === pickup ? compared : undefined;
  const level = station && 'ranges' in station ? station.ranges?.soundPressureLevel : undefined;
  const range = level && station?.hearing ? rangeAbout(level, station.hearing.level) : undefined;
  return (
    <section class="card card-sound measure-audio" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{texts.title}</h2>
      {of === undefined ? (
        <p class="quiet">{texts.noStation}</p>
      ) : station?.dial === undefined ? (
        <p class="quiet">{texts.outOfRange(of)}</p>
      ) : (
        <>
          <p>{texts.about(of)}</p>
          <p class="bench-trap">{texts.caution}</p>
          <p class="about">{texts.privacy}</p>
          <div class="readings-field is-long">
            <label for={`${id}-pickup`}>{texts.pickup}</label>
            <select
              id={`${id}-pickup`}
              value={pickup}
              disabled={doing !== undefined}
              onChange={(event) => {
                setPickup(event.currentTarget.value as AudioPickup);
                setTyped('');
              }}
            >
              {PICKUPS.map((one) => (
                <option key={one} value={one}>
                  {texts.pickupChoice[one]}
                </option>
              ))}
            </select>
          </div>
          <p class="about">{texts.how[pickup]}</p>
          <div class="readings-field is-long">
            <label for={`${id}-full-scale`}>{texts.fullScale[pickup]}</label>
            <input
              id={`${id}-full-scale`}
              type="text"
              inputMode="decimal"
              value={typed}
              aria-describedby={`${id}-full-scale-hint`}
              onInput={(event) => setTyped(event.currentTarget.value)}
            />
            <span class="about" id={`${id}-full-scale-hint`}>
              {texts.fullScaleHint[pickup]}
            </span>
          </div>
          <p>
            <button
              type="button"
              aria-disabled={doing !== undefined || undefined}
              onClick={() => {
                if (doing === undefined) void record();
              }}
            >
              {texts.record(SECONDS)}
            </button>
          </p>
          <div class="readings-field is-long">
            <label for={`${id}-file`}>{texts.file}</label>
            <input
              id={`${id}-file`}
              type="file"
              accept=".wav"
              disabled={doing !== undefined}
              onChange={(event) => {
                const file = event.currentTarget.files?.[0];
                event.currentTarget.value = '';
                if (file) void take(file);
              }}
            />
          </div>
          <CardStatus
            doing={doing}
            problem={problem}
            onStop={stop}
            done={shown && `${texts.level(shown.beside.difference, range)} ${texts.shape(shown.beside)}`}
          />
          {shown && <Plot title={audioSpectrumPlot.title} data={shown} draw={audioSpectrumCurve} />}
        </>
      )}
    </section>
  );
}

/** Ends of a range as differences from its middle. */
const rangeAbout = ([low, high]: readonly [number, number], middle: number): readonly [number, number] => [
  low - middle,
  high - middle,
];
