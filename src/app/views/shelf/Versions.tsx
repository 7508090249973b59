import { useEffect, useMemo, useState } from 'preact/hooks';
import { valueAtPath } from '../../../engine/index.ts';
import { shelfWords as texts } from '../../../outputs/words/index.ts';
import { differenceTexts } from '../../description/differences.ts';
import { useOpenSet, useShelf } from '../../state/set-context.ts';
import type { SetVersion } from '../../state/shelf/versions.ts';

/** Lines for what one version changed. */
const LINES = 4;

/** Earlier states of the set in focus, latest first, each with what was changed after it. */
export function Versions() {
  const shelf = useShelf();
  const { id, whole } = useOpenSet();
  const [versions, setVersions] = useState<readonly SetVersion[] | undefined>();
  const entry = shelf.entries.value;
  useEffect(() => {
    let isHere = true;
    shelf.versions(id).then(
      (found) => isHere && setVersions(found),
      () => isHere && setVersions([]),
    );
    return () => {
      isHere = false;
    };
  }, [shelf, id, entry]);
  const now = whole.value;
  const shown = useMemo(
    () =>
      (versions ?? [])
        .map((version, i, all) => ({
          version,
          changes: differenceTexts(version.written, all[i + 1]?.written ?? now, LINES),
        }))
        .reverse(),
    [versions, now],
  );
  const name = String(valueAtPath(now, ['name']) || texts.unnamed);
  return (
    <section class="card shelf-versions" aria-labelledby="versions-title">
      <h3 id="versions-title">{texts.versions(name)}</h3>
      {versions && shown.length === 0 && <p>{texts.noVersions}</p>}
      <ol>
        {shown.map(({ version, changes }) => {
          const when = texts.when(version.at);
          return (
            <li key={version.at}>
              <p class="shelf-version">
                <strong>{texts.until(when)}</strong>
                <button
                  type="button"
                  aria-label={texts.goBackTo(when)}
                  onClick={() => shelf.goBack(version, texts.versionLabel(when))}
                >
                  {texts.goBack}
                </button>
              </p>
              <p class="quiet">{texts.thenChanged}</p>
              <ul class="sentences">
                {(changes.length > 0 ? changes : [texts.noChange]).map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </li>
          );
        })}
      </ol>
      <p class="quiet">{texts.aboutVersions}</p>
    </section>
  );
}
