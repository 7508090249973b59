import { useEffect } from 'preact/hooks';
import type { SetDescription, TimeOfDay } from '../../../engine/index.ts';
import { findView as texts } from '../../../outputs/words/index.ts';
import { EditedContext } from '../../state/edited.ts';
import { EXAMPLE_BOXES } from '../../state/example-boxes.ts';
import { boxInView } from '../../state/notices.ts';
import { addBox, openBox, reopenBox } from '../../state/open-boxes.ts';
import { BoxShelf } from './BoxShelf.tsx';
import { BoxTray } from './BoxTray.tsx';
import { FoundCard } from './FoundCard.tsx';
import { Results } from './Results.tsx';
import { Search } from './Search.tsx';
import './find.css';

/** What a first visitor sees. */
const FIRST_BOX = 'beginner.json';

/** A box of parts, and the few sets worth building from it at the place of the open set. */
export function Find({ time }: { readonly set: SetDescription; readonly time: TimeOfDay }) {
  const box = openBox.value;
  useEffect(() => {
    if (!openBox.peek() && !reopenBox()) {
      const example = EXAMPLE_BOXES.find(({ file }) => file === FIRST_BOX) ?? EXAMPLE_BOXES[0];
      addBox(JSON.parse(example.text), example.file);
    }
  }, []);
  useEffect(() => {
    boxInView.value = box?.id;
    return () => {
      boxInView.value = undefined;
    };
  }, [box?.id]);
  return (
    <section class="find" aria-label={texts.label}>
      <div class="find-box">
        <BoxShelf />
        {box && (
          <EditedContext.Provider value={box} key={box.id}>
            <BoxTray box={box} />
          </EditedContext.Provider>
        )}
      </div>
      <div class="find-results">
        {box && <Search box={box} time={time} />}
        <Results />
      </div>
      <FoundCard />
    </section>
  );
}
