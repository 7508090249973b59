import { isSetLink } from '../../engine/index.ts';
import { openLink } from './files.ts';
import type { OpenSets } from './open-sets.ts';

/**
 * Opens the set that the address of the page holds, now and whenever it comes to hold another, in place of the one in focus
 * and with a way back to that. The address is then the page's own again, so that reloading goes on with the work.
 */
export function openLinksOf({ focused }: Pick<OpenSets, 'focused'>): void {
  const look = () => {
    const fragment = location.hash.slice(1);
    if (!isSetLink(fragment)) return;
    history.replaceState(history.state, '', location.pathname + location.search);
    openLink(focused.peek(), fragment);
  };
  look();
  addEventListener('hashchange', look);
}
