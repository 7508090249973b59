import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { COMMANDS } from '../../src/cli/main.ts';
import { receive } from '../../src/engine/reception/path/receive.ts';
import { readText } from '../../src/engine/set/read.ts';
import { pageSvg, SHEET_IDS, sheetsFor } from '../../src/outputs/sheets/index.ts';
import { CALLED_WITH, FOR_PROGRAMS, OF_A_BOX, REFUSED_CALLS, said } from '../support/calls.ts';
import { textsIn } from '../support/svg-texts.ts';

// What is read on the command line and on paper, kept whole, so that a change of words or of who gets which of them is
// seen. Renewed by `npm test -- test/words/texts -u`.
const kept = (name: string): string => inRoot(`test/output/texts/${name}.txt`);
const EXAMPLES = readdirSync(inRoot('examples')).filter((file) => file.endsWith('.json'));

/** Calls with what each says, as somebody would see them one below the other. */
async function session(calls: readonly (readonly string[])[]): Promise<string> {
  const lines: string[] = [];
  for (const call of calls) lines.push(`$ faintwave ${call.join(' ')}`, (await said(call)).trimEnd(), '');
  return lines.join('\n');
}

describe('texts as they are read', () => {
  test('help', async () => {
    const calls = [['--help'], ...COMMANDS.map(({ name }) => [name, '--help'])];
    await expect(await session(calls)).toMatchFileSnapshot(kept('help'));
  });

  test('calls that are refused', async () => {
    const set = `examples/${EXAMPLES[0]}`;
    const calls = REFUSED_CALLS.map((call) => call.map((one) => (one === 'SET' ? set : one)));
    await expect(await session(calls)).toMatchFileSnapshot(kept('refused'));
  });

  test.each(COMMANDS.map(({ name }) => name).filter((name) => !FOR_PROGRAMS.has(name) && !OF_A_BOX.has(name)))(
    'faintwave %s',
    async (name) => {
      const sets = ['medium-wave-galena', 'ferrite-rod-valve-diode', 'two-band'];
      const calls = sets.flatMap((set) =>
        (CALLED_WITH[name] ?? [[]]).map((more) => [name, `examples/${set}.json`, ...more]),
      );
      await expect(await session(calls)).toMatchFileSnapshot(kept(name));
    },
  );

  test.each(SHEET_IDS)('sheet %s', async (id) => {
    const texts = EXAMPLES.flatMap((file) => {
      const read = readText(readFileSync(inRoot(`examples/${file}`), 'utf8'));
      if (!read.ok) throw new Error(`${file} does not read`);
      const sheets = sheetsFor(read.written, read.set, receive(read.set), { only: [id] });
      return [`== ${file}`, ...sheets.flatMap(({ pages }) => pages.map((page) => textsIn(pageSvg(page))))];
    });
    await expect(`${texts.join('\n')}\n`).toMatchFileSnapshot(kept(`sheet-${id}`));
  });
});
