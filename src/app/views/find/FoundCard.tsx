import { useMemo } from 'preact/hooks';
import { readValue, writeText } from '../../../engine/index.ts';
import { drawCircuit } from '../../../outputs/drawings/index.ts';
import {
  findAnswer,
  foundChance,
  foundUse,
  findView as texts,
  wantName,
  wantState,
  whyFound,
} from '../../../outputs/words/index.ts';
import { download, fileStem } from '../../state/download.ts';
import { openWritten } from '../../state/files.ts';
import { chosenFound, finding } from '../../state/finding.ts';
import { view } from '../../state/page-view.ts';
import { useShelf } from '../../state/set-context.ts';
import { SceneView } from '../../widgets/Plot.tsx';

/** The chosen set: why it is there, its figures, what it takes of the box; open or save it. */
export function FoundCard() {
  const shelf = useShelf();
  const now = finding.value;
  const chosen = chosenFound.value;
  const scene = useMemo(() => {
    const read = chosen && readValue(chosen.description);
    return read?.ok ? drawCircuit(read.set) : undefined;
  }, [chosen]);
  if (!now || !chosen) return <div class="find-card" />;
  const { question, sets } = now;
  const { box, read } = question;
  const fileName = texts.fileName(fileStem(chosen.name, 'set'));
  return (
    <article class="card find-card" aria-labelledby="found-title">
      <h2 id="found-title">{texts.point(sets.indexOf(chosen) + 1, chosen.name)}</h2>
      <p>{whyFound(chosen, read.wants)}</p>
      <dl class="find-figures">
        {chosen.figures.map((figure, k) => (
          <div key={k}>
            <dt>{wantName(figure.want)}</dt>
            <dd>{wantState(figure)}</dd>
          </div>
        ))}
      </dl>
      <ul class="sentences">
        {chosen.chances.map((chance) => (
          <li key={chance.station}>{foundChance(chance, read.place.stations[chance.station].name)}</li>
        ))}
        <li>{findAnswer.parts(chosen.parts, chosen.effort)}</li>
      </ul>
      <p class="buttons">
        <button
          type="button"
          class="primary"
          onClick={() => {
            if (openWritten(shelf, chosen.description, fileName).length === 0) view.value = 'set';
          }}
        >
          {texts.open}
        </button>
        <button type="button" onClick={() => download(fileName, writeText(chosen.description))}>
          {texts.save}
        </button>
      </p>
      <h3>{texts.takes}</h3>
      <ul class="sentences">
        {chosen.uses.map((use) => (
          <li key={`${use.list} ${use.index}`}>{foundUse(box, use)}</li>
        ))}
      </ul>
      {scene && (
        <>
          <h3>{texts.circuit}</h3>
          <figure class="drawing find-circuit">
            <SceneView scene={scene} />
          </figure>
        </>
      )}
    </article>
  );
}
