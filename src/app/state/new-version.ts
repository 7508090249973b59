import { versionWords as texts } from '../../outputs/words/index.ts';
import { tell } from './notices.ts';

const KEY = 'new-version';

/**
 * Says when a new version of the page lies ready, and changes to it only when asked. Called once the page stands, which
 * tells the keeper of the versions that this one works.
 */
export function followVersions(): void {
  const { serviceWorker } = navigator;
  // None in a page opened from a disk, or where the browser keeps nothing.
  if (!serviceWorker) return;
  const wasKept = serviceWorker.controller !== null;
  let isAsked = false;
  serviceWorker.addEventListener('controllerchange', () => {
    if (isAsked) location.reload();
    else if (wasKept)
      tell(texts.tookOver, { key: KEY, stays: true, action: { label: texts.reload, run: () => location.reload() } });
  });
  void serviceWorker.ready.then((registration) => {
    registration.active?.postMessage('works');
    const offer = () => {
      const { waiting } = registration;
      if (!waiting) return;
      const use = () => {
        isAsked = true;
        waiting.postMessage('take over');
      };
      tell(texts.isThere, { key: KEY, stays: true, action: { label: texts.use, run: use } });
    };
    offer();
    registration.addEventListener('updatefound', () => {
      registration.installing?.addEventListener('statechange', offer);
    });
  });
}
