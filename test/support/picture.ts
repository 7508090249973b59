import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { expect } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';

/** Two decimals are finer than anybody sees, and the same on every machine. */
const rounded = (svg: string) =>
  svg.replace(/-?\d+\.\d{3,}(?:e[+-]?\d+)?/gi, (number) => String(+(+number).toFixed(2)));

/**
 * Compares an SVG with the one of that name in test/output, which a person has looked at. A different one is left in
 * test/output/changed, to be opened beside it; `npm test -- -u` takes it as right.
 * @param name of the file, without folder and ending; a slash makes a folder
 */
export async function expectPicture(svg: string, name: string): Promise<void> {
  expect(svg, `${name} must be an SVG`).toMatch(/^\s*(?:<\?xml[^>]*>\s*)?<svg[\s>]/);
  expect(svg, `${name} contains something that is no number`).not.toMatch(/\b(?:NaN|undefined|Infinity)\b/);
  const picture = `${rounded(svg).trim()}\n`;
  const changed = inRoot('test/output/changed', `${name}.svg`);
  try {
    await expect(picture).toMatchFileSnapshot(inRoot('test/output', `${name}.svg`));
    rmSync(changed, { force: true });
  } catch (error) {
    mkdirSync(dirname(changed), { recursive: true });
    writeFileSync(changed, picture);
    if (error instanceof Error) error.message += `\n(now: test/output/changed/${name}.svg)`;
    throw error;
  }
}
