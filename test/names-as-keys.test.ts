import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inRoot } from '../scripts/support/paths.mjs';

/** What a person reads: never taken apart to learn what a thing is. */
const SHOWN = '(?:name|displayName|words|label|title|tag|terminals?)';

/** A text that is shown, matched, cut up or compared with words. */
const FORMS = [
  new RegExp(`\\.(?:test|exec)\\([^()]*\\b${SHOWN}\\)`),
  new RegExp(
    `\\b${SHOWN}\\??\\.(?:match|matchAll|replace|replaceAll|search|split|startsWith|endsWith|slice|indexOf)\\(`,
  ),
  new RegExp(`\\b${SHOWN} [!=]== '(?!string')[^']`),
];

/** Where a text is only shaped, or is no text that is shown: the file, and what of the line stands for it. */
const ALLOWED: Readonly<Record<string, readonly string[]>> = {
  // Names of files, of errors, of the tags of a PDF.
  'src/outputs/audio/iq.ts': ['.exec(name)'],
  'src/app/views/explain/Controls.tsx': ['file.name.slice(0, 60)'],
  'src/app/state/files.ts': ["name === 'AbortError'"],
  'src/app/state/document-store.ts': ["name === 'VersionError'", "name !== 'UnknownError'"],
  'src/app/state/shelf/archive.ts': [".filter((name) => name.endsWith('.json'))", '.test(one.name)'],
  'src/outputs/explain/model/kept-recording.ts': ['name: name.slice(0, 60)'],
  'src/outputs/write-up/html.ts': ['const file = `${name.replace('],
  'src/outputs/sheets/paper/pdf.ts': ["block.tag === 'Artifact'"],
  // Lines of a list, and where words stand.
  'src/outputs/sheets/board/layout-drawing.ts': ["print.words === 'inside'"],
  'src/outputs/sheets/paper/flow.ts': ["title === '✓'"],
  // A text wrapped, quoted, kept short, begun with another letter, a minus put for a hyphen.
  'src/outputs/scene/text-width.ts': ['words.split(BREAK)'],
  'src/outputs/explain/story/read-scenes.ts': ['r.title.slice(0, 80)'],
  'src/outputs/plots/figures.ts': ['words.replace(/^-/'],
  'src/app/widgets/unbroken.ts': ['words.replace(BEFORE_UNIT'],
};

test('nothing learns what a part is from the text that is shown of it', () => {
  const found = ['src/outputs', 'src/app'].flatMap((root) =>
    readdirSync(inRoot(root), { recursive: true, encoding: 'utf8' })
      .map((file) => join(root, file).replaceAll('\\', '/'))
      .filter((file) => /\.tsx?$/.test(file) && !/\.test\.tsx?$/.test(file))
      .flatMap((file) =>
        readFileSync(inRoot(file), 'utf8')
          .split('\n')
          .flatMap((line, i) =>
            FORMS.some((form) => form.test(line)) && !ALLOWED[file]?.some((allowed) => line.includes(allowed))
              ? [`${file}:${i + 1}: ${line.trim()}`]
              : [],
          ),
      ),
  );
  expect(found, found.join('\n')).toEqual([]);
});

test('what is allowed is still there', () => {
  for (const [file, lines] of Object.entries(ALLOWED))
    for (const line of lines) expect(readFileSync(inRoot(file), 'utf8'), file).toContain(line);
});

test('a text taken apart is found in every form', () => {
  for (const line of [
    'if (/trap/.test(part.key + part.name)) return 1;',
    'const cut = SECTION.exec(c.name);',
    "part.words.split(',')[0]",
    "s.name === 'detector'",
    "t.label.endsWith(' tap')",
  ])
    expect(
      FORMS.some((form) => form.test(line)),
      line,
    ).toBe(true);
});
