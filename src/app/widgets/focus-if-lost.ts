/**
 * What had the focus is gone with the next drawing: the focus goes to what is nearest, and not back to the top of the page.
 * @param next what is to have it; asked once the page is drawn
 */
export function focusIfLost(next: () => HTMLElement | null | undefined): void {
  requestAnimationFrame(() => {
    const { activeElement, body } = document;
    if (!activeElement || activeElement === body) next()?.focus({ preventScroll: true });
  });
}
