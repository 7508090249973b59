import { signal } from '@preact/signals';

/** What a view puts on paper in the place of the page. */
export interface Printable {
  /** Nothing is still being drawn: printing now prints the whole of it, or why it cannot be drawn. */
  readonly isReady: boolean;
  /** Of its state at the time it is called. */
  readonly make: () => HTMLElement;
}

/** Of the view in sight; undefined while it has none yet. */
export const printedView = signal<Printable | undefined>(undefined);

/** Printing was asked for before there was something to print: it begins once there is. */
export const isPrintAwaited = signal(false);
