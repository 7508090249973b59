import { useEffect } from 'preact/hooks';

/** Scrolls the control being used back into the window where words above it, changed by it, have pushed it out below. */
export function useFocusInView(within: string): void {
  useEffect(() => {
    const used = document.activeElement;
    if (!(used instanceof HTMLElement && used.closest(within))) return;
    if (used.getBoundingClientRect().bottom > innerHeight) used.scrollIntoView({ block: 'nearest' });
  });
}
