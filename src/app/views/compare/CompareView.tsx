import { useEffect, useMemo } from 'preact/hooks';
import type { SetDescription } from '../../../engine/index.ts';
import {
  dialsCompared,
  dialsOf,
  dialsReadout,
  resonancesCompared,
  resonancesOf,
  resonancesReadout,
} from '../../../outputs/plots/index.ts';
import { comparedParts, comparedPath } from '../../../outputs/tables/index.ts';
import { stationFrequency, compareView as texts } from '../../../outputs/words/index.ts';
import { byFrequency } from '../../description/by-frequency.ts';
import { besideOf, comparedIds } from '../../state/compared-sets.ts';
import { view } from '../../state/page-view.ts';
import { useOpenSet, useShelf } from '../../state/set-context.ts';
import type { ShelfEntry } from '../../state/shelf/shelf-entry.ts';
import { DayNight } from '../../widgets/DayNight.tsx';
import { Plot } from '../../widgets/Plot.tsx';
import { useAnswer } from '../../workers/use-worker.ts';
import { ComparedTable } from './ComparedTable.tsx';
import { Differences } from './Differences.tsx';
import { HearEach } from './HearEach.tsx';
import { SaveSheet } from './SaveSheet.tsx';
import { SlotChoice } from './SlotChoice.tsx';
import type { SetsAnswer, SetsQuestion } from './sets-question.ts';
import { useKeptSets } from './use-kept-sets.ts';
import './compare.css';

const newSetsWorker = (): Worker =>
  new Worker(new URL('./sets.worker.ts', import.meta.url), { type: 'module', name: 'compare-sets' });

/** The set in focus and others of the shelf on one station: what each gives, and what makes the difference. */
export function CompareView({ set }: { readonly set: SetDescription }) {
  const shelf = useShelf();
  const { id, chosen, time } = useOpenSet();
  useEffect(() => void shelf.refresh(), [shelf]);
  const others = (shelf.entries.value ?? []).filter((entry) => entry.id !== id);
  const beside = besideOf(comparedIds.value, id, others);
  const entries = beside.flatMap((one): readonly ShelfEntry[] => others.filter((entry) => entry.id === one));
  const kept = useKeptSets(entries);
  const station = chosen.value?.index;
  const question = useMemo(
    (): SetsQuestion | undefined =>
      kept && kept.length > 0 && station !== undefined
        ? { first: set, others: kept, station, time: time.value }
        : undefined,
    [set, kept, station, time.value],
  );
  const { answer, error, isCurrent } = useAnswer<SetsQuestion, SetsAnswer>(newSetsWorker, question);
  const hint = hintFor({ others: others.length, beside: beside.length, station, answer, error });
  return (
    <section class="compare" aria-labelledby="compare-title">
      <div class="compare-head">
        <h2 id="compare-title">{texts.title}</h2>
        <button type="button" class="compare-back" onClick={() => (view.value = 'shelf')}>
          {texts.back}
        </button>
        <StationAndTime set={set} />
      </div>
      <SlotChoice name={set.name} beside={beside} others={others} />
      {error !== '' && isCurrent && beside.length > 0 && (
        <p class="problem" role="alert">
          {texts.failed(error)}
        </p>
      )}
      {hint !== '' && (
        <p class="quiet" role="status">
          {hint}
        </p>
      )}
      {answer && beside.length > 0 && <Answer answer={answer} isCurrent={isCurrent} />}
    </section>
  );
}

interface HintFacts {
  readonly others: number;
  readonly beside: number;
  readonly station: number | undefined;
  readonly answer: SetsAnswer | undefined;
  readonly error: string;
}

function hintFor({ others, beside, station, answer, error }: HintFacts): string {
  if (station === undefined) return texts.noStation;
  if (others === 0) return texts.onlyOne;
  if (beside === 0) return texts.chooseOne;
  return answer || error !== '' ? '' : texts.working;
}

/** The station in focus and the time, which are those of the whole page. */
function StationAndTime({ set }: { readonly set: SetDescription }) {
  const { chosen, chooseStation } = useOpenSet();
  const { stations } = set.place;
  return (
    <>
      <label>
        {texts.station}{' '}
        <select
          value={chosen.value?.index}
          onChange={(event) => chooseStation(Number(event.currentTarget.value))}
          disabled={stations.length === 0}
        >
          {byFrequency(stations).map((index) => (
            <option key={index} value={index}>
              {`${stations[index].name}, ${stationFrequency(stations[index].frequency)}`}
            </option>
          ))}
        </select>
      </label>
      <DayNight />
    </>
  );
}

function Answer({ answer, isCurrent }: { readonly answer: SetsAnswer; readonly isCurrent: boolean }) {
  const { compared, curves, unread, withStandIns } = answer;
  const { time } = useOpenSet();
  const names = compared?.sets.map(({ set }) => set.name) ?? [];
  const resonances = useMemo(() => compared && resonancesOf(compared, curves), [compared, curves]);
  const dials = useMemo(() => compared && dialsOf(compared), [compared]);
  return (
    <div class="compare-answer" aria-busy={!isCurrent}>
      {unread.length > 0 && <p class="problem">{texts.unread(unread)}</p>}
      {withStandIns.length > 0 && <p class="quiet">{texts.standIns(withStandIns)}</p>}
      {compared && resonances && dials && (
        <>
          <Differences {...compared} />
          <HearEach compared={compared} time={time.value} />
          <section class="card" aria-labelledby="compare-path-title">
            <h3 id="compare-path-title">{texts.path}</h3>
            <ComparedTable
              title={texts.path}
              rowTitle={texts.rowTitle.path}
              names={names}
              rows={comparedPath(compared)}
            />
            <p class="quiet">{texts.range}</p>
          </section>
          <div class="compare-plots">
            <div class="card">
              <Plot title={texts.curves} data={resonances} draw={resonancesCompared} read={resonancesReadout} />
            </div>
            <div class="card">
              <Plot title={texts.dials} data={dials} draw={dialsCompared} read={dialsReadout} />
              <p class="quiet">{texts.dialsAbout}</p>
            </div>
          </div>
          <section class="card compare-parts" aria-labelledby="compare-parts-title">
            <h3 id="compare-parts-title">{texts.parts}</h3>
            <ComparedTable
              title={texts.parts}
              rowTitle={texts.rowTitle.parts}
              names={names}
              rows={comparedParts(compared)}
            />
          </section>
          <SaveSheet compared={compared} curves={curves} />
        </>
      )}
    </div>
  );
}
