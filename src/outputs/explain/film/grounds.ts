import { DAY, NIGHT, type Palette } from '../../scene/palette.ts';

/** Colours of pictures and films that are shown away from the page. */
export const FILM_COLOURS: Readonly<Record<'light' | 'dark', Palette>> = {
  light: { ...DAY, paper: '#ffffff', card: '#f1ece2', faint: '#ddd6ca' },
  // Darker than the page at night, for a projector or a cut of a film.
  dark: { ...NIGHT, paper: '#12100e', card: '#2a241e' },
};
