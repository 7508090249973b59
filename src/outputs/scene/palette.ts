import type { Role } from './scene.ts';

/** A colour for each role that a line or a text may have. */
export type Palette = Readonly<Record<Role, string>>;

/** Paper, ink and copper, by day. Text may be ink, soft, copper, accent or warning: all can be read on paper and card. */
export const DAY: Palette = {
  ink: '#2b2622',
  soft: '#655b50',
  faint: '#d9cfbf',
  copper: '#9c4f1c',
  accent: '#1c5b68',
  warning: '#a3261f',
  paper: '#faf6ee',
  card: '#efe6d4',
  soil: '#d5c4a6',
  metal: '#8b8a86',
  sea: '#c3d7db',
  none: 'none',
};

/** For printers: nothing depends on a colour being seen. */
export const PRINT: Palette = {
  ink: '#000000',
  soft: '#404040',
  faint: '#c4c4c4',
  copper: '#000000',
  accent: '#000000',
  warning: '#000000',
  paper: '#ffffff',
  card: '#eeeeee',
  soil: '#dddddd',
  metal: '#8a8a8a',
  sea: '#e6e6e6',
  none: 'none',
};

/** The page sets the colours as --ink, --copper …; without a page they are those of the day. */
export const variables = (fallback: Palette = DAY): Palette =>
  Object.fromEntries(
    Object.entries(fallback).map(([role, colour]) => [role, role === 'none' ? 'none' : `var(--${role}, ${colour})`]),
  ) as unknown as Palette;
