import { useMemo, useState } from 'preact/hooks';
import {
  BANDS,
  type BandName,
  type Hertz,
  parseQuantity,
  typedQuantity,
  valueAtPath,
} from '../../../../engine/index.ts';
import { stationFrequency, bandWords as texts } from '../../../../outputs/words/index.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { tryOut } from '../../../state/try-out.ts';
import { useAnswer } from '../../../workers/use-worker.ts';
import type { BandAnswer, BandQuestion } from './band.worker.ts';

const NAMES = Object.keys(BANDS) as BandName[];
/** Hz: what a coil and a capacitor of these sets tune. */
const TUNABLE = { min: 1e5, max: 3e7, typical: [1.5e5, 1.6e6] as const };
/** Both ends in the unit of the dial. */
const inWords = (frequency: Hertz): string => stationFrequency(frequency);

/** A frequency as typed, in kHz where no unit is written. */
function frequencyOf(text: string): Hertz | undefined {
  const read = parseQuantity(typedQuantity(text, 'frequency', TUNABLE, '1000 kHz'), 'frequency');
  return read.ok && read.value >= TUNABLE.min && read.value <= TUNABLE.max ? read.value : undefined;
}

/** The turns for a range of frequencies on the formers and with the wire there are, or for another band. */
export function BandTurns() {
  const { receptionSet, written, change, tellOfChange } = useOpenSet();
  const [open, setOpen] = useState(false);
  const [band, setBand] = useState<BandName | 'own'>('medium wave');
  const [own, setOwn] = useState({ from: '150 kHz', to: '280 kHz' });
  const set = receptionSet.value;
  const ends =
    band === 'own'
      ? { from: frequencyOf(own.from), to: frequencyOf(own.to) }
      : { from: BANDS[band].from, to: BANDS[band].to };
  const { from, to } = ends;
  const isRising = from !== undefined && to !== undefined && to > from;
  const question = useMemo(
    (): BandQuestion | undefined =>
      open && set && isRising ? { set, ...(band === 'own' ? {} : { to: band }), band: { from, to } } : undefined,
    [open, set, isRising, from, to, band],
  );
  const { answer, error } = useAnswer<BandQuestion, BandAnswer>(
    () => new Worker(new URL('./band.worker.ts', import.meta.url), { type: 'module', name: 'band' }),
    question,
  );
  const isAlike = answer?.changes.every(({ path, to: value }) => valueAtPath(written.value, path) === value);
  const take = () => {
    if (!answer || from === undefined || to === undefined) return;
    tryOut({ change, tellOfChange }, answer.changes, texts.undoLabel(from, to), texts.taken(from, to));
  };
  const field = (key: 'from' | 'to') => (
    <label class="band-end">
      {texts[key]}{' '}
      <input
        type="text"
        class="figure-input"
        autocomplete="off"
        value={band === 'own' ? own[key] : inWords(BANDS[band][key])}
        aria-invalid={ends[key] === undefined || undefined}
        onInput={(event) => {
          const typed = event.currentTarget.value;
          setOwn({ ...(band === 'own' ? own : { from: inWords(from!), to: inWords(to!) }), [key]: typed });
          setBand('own');
        }}
      />
    </label>
  );
  return (
    <details class="card" onToggle={(event) => setOpen((event.currentTarget as HTMLDetailsElement).open)}>
      <summary>{texts.title}</summary>
      <p class="about">{texts.about}</p>
      <p class="band-range">
        <label for="band-name">{texts.band}</label>
        <select
          id="band-name"
          value={band}
          onChange={(event) => setBand(event.currentTarget.value as BandName | 'own')}
        >
          {[...NAMES, 'own' as const].map((one) => (
            <option key={one} value={one}>
              {texts.bands[one]}
            </option>
          ))}
        </select>
        {field('from')}
        {field('to')}
      </p>
      {(from === undefined || to === undefined) && (
        <p class="problem" role="alert">
          {texts.notAFrequency}
        </p>
      )}
      {from !== undefined && to !== undefined && !isRising && (
        <p class="problem" role="alert">
          {texts.notRising}
        </p>
      )}
      {error !== '' && <p class="problem">{texts.notFound(error)}</p>}
      {question && !answer && error === '' && <p class="quiet">{texts.trying}</p>}
      {question && answer && (
        <>
          <ul class="sentences">
            {answer.sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          {isAlike ? (
            <p class="quiet">{texts.alike}</p>
          ) : (
            <button type="button" class="primary" title={texts.takeLabel} onClick={take}>
              {texts.take}
            </button>
          )}
        </>
      )}
    </details>
  );
}
