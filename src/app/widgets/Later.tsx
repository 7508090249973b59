import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { widgetWords as texts } from '../../outputs/words/index.ts';

interface Props<P> {
  /** Fetches the component; it is not in the page's first script. */
  readonly load: () => Promise<ComponentType<P>>;
  readonly name: string;
  readonly props: P;
}

/** A part of the page that is fetched when first opened. */
export function Later<P extends object>({ load, name, props }: Props<P>) {
  const [Loaded, setLoaded] = useState<ComponentType<P> | undefined>();
  const [failed, setFailed] = useState(false);
  const [attempt, setAttempt] = useState(0);
  useEffect(() => {
    let here = true;
    setFailed(false);
    load().then(
      (component) => here && setLoaded(() => component),
      () => here && setFailed(true),
    );
    return () => {
      here = false;
    };
  }, [load, attempt]);
  if (Loaded) return <Loaded {...props} />;
  if (!failed) return <p class="quiet">{texts.opening(name)}</p>;
  return (
    <p class="problem">
      {texts.notFetched(name)}{' '}
      <button type="button" onClick={() => setAttempt(attempt + 1)}>
        {texts.tryAgain}
      </button>
    </p>
  );
}
