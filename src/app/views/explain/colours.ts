import { FILM_COLOURS } from '../../../outputs/explain/index.ts';
import { DAY, type Palette, type Role } from '../../../outputs/scene/index.ts';

export type SceneBackground = 'plain' | 'light' | 'dark' | 'transparent';
export const BACKGROUNDS: readonly SceneBackground[] = ['plain', 'light', 'dark', 'transparent'];

/** The page's own names for what drawings are coloured by. */
const NAMES: Partial<Record<Role, readonly string[]>> = {
  ink: ['--ink'],
  soft: ['--soft', '--ink-soft'],
  faint: ['--faint', '--line'],
  copper: ['--copper'],
  accent: ['--accent', '--teal'],
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
  background === 'plain' ? page : FILM_COLOURS[background === 'light' ? 'light' : 'dark'];
