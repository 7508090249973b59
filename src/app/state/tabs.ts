import { isRecord } from '../../engine/index.ts';

/** Tells the other tabs what is kept, as soon as it is. */
export interface Tabs {
  /** This tab among them. */
  readonly own: string;
  readonly tell: (id: string, text: string) => void;
  readonly hear: (id: string, changed: (text: string) => void, signal: AbortSignal) => void;
  /** The list of the shelf is another. */
  readonly tellOfShelf: () => void;
  readonly hearOfShelf: (changed: () => void) => void;
}

/** By a BroadcastChannel; where a browser has none, tabs hear nothing of each other. */
export function openTabs(): Tabs {
  const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('faintwave.documents');
  const hear = (heard: (data: Record<string, unknown>) => void, signal?: AbortSignal): void =>
    channel?.addEventListener('message', ({ data }) => isRecord(data) && heard(data), { signal });
  return {
    own: Math.random().toString(36).slice(2),
    tell: (id, text) => channel?.postMessage({ id, text }),
    hear: (id, changed, signal) =>
      hear((data) => data.id === id && typeof data.text === 'string' && changed(data.text), signal),
    tellOfShelf: () => channel?.postMessage({ shelf: true }),
    hearOfShelf: (changed) => hear((data) => data.shelf === true && changed()),
  };
}
