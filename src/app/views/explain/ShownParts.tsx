import { PICTURE_IDS, PICTURES, POINTS, type StoryScene } from '../../../outputs/explain/index.ts';
import { explainTexts, pointTitles } from '../../../outputs/words/index.ts';

interface Props {
  scene: StoryScene;
  onScene(scene: StoryScene): void;
}

/** Which points of the path and which moving picture are on the stage; never none at all. */
export function ShownParts({ scene, onScene }: Props) {
  const texts = explainTexts.side;
  const showRow = (point: (typeof POINTS)[number], on: boolean) => {
    const kept = on
      ? [...scene.rows, { point }].sort((a, b) => POINTS.indexOf(a.point) - POINTS.indexOf(b.point))
      : scene.rows.filter((r) => r.point !== point);
    if (kept.length > 0 || scene.picture) onScene({ ...scene, rows: kept });
  };
  return (
    <>
      <fieldset class="explain-points">
        <legend>{texts.points}</legend>
        {POINTS.map((point) => (
          <label key={point} class="explain-check">
            <input
              type="checkbox"
              checked={scene.rows.some((r) => r.point === point)}
              onChange={(event) => showRow(point, event.currentTarget.checked)}
            />{' '}
            {pointTitles[point]}
          </label>
        ))}
      </fieldset>
      <label class="explain-field">
        <span>{texts.picture}</span>
        <select
          value={scene.picture ?? ''}
          onChange={(event) => {
            const id = PICTURE_IDS.find((p) => p === event.currentTarget.value);
            if (id || scene.rows.length > 0) onScene({ ...scene, picture: id });
          }}
        >
          <option value="">{texts.noPicture}</option>
          {PICTURE_IDS.map((id) => (
            <option key={id} value={id}>
              {PICTURES[id].title()}
            </option>
          ))}
        </select>
      </label>
    </>
  );
}
