import { Fragment } from 'preact';
import { useId, useState } from 'preact/hooks';
import {
  problemText,
  problemWords,
  receptionHeadline,
  stationSentence,
  setWords as texts,
} from '../../../outputs/words/index.ts';
import { bandNameOf } from '../../description/on-band.ts';
import { fieldPath, nameOf } from '../../description/places.ts';
import { standInText } from '../../description/stand-in-text.ts';
import { useLeftOut } from '../../state/pieces.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { showField } from '../../widgets/show-field.ts';
import { BandSwitch } from './BandSwitch.tsx';
import { TrialStrip, useTrialHere } from './TrialStrip.tsx';
import { Wants } from './Wants.tsx';

/** The answer first, in words; below it the chosen station's. */
export function AnswerInWords() {
  const { reception, areFirstFigures, receptionError, chosen, problems, written, band } = useOpenSet();
  const now = reception.value;
  const station = chosen.value;
  const leftOut = useLeftOut();
  const trial = useTrialHere();
  const name = bandNameOf(written.value, band.value);
  return (
    <section
      class="answer"
      aria-label={texts.answer}
      aria-busy={areFirstFigures.value || !(now || receptionError.value)}
    >
      <BandSwitch />
      <p class="summary" aria-live="polite">
        {now ? receptionHeadline(now, name) : receptionError.value ? texts.notCalculated : texts.calculating}
      </p>
      <div class="answer-line">
        {station && (
          <p
            class={problems.value.length > 0 || trial ? 'chosen-sentence is-covered' : 'chosen-sentence'}
            title={areFirstFigures.value ? texts.firstFigures : undefined}
          >
            <strong>{texts.station(station.name, station.frequency)}</strong>{' '}
            {leftOut.has(station.index) ? texts.leftOutSentence : stationSentence(station)}
            {/* Said without room of its own: nothing moves when the medians come. */}
            {areFirstFigures.value && <span class="visually-hidden"> {texts.firstFigures}</span>}
          </p>
        )}
        {problems.value.length > 0 ? <Refused /> : trial && <TrialStrip trial={trial} />}
      </div>
      {receptionError.value && (
        <p class="problem" role="alert">
          {texts.failed(receptionError.value, now !== undefined)}
        </p>
      )}
      <Wants />
    </section>
  );
}

/**
 * While something is not right yet, the figures say what they use in its place: in the room of the sentence about the
 * station, so that the field being typed in does not move. All of it is there to be opened.
 */
function Refused() {
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  const { problems, written, stage, standIns, isBehind } = useOpenSet();
  const list = problems.value;
  const elsewhere = standIns.value.filter(({ path }) => !list.some((problem) => problem.path === path));
  const areLast = standIns.value.every(({ source }) => source === 'last');
  const [first, ...others] = list.slice(0, 6).map((problem) => {
    const { path, expected, hint } = problemText(problem, nameOf(written.value));
    return (
      <Fragment key={path + expected}>
        <button type="button" class="link" onClick={() => showField(stage, path)}>
          {fieldPath(path, written.value)}
        </button>
        {problemWords.inList(expected, hint)}
        {standInText(standIns.value, path)}
      </Fragment>
    );
  });
  return (
    <div class={isOpen ? 'behind is-open' : 'behind'} role="status">
      <p class="behind-line">
        <strong>
          {isBehind.value ? problemWords.lastValid : areLast ? problemWords.usesLastGood : problemWords.usesOthers}
        </strong>{' '}
        {problemWords.count(list.length)} {first}
      </p>
      <button type="button" class="chip" aria-expanded={isOpen} aria-controls={id} onClick={() => setOpen(!isOpen)}>
        {isOpen ? problemWords.fewer : problemWords.all}
      </button>
      <ul id={id} hidden={!isOpen}>
        {others.map((other) => (
          <li key={other.key}>{other}</li>
        ))}
        {list.length > 6 && <li>{problemWords.more(list.length - 6)}</li>}
        {elsewhere.slice(0, 6).map(({ path }) => (
          <li key={path}>
            <button type="button" class="link" onClick={() => showField(stage, path)}>
              {fieldPath(path, written.value)}
            </button>
            {standInText(standIns.value, path)}
          </li>
        ))}
      </ul>
    </div>
  );
}
