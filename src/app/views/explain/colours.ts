import { DAY, type Palette, type Role } from '../../../outputs/scene/index.ts';

export type SceneBackground = 'plain' | 'light' | 'dark' | 'transparent';
export const BACKGROUNDS: readonly SceneBackground[] = ['plain', 'light', 'dark', 'transparent'];

const LIGHT: Palette = { ...DAY, paper: '#ffffff', card: '#f1ece2', faint: '#ddd6ca' };
const DARK: Palette = {
  ink: '#f4ede1',
  soft: '#c3b7a6',
  faint: '#453c32',
  copper: '#e0935a',
  accent: '#7cc7d6',
  warning: '#ff9c8b',
  paper: '#12100e',
  card: '#2a241e',
  soil: '#4d402d',
  metal: '#9d9b96',
  sea: '#2c464d',
  none: 'none',
};

/** The page's own names for what drawings are coloured by. */
const NAMES: Partial<Record<Role, readonly string[]>> = {
  ink: ['--ink'],
  soft: ['--soft', '--ink-soft'],
  faint: ['--faint', '--line'],
  copper: ['--copper'],
  accent: ['--accent'],
  warning: ['--warning', '--wrong'],
  paper: ['--sheet', '--paper'],
  card: ['--card', '--inset'],
  soil: ['--soil'],
  metal: ['--metal'],
  sea: ['--sea'],
};

/** Colours as the page has them now, by day or by night. */
export function pagePalette(element: Element): Palette {
  const style = getComputedStyle(element);
  const read = (role: Role): string =>
    (NAMES[role] ?? []).map((name) => style.getPropertyValue(name).trim()).find((value) => value !== '') ?? DAY[role];
  return Object.fromEntries((Object.keys(DAY) as Role[]).map((role) => [role, read(role)])) as Record<Role, string>;
}

/** @param page colours of the page, for `plain`. */
export const paletteFor = (background: SceneBackground, page: Palette): Palette =>
  background === 'light' ? LIGHT : background === 'dark' || background === 'transparent' ? DARK : page;
