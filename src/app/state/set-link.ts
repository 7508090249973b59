import { isSetLink } from '../../engine/index.ts';
import { type OpeningPlace, openLink } from './files.ts';

/**
 * Opens the set that the address of the page holds, now and whenever it comes to hold another, as one more set and
 * with a way back to the one in focus. The address is then the page's own again, so that reloading goes on with the work.
 */
export function openLinksOf(place: OpeningPlace): void {
  const look = () => {
    const fragment = location.hash.slice(1);
    if (!isSetLink(fragment)) return;
    history.replaceState(history.state, '', location.pathname + location.search);
    void openLink(place, fragment);
  };
  look();
  addEventListener('hashchange', look);
}
