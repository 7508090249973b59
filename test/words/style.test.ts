import { readdirSync, readFileSync, statSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';

/** What is not written, and the field's own term for it. */
const PHRASES: readonly (readonly [phrase: RegExp, instead: string])[] = [
  [/\bdrown(s|ed|ing)?\b/, 'masked by'],
  [/\btalks? through\b/, 'interference from'],
  [/\ba murmur\b/, 'heard behind it'],
  [/\bloads? like\b/, 'input resistance'],
  [/\bstraight from\b/, 'linear above'],
  [/\bstraight detection\b/, 'linear detection'],
  [/\bvanes out\b/, 'fully open'],
  [/\bpushed home\b/, 'fully meshed'],
  [/\bbrought up\b/, 'amplified, made to work'],
  [/\bhad here\b/, 'received here'],
  [/\bthere to be had\b/, 'available'],
  [/\bover what can just be heard\b/, 'above the hearing threshold'],
  [/(kHz|\}) broad\b/, 'bandwidth … kHz'],
  [/\bcomes? in together\b/, 'selectivity: separates …'],
  [/\bmay (well )?be, as built\b/, 'tolerance'],
  [/\bgive or take\b/, '±'],
  [/\btrims? the (sidebands|high notes)\b/, 'treble loss'],
  [/\btakes? off the (high notes|coil)\b/, 'treble loss, loading loss'],
  [/\bhigh notes\b/, 'treble'],
  [/\bslantwise\b/, 'diagonal clipping'],
  [/\bloud moments\b/, 'peaks, crest factor'],
  [/\btuned anew\b/, 'retuned'],
  [/\ball else as it is\b/, 'everything else unchanged'],
  [/\bhow they stand to each other\b/, 'turns ratio, coupling coefficient'],
  [/\bbears only\b/, 'low reverse-voltage rating'],
  [/\b(own reckoning|reckon(s|ed)?)\b/, 'calculated'],
  [/\bstrays matter\b/, 'stray capacitance shifts'],
  [/\bwhat it puts across\b/, 'input resistance'],
  [/\bwhat (it|the set) lets through\b/, 'selectivity'],
  [/\bhardly weaker\b/, 'nearly its maximum'],
  [/\bworth speaking of\b/, 'the figure'],
];

/** Names of values and functions that say nothing. */
const IDENTIFIERS = [/\btold\b/, /\bsaid\b/];

const FOLDERS = ['src/outputs/words', 'src/app', 'docs', 'examples', 'README.md'];

const filesIn = (place: string): string[] =>
  statSync(inRoot(place)).isFile()
    ? [place]
    : readdirSync(inRoot(place), { recursive: true, encoding: 'utf8' })
        .filter((file) => /\.(tsx?|md|json)$/.test(file) && !/\.test\./.test(file))
        .map((file) => `${place}/${file}`)
        .sort();

const linesOf = (file: string) =>
  readFileSync(inRoot(file), 'utf8')
    .split('\n')
    .map((text, i) => ({ text, at: `${file}:${i + 1}` }));

test.each(FOLDERS)('%s has the terms of the field, no phrases in place of them', (folder) => {
  const found = filesIn(folder).flatMap((file) =>
    linesOf(file).flatMap(({ text, at }) =>
      PHRASES.flatMap(([phrase, instead]) => {
        const match = new RegExp(phrase, 'i').exec(text);
        return match ? [`${at} “${match[0]}”: ${instead}`] : [];
      }),
    ),
  );
  expect(found).toEqual([]);
});

test.each(['src/outputs/words', 'src/app'])('%s names things by what they are', (folder) => {
  const found = filesIn(folder).flatMap((file) =>
    linesOf(file).flatMap(({ text, at }) => {
      const code = text.replace(/(['"`]).*?\1|\/\/.*|^\s*(\/?\*).*|\/\*.*?\*\//g, '');
      return IDENTIFIERS.some((name) => name.test(code)) ? [`${at} ${text.trim()}`] : [];
    }),
  );
  expect(found).toEqual([]);
});
