// First, since nothing may start a worker before it.
import './state/trusted.ts';
import { render } from 'preact';
import { App } from './shell/App.tsx';
import { autosave } from './state/autosave.ts';
import { openDocumentStore } from './state/document-store.ts';
import { newEngineWorker } from './state/engine-worker.ts';
import { DEMO } from './state/examples.ts';
import { listenToThePage } from './state/keys.ts';
import { openLaunchedFiles } from './state/launched-files.ts';
import { followVersions } from './state/new-version.ts';
import { createOpenSets, FIRST_ID } from './state/open-sets.ts';
import { newReadingWorker } from './state/reading-worker.ts';
import { openLinksOf } from './state/set-link.ts';
import { createSetWorkers } from './state/set-workers.ts';
import { openShared } from './state/shared-with-page.ts';
import { keepFocus, keptFocus } from './state/shelf/focus-kept.ts';
import { createPlaces } from './state/shelf/kept-places.ts';
import { openPlaceStore } from './state/shelf/place-store.ts';
import { createShelf } from './state/shelf/shelf.ts';
import { openTabs } from './state/tabs.ts';
import { openWriterLock } from './state/writer-lock.ts';
import './style/face.css';
import './style/tokens.css';
import './style/page.css';
import './style/fields.css';
import './style/path.css';
import './style/dial.css';
import './style/print.css';

const workers = createSetWorkers((worker) => (worker === 'reading' ? newReadingWorker() : newEngineWorker(worker)));
const firstId = keptFocus() ?? FIRST_ID;
keepFocus(firstId);
const sets = createOpenSets(workers, {
  id: firstId,
  description: JSON.parse(DEMO.text) as unknown,
  fileName: DEMO.file,
});
const tools = { store: openDocumentStore(FIRST_ID), tabs: openTabs(), openLock: openWriterLock, now: Date.now };
const keeping = autosave(sets, tools);
const shelf = createShelf({ sets, keeping, ...tools }, DEMO);
const places = createPlaces(openPlaceStore(), shelf, tools.tabs.tellOfShelf);
// A set in a link is one more: what was kept is there first, to be gone back to.
void keeping.ready.then(() => {
  openLinksOf(shelf);
  openLaunchedFiles(shelf);
  void openShared(shelf);
  void shelf.refresh();
});
tools.tabs.hearOfShelf(() => void Promise.all([shelf.refresh(), places.refreshAgain()]));
listenToThePage(sets, shelf);
render(<App sets={sets} shelf={shelf} places={places} />, document.getElementById('app')!);
followVersions();
