import { useRef, useState } from 'preact/hooks';
import {
  type OfferedMeasurement,
  parseQuantity,
  type SetDescription,
  type ThreeStates,
  type ToneReading,
  type ToneReadings,
  tonePlan,
} from '../../../../engine/index.ts';
import { type ImpedanceCurves, impedanceCurve } from '../../../../outputs/plots/index.ts';
import { impedanceSweepWords, soundCardWords as texts } from '../../../../outputs/words/index.ts';
import { download } from '../../../state/download.ts';
import type { ReadingsDraft } from '../../../state/measuring.ts';
import { Plot } from '../../../widgets/Plot.tsx';
import { writtenReadings } from '../written-readings.ts';
import { askCard } from './ask-card.ts';
import { CardStatus } from './CardStatus.tsx';
import { useCardSound } from './use-card-sound.ts';

interface Props {
  readonly card: OfferedMeasurement;
  readonly set: SetDescription;
  readonly draft: ReadingsDraft;
  readonly onChange: (draft: ReadingsDraft) => void;
}

type State = keyof ThreeStates<unknown>;
const STATES: readonly State[] = ['open', 'known', 'device'];
/** The tone whose readings the card keeps, Hz. */
const KEPT = 1000;
/** Of a resistor with a brown band for its tolerance. */
const RESISTOR_ERROR = 0.01;
/** Of the recording after the last tone: the delay of the slowest card. */
const TAIL = 1;

/** The impedance of phones or a transformer, 20 Hz to 20 kHz: three recordings of tones that the page plays. */
export function SoundCardImpedance({ card, set, draft, onChange }: Props) {
  // What is typed while it records counts too.
  const latest = useRef(draft);
  latest.current = draft;
  const { doing, setDoing, problem, setProblem, stop, use } = useCardSound();
  const [taken, setTaken] = useState<Partial<ThreeStates<ToneReadings>>>({});
  const [curves, setCurves] = useState<ImpedanceCurves | undefined>();
  const [inputs, setInputs] = useState<'one' | 'two'>('two');
  const [level, setLevel] = useState(0.1);
  const forget = () => {
    setTaken({});
    setCurves(undefined);
  };
  const needsOpen = inputs === 'one' && !taken.open;

  const record = (state: State) =>
    use(async (sound, signal) => {
      const plan = tonePlan();
      const seconds = plan.duration + TAIL;
      setDoing({ recording: seconds });
      const play = await askCard({ about: 'played', sampleRate: sound.sampleRate, amplitude: level });
      const [input, right] = await sound.record({ play, seconds, signal });
      setDoing('working');
      if (inputs === 'two' && isOneInput(input, right)) {
        setInputs('one');
        forget();
        setProblem(texts.oneInputOnly);
        return;
      }
      const reference = inputs === 'two' ? right : undefined;
      const delay = reference || state === 'open' ? undefined : taken.open?.delay;
      const recording = { sampleRate: sound.sampleRate, input, ...(reference && { reference }) };
      const tones = await askCard({ about: 'tones', recording, delay });
      if (signal.aborted) return;
      const [fault] = tones.faults;
      if (fault) setProblem(texts.faults[fault]);
      if (fault === 'delay-moved') forget();
      if (fault === 'no-signal' || fault === 'delay-moved') return;
      // With one input the others were timed by the open recording before.
      const now = inputs === 'one' && state === 'open' ? { open: tones } : { ...taken, [state]: tones };
      setTaken(now);
      const { open, known, device } = now;
      if (open && known && device) await workOut({ open, known, device });
    });

  const workOut = async (states: ThreeStates<ToneReadings>) => {
    const now = { ...latest.current, fields: { ...latest.current.fields, ...fieldsOf(states) } };
    onChange(now);
    const { written } = writtenReadings(card, now, {});
    const resistor = parseQuantity(written.resistor, 'resistance');
    const error = parseQuantity(written.resistorError, 'ratio');
    if (!resistor.ok) {
      setProblem(texts.resistorNeeded);
      return;
    }
    const sweep = await askCard({
      about: 'sweep',
      set,
      states,
      resistor: resistor.value,
      resistorError: error.ok ? error.value : RESISTOR_ERROR,
    });
    if (sweep.measured.length === 0) setProblem(texts.tooAlike);
    setCurves(sweep.measured.length > 0 ? sweep : undefined);
  };

  const { open, known, device } = taken;
  const all = open && known && device && { open, known, device };
  return (
    <section class="card-sound" aria-labelledby="card-sound-title">
      <h3 id="card-sound-title">{texts.title}</h3>
      <p class="bench-trap">{texts.aloud}</p>
      <p class="about">{texts.lineInput}</p>
      <p class="about">{texts.privacy}</p>
      <div class="readings-field is-long">
        <label for="card-inputs">{texts.inputs}</label>
        <select
          id="card-inputs"
          value={inputs}
          disabled={doing !== undefined}
          onChange={(event) => {
            setInputs(event.currentTarget.value as 'one' | 'two');
            forget();
          }}
        >
          {(['two', 'one'] as const).map((one) => (
            <option key={one} value={one}>
              {texts.inputChoice[one]}
            </option>
          ))}
        </select>
      </div>
      <div class="readings-field">
        <label for="card-level">{texts.level}</label>
        <input
          id="card-level"
          type="range"
          min="0.01"
          max="0.5"
          step="0.01"
          value={level}
          aria-valuetext={texts.levelValue(level)}
          disabled={doing !== undefined}
          onInput={(event) => {
            setLevel(Number(event.currentTarget.value));
            // With one input the three are compared by their levels.
            if (inputs === 'one') forget();
          }}
        />
        <span class="about">{texts.levelValue(level)}</span>
      </div>
      {needsOpen && <p class="about">{texts.openFirst}</p>}
      <ol class="card-states">
        {STATES.map((state) => {
          const isBarred = doing !== undefined || (needsOpen && state !== 'open');
          return (
            <li key={state}>
              <button
                type="button"
                aria-disabled={isBarred || undefined}
                onClick={() => {
                  if (!isBarred) void record(state);
                }}
              >
                {texts.states[state]}
              </button>
              {taken[state] && <span class="measure-typed">{texts.recorded[state]}</span>}
            </li>
          );
        })}
      </ol>
      <CardStatus doing={doing} problem={problem} onStop={stop} done={curves && texts.done(kept(curves))} />
      {all && (
        <button
          type="button"
          class="link"
          aria-disabled={doing !== undefined || undefined}
          onClick={() => {
            if (doing === undefined) void use(() => workOut(all));
          }}
        >
          {texts.again}
        </button>
      )}
      {curves && (
        <>
          <Plot title={impedanceSweepWords.title} data={curves} draw={impedanceCurve} />
          <button
            type="button"
            onClick={() => download(`${texts.fileName}.csv`, impedanceSweepWords.csv(curves.measured), 'text/csv')}
          >
            {texts.save}
          </button>
        </>
      )}
    </section>
  );
}

/** A card with one input gives its samples once, or twice; two that are silent say nothing of it. */
const isOneInput = (left: Float32Array, right: Float32Array | undefined): boolean =>
  !right || (right.every((x, i) => x === left[i]) && left.some((x) => x !== 0));

const kept = ({ measured }: ImpedanceCurves): number =>
  measured.find(({ frequency }) => frequency === KEPT)?.magnitude.value ?? Number.NaN;

const DIGITS = 7;
/** The least share that the card takes for its noise. */
const LEAST_NOISE = 1e-5;
const at = ({ readings }: ToneReadings): ToneReading | undefined =>
  readings.find(({ frequency }) => frequency === KEPT);

/** The three transfers at one frequency, as the fields of the card have them. */
function fieldsOf(states: ThreeStates<ToneReadings>): Record<string, string> {
  const fields: Record<string, string> = { frequency: '1 kHz' };
  const open = at(states.open);
  if (!open) return fields;
  const size = Math.hypot(open.transfer.re, open.transfer.im);
  const noise = Math.max(LEAST_NOISE * size, ...STATES.map((state) => at(states[state])?.standardError ?? 0)) / size;
  fields.noise = `${(noise * 100).toPrecision(3)} %`;
  for (const [name, state] of [
    ['open', 'open'],
    ['known', 'known'],
    ['phones', 'device'],
  ] as const) {
    const { re, im } = at(states[state])?.transfer ?? { re: Number.NaN, im: Number.NaN };
    fields[`${name}.level`] = Math.hypot(re, im).toPrecision(DIGITS);
    fields[`${name}.phase`] = `${((Math.atan2(im, re) * 180) / Math.PI).toFixed(4)}°`;
  }
  return fields;
}
