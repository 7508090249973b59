// Cuts the page's typeface out of the whole files of the `source-sans` package and writes the table of widths that
// drawings go by. Run after a change of the face: npm run fonts

import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { create } from 'fontkit';
import { convert } from 'fontverter';
import subsetFont from 'subset-font';
import { renamedFont } from './support/font-names.mjs';
import { inRoot } from './support/paths.mjs';

const resolve = createRequire(import.meta.url).resolve;
const FACES = [
  { file: 'SourceSans3-Regular', weight: 400, style: 'Regular', cut: 'faintwave-sans-400' },
  { file: 'SourceSans3-Semibold', weight: 600, style: 'Semibold', cut: 'faintwave-sans-600' },
  { file: 'SourceSans3-It', weight: 400, style: 'Italic', cut: 'faintwave-sans-400-italic' },
];
/** Latin, Greek, and the signs of the trade; what the face has of them is kept. */
const RANGES = [
  [0x20, 0x24f],
  [0x370, 0x3ff],
];
const SIGNS = '–—‘’‚“”„†•…‰′″‹›€−√∞≈≠≤≥←↑→↓⁰¹²³⁴⁵⁶⁷⁸⁹⁻₀₁₂₃₄₅₆₇₈₉⅓⅔⅛⅜⅝⅞✓✗☐▶▾▲▼●○◆·™';

const letters = [
  ...RANGES.flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, k) => String.fromCodePoint(from + k))),
  ...SIGNS,
].join('');

/** @type {{ weight: number, advances: Map<string, number> }[]} */
const widths = [];
for (const { file, weight, style, cut } of FACES) {
  const whole = readFileSync(resolve(`source-sans/TTF/${file}.ttf`));
  const subset = await subsetFont(whole, letters, { targetFormat: 'truetype' });
  // "Source" is a reserved name: what is cut is a modified version and takes a name of its own.
  const own = renamedFont(Buffer.from(subset), { family: 'Faintwave Sans', style });
  writeFileSync(inRoot('src/app/style/fonts', `${cut}.woff2`), await convert(own, 'woff2'));
  if (style !== 'Italic') widths.push({ weight, advances: advancesOf(create(whole)) });
}
writeFileSync(inRoot('src/outputs/scene/letter-widths.ts'), tableOf(widths));

/**
 * @param {import('fontkit').Font} font
 * @returns {Map<string, number>} thousandths of an em
 */
function advancesOf(font) {
  const seen = [...new Set(letters)].filter((letter) => font.hasGlyphForCodePoint(pointOf(letter)));
  return new Map(
    seen.map((letter) => {
      const { advanceWidth } = font.glyphForCodePoint(pointOf(letter));
      return [letter, Math.round((1000 * advanceWidth) / font.unitsPerEm)];
    }),
  );
}

/** @param {string} letter */
const pointOf = (letter) => letter.codePointAt(0) ?? 0;

/**
 * Letters of one width in one string.
 * @param {{ weight: number, advances: Map<string, number> }[]} faces
 * @returns {string}
 */
function tableOf(faces) {
  const rows = faces.map(({ weight, advances }) => {
    /** @type {Map<number, string>} */
    const byWidth = new Map();
    for (const [letter, width] of advances) byWidth.set(width, (byWidth.get(width) ?? '') + letter);
    const lines = [...byWidth]
      .sort(([a], [b]) => a - b)
      .map(([width, of]) => {
        const text = JSON.stringify(of).replace(
          /[\u007f-\u00a0\u00ad]/g,
          (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
        );
        return `    ${width}: ${text},`;
      });
    return `  ${weight}: {\n${lines.join('\n')}\n  },`;
  });
  return `/**
 * How wide each letter of the typeface is, in thousandths of an em: of each weight the letters of a width. Read from the
 * font's files (Source Sans 3.52, SIL Open Font License 1.1) by \`npm run fonts\`.
 */
export const LETTER_WIDTHS = {
${rows.join('\n')}
} as const satisfies Readonly<Record<number, Readonly<Record<number, string>>>>;
`;
}
