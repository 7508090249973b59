import { view } from '../state/view.ts';
import { Workbench } from '../workbenches/Workbench.tsx';
import { Answer } from './Answer.tsx';
import { BadFileDialog, PasteDialog } from './Dialogs.tsx';
import { DialStrip } from './dial/DialStrip.tsx';
import { Header } from './Header.tsx';
import { Notices } from './Notices.tsx';
import { PathStrip } from './PathStrip.tsx';
import { Side } from './Side.tsx';
import { StationList } from './StationList.tsx';
import { OtherView } from './Views.tsx';

export function App() {
  return (
    <div class="page">
      <Header />
      <main class="main">
        {view.value === 'set' ? (
          <>
            <div class="lead">
              <Answer />
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
      {view.value === 'set' && <DialStrip />}
      <Notices />
      <BadFileDialog />
      <PasteDialog />
    </div>
  );
}
