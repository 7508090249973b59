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

/** Participles and the like that do not say what a value is. */
const VAGUE = ['told', 'said'];
const VAGUER = [
  'found',
  'made',
  'beside',
  'besides',
  'wanted',
  'sought',
  'felt',
  'meant',
  'understood',
  'theirs',
  'stuff',
];

/** Where no name is vague. */
const PLAIN_NAMES = [
  'src/cli',
  ...['units', 'numerics', 'network', 'parts', 'place', 'fields', 'kinds', 'facts', 'set', 'built'].map(
    (folder) => `src/engine/${folder}`,
  ),
  ...['solvers', 'reception', 'uncertainty', 'vary', 'log', 'waves'].map((folder) => `src/engine/${folder}`),
];

/** Keys of answers that scripts read. */
const KEYS = [/^src\/engine\/reception\/curves\.ts:\d+ (readonly )?wanted: /];

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
  const phrases = filesIn(folder).flatMap((file) =>
    linesOf(file).flatMap(({ text, at }) =>
      PHRASES.flatMap(([phrase, instead]) => {
        const match = new RegExp(phrase, 'i').exec(text);
        return match ? [`${at} “${match[0]}”: ${instead}`] : [];
      }),
    ),
  );
  expect(phrases).toEqual([]);
});

const vagueIn = (folder: string, names: readonly string[]): string[] => {
  const vague = new RegExp(`\\b(${names.join('|')})\\b`);
  return filesIn(folder)
    .filter((file) => /\.tsx?$/.test(file))
    .flatMap((file) => linesOf(file))
    .filter(({ text }) => vague.test(text.replace(/(['"`]).*?\1|\/\/.*|^\s*(\/?\*).*|\/\*.*?\*\//g, '')))
    .map(({ text, at }) => `${at} ${text.trim()}`)
    .filter((line) => !KEYS.some((key) => key.test(line)));
};

test.each(['src/outputs/words', 'src/app'])('%s has no name that is told or said', (folder) => {
  expect(vagueIn(folder, VAGUE)).toEqual([]);
});

test.each(PLAIN_NAMES)('%s names things by what they are', (folder) => {
  expect(vagueIn(folder, [...VAGUE, ...VAGUER])).toEqual([]);
});
