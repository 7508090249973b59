import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { type Colours, DARK, LIGHT } from '../../src/outputs/scene/colours.ts';

/** WCAG 2.2, relative luminance and contrast ratio. */
function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
const contrast = (a: string, b: string): number => {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
};

const TEXT = 4.5;
const MARK = 3;
const GROUNDS = ['paper', 'sheet', 'inset'] as const;
type Name = keyof Colours;
const PAIRS: readonly (readonly [Name, readonly Name[], number])[] = [
  ['ink', [...GROUNDS, 'copperPale', 'tealPale', 'warnGround', 'wrongGround', 'sea', 'land'], TEXT],
  ['inkSoft', [...GROUNDS, 'copperPale'], TEXT],
  ['copper', GROUNDS, TEXT],
  ['onCopper', ['copper'], TEXT],
  ['teal', GROUNDS, TEXT],
  ['warn', [...GROUNDS, 'warnGround'], TEXT],
  ['wrong', [...GROUNDS, 'wrongGround'], TEXT],
  ['edge', GROUNDS, MARK],
  ['copperBright', GROUNDS, MARK],
  ['focus', GROUNDS, MARK],
];

describe.each([
  ['light', LIGHT],
  ['dark', DARK],
] as const)('the colours, %s', (_, colours) => {
  test.each(PAIRS)('%s is seen on every ground it stands on', (name, grounds, least) => {
    for (const ground of grounds)
      expect(contrast(colours[name], colours[ground]), `on ${ground}`).toBeGreaterThanOrEqual(least);
  });
});

describe('the page', () => {
  const css = readFileSync(inRoot('src/app/style/tokens.css'), 'utf8');
  const variable = (name: string): string => `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
  const declared = (colours: Colours): string[] =>
    Object.entries(colours).map(([name, colour]) => `${variable(name)}: ${colour};`);
  // The light scheme first, then the dark one as the device asks for it and as chosen by hand.
  const [light, device, chosen] = css.split(/\n\s+color-scheme: /).slice(1);

  test('has the same colours, in each scheme and however it is chosen', () => {
    for (const line of declared(LIGHT)) expect(light).toContain(line);
    for (const line of declared(DARK)) {
      expect(device).toContain(line);
      expect(chosen).toContain(line);
    }
  });

  test('declares every variable that its styles use', () => {
    const files = readdirSync(inRoot('src/app'), { recursive: true, encoding: 'utf8' });
    const styles = files.filter((file) => file.endsWith('.css')).map((file) => inRoot('src/app', file));
    const texts = styles.map((file) => readFileSync(file, 'utf8')).join('\n');
    const declared = new Set([...texts.matchAll(/^\s*(--[\w-]+):/gm)].map(([, name]) => name));
    // One with something to fall back on may be set by the page's code.
    const used = new Set([...texts.matchAll(/var\((--[\w-]+)(?=\))/g)].map(([, name]) => name));
    expect([...used].filter((name) => !declared.has(name))).toEqual([]);
  });
});
