import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../scripts/support/paths.mjs';
import { ran } from './support/command-line.ts';

const FOLDER = inRoot('docs/handbook');
const chapters = readdirSync(FOLDER).filter((file) => /^\d.*\.md$/.test(file));

/** `faintwave path sets/first.json --want "two words"` as its arguments; files are those beside the chapters. */
const argumentsOf = (command: string): string[] =>
  [...command.matchAll(/"([^"]*)"|(\S+)/g)]
    .map(([, quoted, plain]) => quoted ?? plain)
    .slice(1)
    .map((word) => (word.startsWith('sets/') ? join(FOLDER, word) : word));

async function outputOf(command: string): Promise<string> {
  const { status, stdout, stderr } = await ran(argumentsOf(command));
  if (status !== 0) throw new Error(`${command}: ${stderr}`);
  return stdout;
}

/** The lines from the first that begins with one text to the last before another. */
function between(text: string, from: string | undefined, to: string | undefined): string {
  const lines = text.trimEnd().split('\n');
  const start = from === undefined ? 0 : lines.findIndex((line) => line.startsWith(from));
  if (start < 0) throw new Error(`no line begins with ${from}`);
  const end = to === undefined ? -1 : lines.findIndex((line, i) => i > start && line.trimStart().startsWith(to));
  if (to !== undefined && end < 0) throw new Error(`no line after that begins with ${to}`);
  return lines
    .slice(start, end < 0 ? undefined : end)
    .join('\n')
    .trimEnd();
}

const OUTPUT =
  /<!-- output: (?<command>faintwave .*?)(?:, from "(?<from>.*?)" to "(?<to>.*?)")? -->\n[\s\S]*?<!-- end -->/g;
const PICTURE = /<!-- picture: (?<command>faintwave .*?) -->\n!\[[^\]]+\]\((?<file>[^)]+)\)/g;

/** A chapter with its outputs as the commands give them now. */
async function renewed(chapter: string): Promise<string> {
  let text = readFileSync(join(FOLDER, chapter), 'utf8');
  for (const { 0: block, groups } of [...text.matchAll(OUTPUT)]) {
    const output = between(await outputOf(groups!.command), groups!.from, groups!.to);
    const [head] = block.split('\n');
    const indented = output.split('\n').map((line) => (line === '' ? '' : `    ${line}`));
    text = text.replace(block, () => [head, '', ...indented, '', '<!-- end -->'].join('\n'));
  }
  return text;
}

/** The picture a command writes: to a file, or as the first page in a folder. */
async function pictureOf(command: string): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'handbook-'));
  try {
    const file = join(folder, 'picture.svg');
    await outputOf(command.replace('{file}', `"${file}"`).replace('{folder}', `"${join(folder, 'pages')}"`));
    const pages = join(folder, 'pages');
    return readFileSync(command.includes('{folder}') ? join(pages, readdirSync(pages).sort()[0]) : file, 'utf8');
  } finally {
    rmSync(folder, { recursive: true });
  }
}

// Renewed by `npm test -- handbook -u`.
describe.each(chapters)('%s', (chapter) => {
  it('has the output of its commands', async () => {
    await expect(await renewed(chapter)).toMatchFileSnapshot(join(FOLDER, chapter));
  });

  it('has the pictures of its commands', async () => {
    const text = readFileSync(join(FOLDER, chapter), 'utf8');
    const pictures = [...text.matchAll(PICTURE)].map(({ groups }) => groups!);
    expect(pictures.length).toBe((text.match(/!\[/g) ?? []).length);
    for (const { command, file } of pictures)
      await expect(await pictureOf(command)).toMatchFileSnapshot(join(FOLDER, file));
  });
});
