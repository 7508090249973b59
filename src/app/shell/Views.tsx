import { headerWords, widgetWords } from '../../outputs/words/index.ts';
import { VIEWS, view } from '../state/page-view.ts';
import { useOpenSet } from '../state/set-context.ts';
import { Later } from '../widgets/Later.tsx';
import { PrintGuard } from './PrintGuard.tsx';

/** What one is doing: working on the set, or showing it. */
export function ViewChoice() {
  return (
    <nav class="views" aria-label={headerWords.views}>
      {VIEWS.map((id) => (
        <button key={id} type="button" aria-pressed={view.value === id} onClick={() => (view.value = id)}>
          {headerWords.view[id]}
        </button>
      ))}
    </nav>
  );
}

const loadShelf = () => import('../views/shelf/ShelfView.tsx').then((m) => m.ShelfView);
const loadHandbook = () => import('../views/handbook/Handbook.tsx').then((m) => m.Handbook);
const loadCompare = () => import('../views/compare/CompareView.tsx').then((m) => m.CompareView);
const loadFind = () => import('../views/find/Find.tsx').then((m) => m.Find);
const loadSheets = () => import('../views/sheets/Sheets.tsx').then((m) => m.Sheets);
const loadMeasure = () => import('../views/measure/Measure.tsx').then((m) => m.Measure);
const loadFaults = () => import('../views/faults/Faults.tsx').then((m) => m.Faults);
const loadLog = () => import('../views/log/LogView.tsx').then((m) => m.LogView);
const loadExplain = () => import('../views/explain/Explain.tsx').then((m) => m.Explain);

/** A view beside the set's own, in the page's whole width. */
export function OtherView() {
  return (
    <>
      {view.value === 'sheets' && <PrintGuard />}
      <TheView />
    </>
  );
}

function TheView() {
  const { written, receptionSet, reception, time, change } = useOpenSet();
  if (view.value === 'shelf') return <Later key="shelf" load={loadShelf} name={headerWords.shelf} props={{}} />;
  if (view.value === 'handbook')
    return <Later key="handbook" load={loadHandbook} name={headerWords.handbook} props={{}} />;
  const set = receptionSet.value;
  const now = reception.value;
  if (!set || !now) return <p class="quiet">{widgetWords.calculatingFirst}</p>;
  if (view.value === 'compare')
    return <Later key="compare" load={loadCompare} name={headerWords.compare} props={{ set }} />;
  if (view.value === 'find')
    return <Later key="find" load={loadFind} name={headerWords.view.find} props={{ set, time: time.value }} />;
  if (view.value === 'sheets')
    return (
      <Later
        key="sheets"
        load={loadSheets}
        name={headerWords.view.sheets}
        props={{ written: written.value, set, reception: now }}
      />
    );
  if (view.value === 'measure')
    return <Later key="measure" load={loadMeasure} name={headerWords.view.measure} props={{ set }} />;
  if (view.value === 'faults')
    return <Later key="faults" load={loadFaults} name={headerWords.view.faults} props={{ set, time: time.value }} />;
  if (view.value === 'log') return <Later key="log" load={loadLog} name={headerWords.view.log} props={{ set }} />;
  return (
    <Later
      key="explain"
      load={loadExplain}
      name={headerWords.view.explain}
      props={{
        written: written.value,
        set,
        reception: now,
        time: time.value,
        onChange: (next) => change(next, { label: headerWords.scenesChanged }),
      }}
    />
  );
}
