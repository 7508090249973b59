import { useMemo, useState } from 'preact/hooks';
import { isRecord, valueAtPath } from '../../../../engine/index.ts';
import { trapTexts, twoCircuitsTexts } from '../../../../outputs/words/index.ts';
import { useChosenStation } from '../../../state/chosen-station.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { tryOut } from '../../../state/try-out.ts';
import { useAnswer } from '../../../workers/use-worker.ts';
import type { ReworkAnswer, ReworkQuestion } from './rework.worker.ts';
import { newReworkWorker } from './use-two-circuits.ts';

/** What is worked out for the station in focus while it is asked for. */
function useRework(what: ReworkQuestion['what'] | undefined) {
  const { chosen, receptionSet, time, written } = useOpenSet();
  const set = receptionSet.value;
  const index = chosen.value?.index;
  const when = time.value;
  // Only two circuits are written by what stands in the description.
  const text = what === 'two circuits' ? written.value : undefined;
  const question = useMemo(
    (): ReworkQuestion | undefined =>
      what !== undefined && set && index !== undefined
        ? { set, written: text, station: index, time: when, what }
        : undefined,
    [JSON.stringify(what), set, text, index, when],
  );
  const { answer, error, isCurrent } = useAnswer<ReworkQuestion, ReworkAnswer>(newReworkWorker, question);
  // It is shown under the name of a station, and changes the set: one for another station must not stand there.
  const isThis = question !== undefined && isCurrent;
  return {
    answer: isThis && error === '' ? answer : undefined,
    error: isThis ? error : '',
    isAsked: question !== undefined,
  };
}

function Sentences({ of }: { of: readonly string[] }) {
  return (
    <ul class="sentences">
      {of.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}

/** Two tuned circuits out of the set there is, worked out when it is opened. */
export function TwoCircuitsCard() {
  const { change, tellOfChange } = useOpenSet();
  const [open, setOpen] = useState(false);
  const { answer, error, isAsked } = useRework(open ? 'two circuits' : undefined);
  const station = useChosenStation();
  if (!station) return null;
  return (
    <details class="card" onToggle={(event) => setOpen((event.currentTarget as HTMLDetailsElement).open)}>
      <summary>{twoCircuitsTexts.title}</summary>
      <p class="about">{twoCircuitsTexts.about(station.name)}</p>
      {error !== '' && <p class="problem">{twoCircuitsTexts.notFound(error)}</p>}
      {isAsked && !answer && error === '' && <p class="quiet">{twoCircuitsTexts.trying}</p>}
      {answer?.sentences.map((of) => (
        <Sentences key={of.join()} of={of} />
      ))}
      {answer && answer.changes.length > 0 && (
        <button
          type="button"
          class="primary"
          onClick={() =>
            tryOut(
              { change, tellOfChange },
              answer.changes,
              twoCircuitsTexts.undoLabel,
              answer.sentences.flat().join(' '),
            )
          }
        >
          {twoCircuitsTexts.take}
        </button>
      )}
    </details>
  );
}

/** A trap for a station, and what the traps there are do. */
export function Traps() {
  const { written, receptionSet, change, tellOfChange } = useOpenSet();
  const [picked, setPicked] = useState<number | undefined>(undefined);
  const traps = valueAtPath(written.value, ['arrangement', 'traps']);
  const count = Array.isArray(traps) ? traps.filter(isRecord).length : 0;
  const there = useRework(count > 0 ? 'traps' : undefined);
  const station = useChosenStation();
  const stations = receptionSet.value?.place.stations ?? [];
  // The station listened to is not stopped, nor one that is no longer in the list.
  const stop = picked !== undefined && picked !== station?.index && picked < stations.length ? picked : undefined;
  const offered = useRework(stop === undefined ? undefined : { stop });
  if (!station) return null;
  const { answer, error } = offered;
  return (
    <section class="card" aria-labelledby="traps-title">
      <h3 id="traps-title">{trapTexts.title}</h3>
      {count > 0 && there.answer?.sentences.map((of) => <Sentences key={of.join()} of={of} />)}
      <p>
        <label for="trap-stop">{trapTexts.stop}</label>{' '}
        <select
          id="trap-stop"
          value={stop ?? ''}
          onChange={({ currentTarget: { value } }) => setPicked(value === '' ? undefined : Number(value))}
        >
          <option value="">{trapTexts.choose}</option>
          {stations.map(
            ({ name }, i) =>
              i !== station.index && (
                <option key={i} value={i}>
                  {name}
                </option>
              ),
          )}
        </select>
      </p>
      {stop === undefined && count === 0 && <p class="about">{trapTexts.about}</p>}
      {stop !== undefined && error !== '' && <p class="problem">{trapTexts.notFound(error)}</p>}
      {offered.isAsked && !answer && error === '' && <p class="quiet">{trapTexts.trying}</p>}
      {stop !== undefined && answer && (
        <>
          {answer.sentences.map((of) => (
            <Sentences key={of.join()} of={of} />
          ))}
          {answer.changes.length > 0 && (
            <button
              type="button"
              class="primary"
              onClick={() => {
                tryOut(
                  { change, tellOfChange },
                  answer.changes,
                  trapTexts.undoLabel(stations[stop]?.name ?? ''),
                  // What it costs comes first: the line has not always room for all.
                  answer.sentences.flatMap((of) => of.slice(1).reverse()).join(' '),
                );
                setPicked(undefined);
              }}
            >
              {trapTexts.make}
            </button>
          )}
        </>
      )}
    </section>
  );
}
