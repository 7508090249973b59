/**
 * The colours of page, plots and drawings by what they mean, as sRGB. Page: `app/style/tokens.css`, held equal by a test.
 * Copper is the station in focus and its signal; teal is the other thing: measured, tried, compared.
 */
export interface Colours {
  readonly paper: string;
  readonly sheet: string;
  readonly inset: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly line: string;
  readonly edge: string;
  readonly copper: string;
  readonly onCopper: string;
  readonly copperBright: string;
  readonly copperPale: string;
  readonly teal: string;
  readonly tealPale: string;
  readonly warn: string;
  readonly warnGround: string;
  readonly wrong: string;
  readonly wrongGround: string;
  readonly focus: string;
  readonly sea: string;
  readonly land: string;
  readonly night: string;
  readonly soil: string;
  readonly metal: string;
}

export const LIGHT: Colours = {
  paper: '#f4eee1',
  sheet: '#fdfaf3',
  inset: '#ebe2d0',
  ink: '#261f18',
  inkSoft: '#5a4e42',
  line: '#d9ccb5',
  edge: '#7d6d5a',
  copper: '#8a4316',
  onCopper: '#fffaf2',
  copperBright: '#b35a1f',
  copperPale: '#ecd3b8',
  teal: '#0f5a69',
  tealPale: '#cfe1e3',
  warn: '#6b4e00',
  warnGround: '#f7e6b8',
  wrong: '#a01830',
  wrongGround: '#f8dfdf',
  focus: '#1b5e93',
  sea: '#c6d9dd',
  land: '#ebe1ca',
  night: '#1c2540',
  soil: '#d5c4a6',
  metal: '#8b8a86',
};

export const DARK: Colours = {
  paper: '#181410',
  sheet: '#221d18',
  inset: '#120f0c',
  ink: '#efe6d8',
  inkSoft: '#bfb09c',
  line: '#443a2f',
  edge: '#94846f',
  copper: '#eba772',
  onCopper: '#1d130b',
  copperBright: '#de8a4c',
  copperPale: '#5a3a22',
  teal: '#7cc7d6',
  tealPale: '#21424a',
  warn: '#ecc76a',
  warnGround: '#3a2f14',
  wrong: '#ff9aa2',
  wrongGround: '#43201f',
  focus: '#86c3f0',
  sea: '#24404a',
  land: '#3f372c',
  night: '#000000',
  soil: '#4d402d',
  metal: '#9d9b96',
};
