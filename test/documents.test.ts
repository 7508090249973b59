import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../scripts/support/paths.mjs';
import type { Command } from '../src/cli/command.ts';
import { aboutOf, calculationRows, optionRows, usageOf } from '../src/cli/help.ts';
import { COMMANDS } from '../src/cli/main.ts';

const read = (file: string): string => readFileSync(inRoot(file), 'utf8');
/** Made by running or installing something. */
const MADE = ['dist', 'node_modules', 'test/output/changed'];

function filesIn(folder: string): string[] {
  return readdirSync(inRoot(folder), { withFileTypes: true }).flatMap((entry) => {
    const path = posix.join(folder, entry.name);
    if (entry.name === '.git' || MADE.includes(path)) return [];
    return entry.isDirectory() ? filesIn(path) : [path];
  });
}
const files = filesIn('.');
const folders = new Set(files.flatMap((f) => f.split('/').map((_, i, parts) => parts.slice(0, i).join('/'))));
const documents = files.filter((f) => f.endsWith('.md'));
const everything = [...files, ...folders, ...MADE].map((f) => `/${f}`);

/** `a/{b,c}` as `a/b` and `a/c`. */
function alternatives(path: string): string[] {
  const braces = /\{([^{}]*)\}/.exec(path);
  if (!braces) return [path];
  return braces[1].split(',').flatMap((one) => alternatives(path.replace(braces[0], one.trim())));
}

/** Is there such a file or folder, named from the root, from the document's folder, or by the end of its path? */
function exists(path: string, from: string): boolean {
  const plain = path.replace(/\/?\*+.*$/, '').replace(/\/$/, '');
  if (plain === '' || /^\.\.?$/.test(plain)) return true;
  if (plain.startsWith('.')) {
    const there = posix.normalize(posix.join(posix.dirname(from), plain));
    return files.includes(there) || folders.has(there);
  }
  return everything.some((f) => f.endsWith(`/${plain}`));
}

/** Code in a document: `so`, and blocks set in or between fences. */
function codeIn(text: string): string[] {
  const fenced = [...text.matchAll(/^```\w*\n([\s\S]*?)^```/gm)].flatMap((m) => m[1].split('\n'));
  const rest = text.replace(/^```\w*\n[\s\S]*?^```/gm, '');
  const indented = [...rest.matchAll(/^ {4}(\S.*)$/gm)].map((m) => m[1]);
  return [...fenced, ...indented, ...[...rest.matchAll(/`([^`\n]+)`/g)].map((m) => m[1])];
}

const SEGMENT = String.raw`(?:[\w.@-]|\{[^{}]*\})+`;
const START = String.raw`(?<![\w./@{},-])`;
const FILE = new RegExp(
  String.raw`${START}(?:${SEGMENT}/)*[A-Za-z][\w.-]*\.(?:ts|tsx|mjs|json|md|css|py|c|sh|svg)\b(?!/)`,
  'g',
);
const FOLDER = new RegExp(String.raw`${START}(?:${SEGMENT}/)+(?=\s|$)`, 'g');

function pathsIn(code: string): string[] {
  return [...code.matchAll(FILE), ...code.matchAll(FOLDER)].flatMap((m) => alternatives(m[0]));
}

const flagsIn = (text: string): string[] => text.match(/(?<![\w-])--[a-z][a-z-]*/g) ?? [];
const flagsOf = ({ options }: Command): string[] => Object.keys(options).map((name) => `--${name}`);
const COMMON = ['--help', '--version'];

/** What a piece of code asks the command line for that it has not. */
function unknownIn(code: string): string[] {
  const call = /(?:^|\s)faintwave\s+([a-z]\S*)(.*)$/.exec(code);
  if (!call) return [];
  const command = COMMANDS.find((c) => c.name === call[1]);
  if (!command) return [`command ${call[1]}`];
  return flagsIn(call[2].replace(/ {3,}.*/, '')).filter((f) => ![...flagsOf(command), ...COMMON].includes(f));
}

describe.each(documents)('%s', (document) => {
  const text = read(document);
  // An example of a new file's imports is no path from here; names of what a command writes are no files of ours.
  const code = codeIn(text).filter((c) => !/^\s*(import|await|export)\b/.test(c));

  test('links lead somewhere', () => {
    const links = [...text.matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)]
      .map((m) => m[1])
      .filter((l) => !/^[a-z]+:/.test(l));
    const missing = links.filter((link) => {
      const path = posix.normalize(posix.join(posix.dirname(document), link)).replace(/\/$/, '');
      return !files.includes(path) && !folders.has(path);
    });
    expect(missing).toEqual([]);
  });

  test('files and folders named are there', () => {
    const paths = code.filter((c) => !/\bfaintwave\b/.test(c)).flatMap(pathsIn);
    const examples = code.flatMap((c) => c.match(/\bexamples\/\S+\.json/g) ?? []);
    expect([...paths, ...examples].filter((path) => !exists(path, document))).toEqual([]);
  });

  test('commands and options named are there', () => {
    const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };
    const scriptsNamed = code.flatMap((c) => [...c.matchAll(/\bnpm run ([\w:-]+)/g)].map((m) => m[1]));
    expect(scriptsNamed.filter((name) => !(name in scripts))).toEqual([]);
    expect(code.flatMap((c) => unknownIn(c).map((what) => `${what} in "${c}"`))).toEqual([]);
    if (document.startsWith('src/')) return; // there "--ink" is a colour
    const every = [...COMMANDS.flatMap(flagsOf), ...COMMON];
    expect(
      code
        .filter((c) => c.startsWith('--'))
        .flatMap(flagsIn)
        .filter((flag) => !every.includes(flag)),
    ).toEqual([]);
  });
});

test('comments name reference files and pages that are there', () => {
  const sources = files.filter((f) => /\.(tsx?|mjs|py|c)$/.test(f) && !f.startsWith('test/documents'));
  const missing = sources.flatMap((file) =>
    (read(file).match(/(?<![\w/.-])(?:reference|docs)\/[\w/-]+\.(?:json|md)\b/g) ?? [])
      .filter((path) => !files.includes(path))
      .map((path) => `${file}: ${path}`),
  );
  expect(missing).toEqual([]);
});

test('paths, commands and options that are not there are found', () => {
  expect(pathsIn('see `src/engine/nowhere.ts`')).toEqual(['src/engine/nowhere.ts']);
  expect(exists('src/engine/nowhere.ts', 'README.md')).toBe(false);
  expect(exists('engine/nowhere/', 'src/README.md')).toBe(false);
  expect(exists('./guide.md', 'docs/README.md')).toBe(true);
  expect(pathsIn('views/{set,nowhere}/ ').filter((p) => !exists(p, 'src/README.md'))).toEqual(['views/nowhere/']);
  expect(unknownIn('npx faintwave fly SET')).toEqual(['command fly']);
  expect(unknownIn('faintwave path SET --wings')).toEqual(['--wings']);
});

describe('the command line', () => {
  test('every command’s options are those it takes, in its help', () => {
    const wrong = COMMANDS.flatMap((command) => {
      const taken = flagsOf(command);
      const shown = optionRows(command).map(([flag]) => flag.split(' ')[0]);
      const withValue = optionRows(command).flatMap(([flag]) => (flag.includes(' ') ? [flag.split(' ')[0]] : []));
      return [
        ...taken.filter((n) => !shown.includes(n)).map((n) => `${command.name} takes ${n} and does not document it`),
        ...shown.filter((n) => !taken.includes(n)).map((n) => `${command.name} documents ${n} and does not take it`),
        ...Object.entries(command.options)
          .filter(([n, { type }]) => (type === 'string') !== withValue.includes(`--${n}`))
          .map(([n]) => `${command.name} shows --${n} with a value and takes none, or the other way about`),
        ...usageOf(command)
          .flatMap(flagsIn)
          .filter((n) => !taken.includes(n))
          .map((n) => `${command.name}: ${n} stands in the usage only`),
        ...command.examples.flatMap(unknownIn).map((n) => `${command.name}: ${n} in an example`),
      ];
    });
    expect(wrong).toEqual([]);
  });

  test('every command is a file of its own, and parses the options it declares', () => {
    const files = readdirSync(inRoot('src/cli/commands')).filter((file) => file.endsWith('.ts'));
    expect(files.toSorted()).toEqual(COMMANDS.map(({ name }) => `${name}.ts`).toSorted());
    for (const file of files)
      expect(read(`src/cli/commands/${file}`), file).toMatch(
        /options: OPTIONS[\s\S]*files?AndOptions\(args, OPTIONS\)/,
      );
  });

  test('docs/guide.md has every command', () => {
    const guide = read('docs/guide.md');
    expect(COMMANDS.map((c) => c.name).filter((name) => !guide.includes(`\`faintwave ${name}`))).toEqual([]);
  });

  // Renewed by `npm test -- documents -u`.
  test('docs/commands.md is what the commands say of themselves', async () => {
    await expect(reference()).toMatchFileSnapshot(inRoot('docs/commands.md'));
  });
});

/** The pages of every command, as Markdown. */
function reference(): string {
  const cell = (text: string): string => text.replaceAll('|', '\\|');
  const table = (head: string, rows: readonly (readonly [string, string])[]): string[] =>
    rows.length > 0
      ? [[head, '|---|---|', ...rows.map(([term, meaning]) => `| \`${cell(term)}\` | ${cell(meaning)} |`)].join('\n')]
      : [];
  const sections = COMMANDS.map((command) =>
    [
      `## ${command.name}`,
      aboutOf(command),
      usageOf(command)
        .map((call) => `    faintwave ${call}`)
        .join('\n'),
      ...table('| option | meaning |', optionRows(command)),
      ...(command.name === 'calc' ? table('| WHAT | answer |', calculationRows()) : []),
      `Examples:`,
      command.examples.map((e) => `    ${e}`).join('\n'),
    ].join('\n\n'),
  );
  const intro =
    'A SET is a description file; "-" reads standard input. Exit status: 0 done, 1 a check said no, 2 bad input.';
  return `# Commands\n\nMade from the commands' own help by \`npm test -- documents -u\`.\n\n${intro}\n\n${sections.join('\n\n')}\n`;
}
