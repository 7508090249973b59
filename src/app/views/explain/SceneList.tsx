import { useEffect, useRef, useState } from 'preact/hooks';
import { FIGURE_MEANINGS, type StoryScene } from '../../../outputs/explain/index.ts';

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
export function SceneList({ scenes, own, at, onPick, onScenes, onEdit, current }: Props) {
  const [editing, setEditing] = useState(false);
  const chosen = at === undefined ? undefined : scenes[at];
  const fields = useRef<HTMLDivElement>(null);
  const open = editing && chosen !== undefined;
  // The list above them is long.
  useEffect(() => {
    if (open) fields.current?.scrollIntoView({ block: 'nearest' });
  }, [open]);
  const move = (index: number, by: number) => {
    const to = index + by;
    if (to < 0 || to >= scenes.length) return;
    const next = [...scenes];
    [next[index], next[to]] = [next[to], next[index]];
    onScenes(next, to);
  };
  return (
    <section class="explain-scenes" aria-label="Scenes">
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
        <button
          type="button"
          onClick={() => {
            const place = at === undefined ? scenes.length : at + 1;
            onScenes(
              [...scenes.slice(0, place), { ...current(), title: 'A view of mine' }, ...scenes.slice(place)],
              place,
            );
            setEditing(true);
          }}
        >
          Add this view
        </button>
        <button type="button" aria-expanded={editing} disabled={!chosen} onClick={() => setEditing(!editing)}>
          Edit
        </button>
      </div>
      {editing && chosen && at !== undefined && (
        <div class="explain-edit" ref={fields}>
          <label>
            <span>Title</span>
            <input
              type="text"
              value={chosen.title}
              maxLength={120}
              onChange={(event) => onEdit({ title: event.currentTarget.value })}
            />
          </label>
          <label>
            <span>Caption</span>
            <textarea
              rows={3}
              maxLength={600}
              value={chosen.caption}
              onChange={(event) => onEdit({ caption: event.currentTarget.value })}
            />
          </label>
          <label>
            <span>What you say</span>
            <textarea
              rows={6}
              maxLength={5000}
              value={chosen.note}
              onChange={(event) => onEdit({ note: event.currentTarget.value })}
            />
          </label>
          <details>
            <summary>Figures that fill themselves in</summary>
            <dl class="explain-names">
              {Object.entries(FIGURE_MEANINGS).map(([name, meaning]) => (
                <div key={name}>
                  <dt>{`{${name}}`}</dt>
                  <dd>{meaning}</dd>
                </div>
              ))}
            </dl>
          </details>
          <div class="explain-buttons">
            <button type="button" onClick={() => onEdit({ ...current(), title: chosen.title })}>
              Take the view as it is now
            </button>
            <button type="button" disabled={at === 0} onClick={() => move(at, -1)}>
              Earlier
            </button>
            <button type="button" disabled={at === scenes.length - 1} onClick={() => move(at, 1)}>
              Later
            </button>
            <button
              type="button"
              disabled={scenes.length < 2}
              onClick={() => {
                onScenes(
                  scenes.filter((_, i) => i !== at),
                  Math.max(0, at - 1),
                );
              }}
            >
              Take it out
            </button>
          </div>
        </div>
      )}
      {own && (
        <p class="quiet">
          These are your own, kept with the set.{' '}
          <button type="button" class="link" onClick={() => onScenes(undefined)}>
            Back to the story as it came
          </button>
        </p>
      )}
    </section>
  );
}
