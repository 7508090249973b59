import { useEffect, useRef, useState } from 'preact/hooks';
import { meaningsOfFigures, type StoryScene } from '../../../outputs/explain/index.ts';
import { explainTexts } from '../../../outputs/words/index.ts';
import { useTyped } from '../../editing/use-typed.ts';
import { SceneRows, SceneSound, SceneZoom } from './SceneParts.tsx';

interface Props {
  scenes: readonly StoryScene[];
  /** They are the person's own, kept in the description. */
  own: boolean;
  at?: number;
  onPick(index: number): void;
  /** Another list, and which of it is then on the stage; no list: back to the ready story. */
  onScenes(scenes: readonly StoryScene[] | undefined, index?: number): void;
  /** The chosen scene's own words or view. */
  onEdit(part: Partial<StoryScene>): void;
  /** What is on the stage now, as a scene. */
  current(): StoryScene;
}

/** The prepared views in order: shown, edited, moved, added, taken out. */
export function SceneList(props: Props) {
  const { scenes, own, at, onPick, onScenes, current } = props;
  const [editing, setEditing] = useState(false);
  const texts = explainTexts.scenes;
  const isChosen = at !== undefined && scenes[at] !== undefined;
  const add = () => {
    const place = at === undefined ? scenes.length : at + 1;
    onScenes([...scenes.slice(0, place), { ...current(), title: texts.added }, ...scenes.slice(place)], place);
    setEditing(true);
  };
  return (
    <section class="explain-scenes" aria-label={explainTexts.side.scenes}>
      <ol>
        {scenes.map((scene, i) => (
          <li key={i}>
            <button type="button" aria-current={i === at ? 'true' : undefined} onClick={() => onPick(i)}>
              <span class="number">{i + 1}</span>
              <span>{scene.title}</span>
            </button>
          </li>
        ))}
      </ol>
      <div class="explain-buttons">
        <button type="button" onClick={add}>
          {texts.add}
        </button>
        <button type="button" aria-expanded={editing} disabled={!isChosen} onClick={() => setEditing(!editing)}>
          {texts.edit}
        </button>
      </div>
      {editing && isChosen && <SceneEditor {...props} at={at} />}
      {own && (
        <p class="quiet">
          {texts.own}{' '}
          <button type="button" class="link" onClick={() => onScenes(undefined)}>
            {texts.restore}
          </button>
        </p>
      )}
    </section>
  );
}

/** The chosen scene's words, view and place in the list. */
function SceneEditor({ scenes, at, onScenes, onEdit, current }: Props & { at: number }) {
  const fields = useRef<HTMLDivElement>(null);
  const texts = explainTexts.scenes;
  const chosen = scenes[at];
  const title = useTyped(chosen.title, (title) => onEdit({ title }));
  const caption = useTyped(chosen.caption, (caption) => onEdit({ caption }));
  const note = useTyped(chosen.note, (note) => onEdit({ note }));
  // The list above them is long.
  useEffect(() => {
    fields.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  const move = (by: number) => {
    const to = at + by;
    if (to < 0 || to >= scenes.length) return;
    const next = [...scenes];
    [next[at], next[to]] = [next[to], next[at]];
    onScenes(next, to);
  };
  const remove = () =>
    onScenes(
      scenes.filter((_, i) => i !== at),
      Math.max(0, at - 1),
    );
  return (
    <div class="explain-edit" ref={fields}>
      <label>
        <span>{texts.title}</span>
        <input type="text" maxLength={120} {...title} />
      </label>
      <label>
        <span>{texts.caption}</span>
        <textarea rows={3} maxLength={600} {...caption} />
      </label>
      <label>
        <span>{texts.note}</span>
        <textarea rows={6} maxLength={5000} {...note} />
      </label>
      <SceneRows scene={chosen} onEdit={onEdit} />
      <SceneZoom scene={chosen} onEdit={onEdit} current={current} />
      <SceneSound scene={chosen} onEdit={onEdit} />
      <details>
        <summary>{texts.figures}</summary>
        <dl class="explain-names">
          {meaningsOfFigures().map(([name, meaning]) => (
            <div key={name}>
              <dt>{`{${name}}`}</dt>
              <dd>{meaning}</dd>
            </div>
          ))}
        </dl>
      </details>
      <div class="explain-buttons">
        <button type="button" onClick={() => onEdit({ ...current(), title: chosen.title })}>
          {texts.takeView}
        </button>
        <button type="button" disabled={at === 0} onClick={() => move(-1)}>
          {texts.earlier}
        </button>
        <button type="button" disabled={at === scenes.length - 1} onClick={() => move(1)}>
          {texts.later}
        </button>
        <button type="button" disabled={scenes.length < 2} onClick={remove}>
          {texts.remove}
        </button>
      </div>
    </div>
  );
}
