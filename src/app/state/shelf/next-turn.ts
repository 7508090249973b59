/** Ends this task, so that the page can draw. */
export const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));
