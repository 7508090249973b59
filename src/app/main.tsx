import { render } from 'preact';
import { App } from './shell/App.tsx';
import { autosave } from './state/autosave.ts';
import { listenToThePage } from './state/keys.ts';
import './style/tokens.css';
import './style/page.css';
import './style/fields.css';
import './style/path.css';
import './style/dial.css';
import './style/print.css';

autosave();
listenToThePage();
render(<App />, document.getElementById('app')!);
