import { signal } from '@preact/signals';

/** The window in which a set is begun from the parts at hand is open. */
export const isBeginning = signal(false);
