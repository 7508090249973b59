import { isSetLink } from '../../engine/index.ts';
import { fileWords as texts } from '../../outputs/words/index.ts';
import { type OpeningPlace, openLink, openPasted } from './files.ts';
import { openGivenFiles } from './given-files.ts';
import { tell } from './notices.ts';

/** Where the service worker leaves what was shared with the installed page, and how the page's address then says so. */
const SHARED = 'shared-with-faintwave';
const MARK = 'shared';
/** Header that holds a file's name, in letters that a header may have. */
const NAME = 'x-file-name';

/** What the address says where nothing was left. */
const PROBLEMS: ReadonlyMap<string, string> = new Map([
  ['failed', texts.sharingFailed],
  ['too-much', texts.sharedTooMuch],
]);

/** What was left: a file, or a text where it has no name. */
interface Left {
  readonly request: Request;
  readonly name: string | undefined;
  readonly content: Blob;
}

/**
 * Offers what another program has shared with the installed page (W3C Web Share Target). Any web site can send the same
 * form, so that nothing is opened unasked.
 */
export async function openShared(place: OpeningPlace): Promise<void> {
  const state = new URLSearchParams(location.search).get(MARK);
  if (state === null) return;
  history.replaceState(history.state, '', location.pathname + location.hash);
  const problem = PROBLEMS.get(state);
  if (problem !== undefined) tell(problem, { key: 'shared', stays: true });
  else if ('caches' in globalThis) await offer(place);
}

async function offer(place: OpeningPlace): Promise<void> {
  const shared = await caches.open(SHARED);
  const left: Left[] = [];
  for (const request of await shared.keys()) {
    const response = await shared.match(request);
    const name = response?.headers.get(NAME) ?? undefined;
    if (response) left.push({ request, name: name && decodeURIComponent(name), content: await response.blob() });
  }
  if (left.length === 0) return;
  const names = left.map(({ name }) => name ?? texts.sharedText);
  const forget = async (): Promise<void> => {
    for (const { request } of left) await shared.delete(request);
  };
  const open = async (): Promise<void> => {
    for (const { name, content } of left) if (name === undefined) await openSharedText(place, await content.text());
    const files = left.flatMap(({ name, content }) => (name === undefined ? [] : [new File([content], name)]));
    await openGivenFiles(place, files);
    // Not before: what ends the page meanwhile loses nothing.
    await forget();
  };
  tell(texts.sharedWithPage(names), {
    key: 'shared',
    stays: true,
    action: { label: texts.openShared, run: () => void open() },
    onDismissed: () => void forget(),
  });
}

/** A link that holds a set, or the text of a set. */
function openSharedText(place: OpeningPlace, text: string): Promise<void> {
  const link = text.split(/\s+/).find((word) => word.includes('#') && isSetLink(word.slice(word.indexOf('#') + 1)));
  return link === undefined ? openPasted(place, text) : openLink(place, link.slice(link.indexOf('#') + 1));
}
