import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inRoot } from '../scripts/support/paths.mjs';
import { expectPicture } from './support/picture.ts';

test('the icon of the page is the picture it was', async () => {
  await expectPicture(readFileSync(inRoot('src/app/public/icon.svg'), 'utf8'), 'icon');
});

test('a picture with a figure that could not be computed is refused', async () => {
  await expect(expectPicture('<svg><path d="M0 NaN"/></svg>', 'never')).rejects.toThrow('no number');
});
