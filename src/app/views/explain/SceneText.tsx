import { filled, PICTURES, shownWords } from '../../../outputs/explain/index.ts';
import { explainTexts, warningSentences } from '../../../outputs/words/index.ts';
import type { ReadyScene } from './maker.ts';

/** A scene in words below its picture: note, warnings, and all that is drawn for who cannot see it. */
export function SceneText({ shown: { scene, prepared } }: { shown: ReadyScene }) {
  const { figures, facts, waves, rows } = prepared;
  const texts = explainTexts.stage;
  const picture = scene.picture && PICTURES[scene.picture];
  return (
    <>
      {picture && <p>{picture.about(facts)}</p>}
      {scene.note && <blockquote class="explain-note">{filled(scene.note, figures)}</blockquote>}
      {warningSentences(waves.warnings).map((sentence) => (
        <p key={sentence} class="quiet">
          {texts.warning(sentence)}
        </p>
      ))}
      <details class="in-words">
        <summary>{texts.inWords}</summary>
        {rows.map((row, i) => (
          <p key={i}>{shownWords(row, scene.show ?? {})}</p>
        ))}
        {picture && <p>{picture.description(facts)}</p>}
        <p>{texts.audibleRange}</p>
      </details>
    </>
  );
}
