import { render } from 'preact';
import { App } from './shell/App.tsx';
import { autosave } from './state/autosave.ts';
import { newEngineWorker } from './state/engine-worker.ts';
import { DEMO } from './state/examples.ts';
import { listenToThePage } from './state/keys.ts';
import { createOpenSets } from './state/open-sets.ts';
import { newReadingWorker } from './state/reading-worker.ts';
import { openLinksOf } from './state/set-link.ts';
import { createSetWorkers } from './state/set-workers.ts';
import './style/face.css';
import './style/tokens.css';
import './style/page.css';
import './style/fields.css';
import './style/path.css';
import './style/dial.css';
import './style/print.css';

/** The set that a browser kept before it knew several. */
const FIRST_ID = 'first';

const workers = createSetWorkers((worker) => (worker === 'reading' ? newReadingWorker() : newEngineWorker(worker)));
const sets = createOpenSets(workers, {
  id: FIRST_ID,
  description: JSON.parse(DEMO.text) as unknown,
  fileName: DEMO.file,
});
// A set in a link takes the place of what was kept, so that goes first: it can be gone back to.
void autosave(sets, FIRST_ID).then(() => openLinksOf(sets));
listenToThePage(sets);
render(<App sets={sets} />, document.getElementById('app')!);
