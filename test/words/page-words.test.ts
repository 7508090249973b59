import { readdirSync, readFileSync } from 'node:fs';
import { parseAst } from 'vite';
import { expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { shownProse } from '../support/shown-prose.ts';

/** Texts that look like words and are not for people. */
const NOT_WORDS: ReadonlySet<string> = new Set([
  // What the browser calls a drag that carries files.
  'Files',
  // The unit of a font's size for a canvas.
  'px',
  // A message to the keeper of the versions.
  'take over',
]);

const sourcesIn = (folder: string): string[] =>
  readdirSync(inRoot(folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file) && !/\.test\.|\.d\.ts$/.test(file))
    .map((file) => `${folder}/${file}`)
    .sort();
const textOf = (file: string): string => readFileSync(inRoot(file), 'utf8');

/** Whole literals of the engine and the outputs: names of kinds, fields and choices, which the page may use as ids. */
function idsOf(files: readonly string[]): ReadonlySet<string> {
  const ids = new Set<string>();
  for (const file of files)
    JSON.stringify(parseAst(textOf(file), { lang: 'ts' }), (_, value) => {
      if (value?.type === 'Literal' && typeof value.value === 'string') ids.add(value.value);
      return typeof value === 'bigint' ? String(value) : value;
    });
  return ids;
}

test('no words for people stand in the page’s own sources', () => {
  const outputs = sourcesIn('src/outputs').filter((file) => !file.startsWith('src/outputs/words/'));
  const ids = idsOf([...sourcesIn('src/engine'), ...outputs]);
  const seen = new Set<string>();
  const found = sourcesIn('src/app').flatMap((file) =>
    shownProse(textOf(file), (text) => ids.has(text)).flatMap(({ line, text }) => {
      if (!NOT_WORDS.has(text)) return [`${file}:${line} ${text}`];
      seen.add(text);
      return [];
    }),
  );
  expect(found).toEqual([]);
  expect(seen, 'an exception that stands nowhere goes off the list').toEqual(NOT_WORDS);
});

test('the scan sees words in every place of a source where they are shown', () => {
  const source = `
    import { x } from 'some module here';
    type Kind = 'two words' | 'ferrite rod';
    const a = <p class="large title" title="Close" aria-label={open ? 'Shut it' : \`Open \${name}\`}>Hello</p>;
    const b = { label: 'undo', 'two words': 1, kind: 'ferrite rod' };
    if (kind === 'inverted L') tell(\`\${count} things\`, 'They are wrong.');
    const c = <b>{busy ? 'Saving' : \`\${n} pages\`}</b>;
    const d = ['Day'];
    element.querySelector('main p');
  `;
  expect(shownProse(source, (text) => text === 'ferrite rod').map(({ text }) => text)).toEqual([
    'Close',
    'Shut it',
    'Open',
    'Hello',
    'undo',
    'things',
    'They are wrong.',
    'Saving',
    'pages',
    'Day',
  ]);
});
