import { headerWords } from '../../outputs/words/index.ts';
import { isBeginning } from '../state/begin.ts';
import { EditedContext } from '../state/edited.ts';
import { glossaryAt } from '../state/glossary.ts';
import type { OpenSets } from '../state/open-sets.ts';
import { view } from '../state/page-view.ts';
import { PlacesContext, SetContext, ShelfContext } from '../state/set-context.ts';
import type { Places } from '../state/shelf/kept-places.ts';
import type { Shelf } from '../state/shelf/shelf.ts';
import { AnswerInWords } from '../views/set/Answer.tsx';
import { Workbench } from '../views/set/bench/Workbench.tsx';
import { DialStrip } from '../views/set/dial/DialStrip.tsx';
import { PathStrip } from '../views/set/PathStrip.tsx';
import { StationList } from '../views/set/StationList.tsx';
import { BadFileDialog, PasteDialog } from '../widgets/Dialogs.tsx';
import { Later } from '../widgets/Later.tsx';
import { Notices } from '../widgets/Notices.tsx';
import { Header } from './Header.tsx';
import { Side } from './Side.tsx';
import { OtherView } from './Views.tsx';

const loadBegin = () => import('../views/begin/Begin.tsx').then((m) => m.Begin);
const loadGlossary = () => import('../widgets/Glossary.tsx').then((m) => m.Glossary);

interface Props {
  readonly sets: OpenSets;
  readonly shelf: Shelf;
  readonly places: Places;
}

/** The page, about the set in focus; another set begins with all of it anew. */
export function App({ sets, shelf, places }: Props) {
  const set = sets.focused.value;
  return (
    <ShelfContext.Provider value={shelf}>
      <PlacesContext.Provider value={places}>
        <SetContext.Provider value={set}>
          <EditedContext.Provider value={set}>
            <Page key={set.id} />
          </EditedContext.Provider>
        </SetContext.Provider>
      </PlacesContext.Provider>
    </ShelfContext.Provider>
  );
}

/** Over the header and the lists, for whoever goes by the keyboard. */
function SkipLinks() {
  const places = { workbench: headerWords.toWorkbench, suggestions: headerWords.toSuggestions };
  return (
    <nav class="skip-links" aria-label={headerWords.skip}>
      {Object.entries(places).map(([id, text]) => (
        <button key={id} type="button" onClick={() => document.getElementById(id)?.focus()}>
          {text}
        </button>
      ))}
    </nav>
  );
}

function Page() {
  return (
    <div class="page">
      {view.value === 'set' && <SkipLinks />}
      <Header />
      <main class="main">
        {view.value === 'set' ? (
          <>
            <div class="lead">
              <AnswerInWords />
              <PathStrip />
            </div>
            <div class="columns">
              <StationList />
              <Workbench />
              <Side />
            </div>
          </>
        ) : (
          <OtherView />
        )}
      </main>
      <div class="foot">
        <Notices />
        {view.value === 'set' && <DialStrip />}
      </div>
      <BadFileDialog />
      <PasteDialog />
      {isBeginning.value && <Later load={loadBegin} name={headerWords.fromBench} props={{}} />}
      {glossaryAt.value !== undefined && <Later load={loadGlossary} name={headerWords.glossary} props={{}} />}
    </div>
  );
}
