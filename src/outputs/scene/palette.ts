import { type Colours, DARK, LIGHT } from './colours.ts';
import type { Role } from './scene.ts';

/** A colour for each role that a line or a text may have. */
export type Palette = Readonly<Record<Role, string>>;

/** Drawings and plots lie on sheets, so that their paper is the sheet's colour. */
const paletteOf = (colours: Colours): Palette => ({
  ink: colours.ink,
  soft: colours.inkSoft,
  faint: colours.line,
  copper: colours.copper,
  accent: colours.teal,
  warning: colours.wrong,
  paper: colours.sheet,
  card: colours.inset,
  soil: colours.soil,
  metal: colours.metal,
  sea: colours.sea,
  none: 'none',
});

/** Paper, ink and copper. Text may be ink, soft, copper, accent or warning: all can be read on paper and card. */
export const DAY: Palette = paletteOf(LIGHT);

/** The same by night. */
export const NIGHT: Palette = paletteOf(DARK);

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
