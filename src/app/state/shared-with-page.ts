import { isSetLink } from '../../engine/index.ts';
import { type OpeningPlace, openLink, openPasted } from './files.ts';
import { openGivenFile } from './given-files.ts';

/** Where the service worker leaves what was shared with the installed page, and how the page's address then says so. */
const SHARED = 'shared-with-faintwave';
const MARK = 'shared';
/** Header that holds a file's name, in letters that a header may have. */
const NAME = 'x-file-name';

/**
 * Opens what another program has shared with the installed page (W3C Web Share Target): files as if they were opened, a
 * link that holds a set, the text of a set. What is opened is gone from where it was left.
 */
export async function openShared(place: OpeningPlace): Promise<void> {
  if (!new URLSearchParams(location.search).has(MARK) || !('caches' in globalThis)) return;
  history.replaceState(history.state, '', location.pathname + location.hash);
  const shared = await caches.open(SHARED);
  for (const request of await shared.keys()) {
    const left = await shared.match(request);
    await shared.delete(request);
    if (!left) continue;
    const name = left.headers.get(NAME);
    if (name === null) openSharedText(place, await left.text());
    else await openGivenFile(place, new File([await left.blob()], decodeURIComponent(name)));
  }
}

function openSharedText(place: OpeningPlace, text: string): void {
  const link = text.split(/\s+/).find((word) => word.includes('#') && isSetLink(word.slice(word.indexOf('#') + 1)));
  if (link !== undefined) openLink(place, link.slice(link.indexOf('#') + 1));
  else openPasted(place, text);
}
