import { effect, signal } from '@preact/signals';

/** The set itself, or a view that takes the whole page. */
export const VIEWS = ['set', 'find', 'sheets', 'measure', 'faults', 'log', 'explain'] as const;
/** The shelf has its own button beside the set's name, and leads to sets side by side; the handbook is opened from Help. */
export type ViewId = (typeof VIEWS)[number] | 'shelf' | 'compare' | 'handbook';
export const view = signal<ViewId>('set');
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
