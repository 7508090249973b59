import { effect, signal } from '@preact/signals';
import type { StageId } from '../../engine/index.ts';
import type { When } from '../description/when.ts';

/** The set itself, or a view that takes the whole page. */
export const VIEWS = ['set', 'explain', 'sheets'] as const;
export type ViewId = (typeof VIEWS)[number];
export const view = signal<ViewId>('set');
/** The stage whose workbench is open. */
export const stage = signal<StageId>('tuned circuit');
/** The chosen station's place in the list; undefined: the one heard best. */
export const stationIndex = signal<number | undefined>(undefined);
/** Where the dial's pointer stands between stations, 0 open … 1 meshed; undefined: on the chosen station. */
export const pointer = signal<number | undefined>(undefined);
/** Day or night everywhere, or a moment. */
export const time = signal<When>('day');

export type Theme = 'auto' | 'light' | 'dark';
const THEME_KEY = 'faintwave.theme';

const keptTheme = (): Theme => {
  try {
    const kept = localStorage.getItem(THEME_KEY);
    return kept === 'light' || kept === 'dark' ? kept : 'auto';
  } catch {
    return 'auto';
  }
};

export const theme = signal<Theme>(keptTheme());

effect(() => {
  if (theme.value === 'auto') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme.value;
  try {
    localStorage.setItem(THEME_KEY, theme.value);
  } catch {
    // Without storage the choice lasts as long as the page.
  }
});

/** Choose a station, and with it where the pointer stands. */
export function chooseStation(index: number | undefined): void {
  stationIndex.value = index;
  pointer.value = undefined;
}

/** The station that is open stays so, whichever is heard best from now on; the pointer stays where it is. */
export function keepStation(index: number): void {
  stationIndex.value ??= index;
}
