import type { Path } from '../../../../engine/index.ts';
import { fieldBenchWords } from '../../../../outputs/words/index.ts';
import { PartEditor } from '../../../editing/PartEditor.tsx';
import { download } from '../../../state/download.ts';
import { useLeftOut } from '../../../state/pieces.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { FieldPlace } from '../place/index.tsx';

const STATIONS: Path = ['place', 'stations'];

/** What can be had at the place, and the place itself. */
export function FieldBench() {
  const { reception, receptionSet, chosen, stationIndex, time, written, change, chooseStation, keepStation } =
    useOpenSet();
  const leftOut = useLeftOut();
  const now = reception.value;
  const set = receptionSet.value;
  // The station whose fields are open: the one chosen, even while the figures are behind.
  const open = stationIndex.value ?? chosen.value?.index;
  return (
    <>
      {now && set && (
        <FieldPlace
          written={written.value}
          set={set}
          reception={now}
          chosen={open}
          leftOut={leftOut}
          onChoose={chooseStation}
          onChange={(next, label) => change(() => next, { label })}
          time={time.value}
          onTime={(when) => {
            time.value = when;
          }}
          onSave={(text, name, type) => download(name, text, type)}
          editor={
            open !== undefined && (
              // A change may let another station be heard best: the fields under the hand stay this one's.
              <div onInput={() => keepStation(open)}>
                <PartEditor key={open} path={[...STATIONS, open]} />
              </div>
            )
          }
        />
      )}
      <section class="card" aria-labelledby="place-title">
        <h3 id="place-title">{fieldBenchWords.place}</h3>
        <PartEditor path={['place']} except={['stations']} />
      </section>
      <section class="card" aria-labelledby="set-notes-title">
        <h3 id="set-notes-title">{fieldBenchWords.setNotes}</h3>
        <PartEditor path={[]} only={['notes']} />
      </section>
    </>
  );
}
