/* biome-ignore-all lint/suspicious/noControlCharactersInRegex: control characters are what is looked for */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Io } from '../../src/cli/command.ts';
import { COMMANDS, run } from '../../src/cli/main.ts';
import { memoryIo } from '../support/memory-io.ts';

const HOSTILE = '\u001b[2J\u001b]0;x\u0007\r\u009b31m\u202etxt\u2066\u200b\u2028';
/** Anything but a line feed, a tab, and the ends of a table's lines. */
const FORBIDDEN =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028\u2029\u061c\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\ufeff]|\r(?!\n)/;

const galena = JSON.parse(readFileSync(new URL('../../examples/medium-wave-galena.json', import.meta.url), 'utf8'));

/** Every object has a hostile key more, and texts that `isChanged` are hostile. */
function hostile(value: unknown, isChanged: (key: string, text: string) => boolean, key = ''): unknown {
  if (typeof value === 'string') return isChanged(key, value) ? value + HOSTILE : value;
  if (Array.isArray(value)) return value.map((item) => hostile(item, isChanged, key));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([k, inner]) => [k, hostile(inner, isChanged, k)]);
  return { ...Object.fromEntries(entries), [`turns${HOSTILE}`]: HOSTILE };
}
const isName = (key: string, text: string) => ['name', 'notes'].includes(key) || text === 'main' || key === 'coil';

async function outputOf(args: readonly string[], text: string) {
  let shown = '';
  const take = (more: string) => {
    shown += more;
  };
  const io: Io = {
    ...memoryIo(),
    out: take,
    data: take,
    err: take,
    width: 80,
    read: async (file) =>
      file === 'table'
        ? `name,kHz,field\n"A${HOSTILE}",612,5\n"${HOSTILE}","x${HOSTILE}",1\n`
        : file === 'log'
          ? `time,station,heard\n2026-11-01T20:00Z,"A${HOSTILE}",faint\n"${HOSTILE}",A,"${HOSTILE}"\n`
          : text,
  };
  return { status: await run(args, io), shown };
}

const CALLS: readonly (readonly string[])[] = [
  ['path', 'set'],
  ['path', 'set', '--all'],
  ['path', 'set', '--json'],
  ['path', 'set', '--station', HOSTILE],
  ['dial', 'set'],
  ['dial', 'set', '--switch', HOSTILE],
  ['stations', 'set'],
  ['stations', 'set', '--csv'],
  ['stations', 'set', '--json'],
  ['stations', '--import', 'table'],
  ['stations', 'set', '--import', 'table'],
  ['compare', 'set'],
  ['compare', 'set', 'set'],
  ['compare', 'set', 'set', '--json'],
  ['compare', 'set', 'set', '--sheet', 'both.svg'],
  ['match', 'set'],
  ['match', 'set', '--taps', HOSTILE],
  ['curves', 'set'],
  ['curves', 'set', '--curve', HOSTILE],
  ['wave', 'set'],
  ['wave', 'set', '--point', HOSTILE],
  ['film', 'set'],
  ['film', 'set', '--scene', HOSTILE],
  ['film', 'set', '--scene', '1', '--out', 'x.mp4', '--ffmpeg', HOSTILE],
  ['move', 'set', '--to', 'long-wave'],
  ['move', 'set', '--to', HOSTILE],
  ['rework', 'set'],
  ['rework', 'set', '--stop', HOSTILE],
  ['find', 'set', '--at', HOSTILE],
  ['find', 'set', '--at', 'set', '--want', HOSTILE],
  ['listen', 'set', '--seconds', HOSTILE, '--out', 'x'],
  ['sheets', 'set', '--only', HOSTILE, '--out', 'x'],
  ['measure', 'set'],
  ['measure', 'set', '--json'],
  ['measure', 'set', HOSTILE],
  ['measure', 'set', '--station', HOSTILE],
  ['measure', 'set', HOSTILE, '--kind', HOSTILE],
  ['measure', 'set', HOSTILE, '--kind', 'analyser-coil', '--coil', HOSTILE],
  ['measure', 'set', `${HOSTILE}.s1p`, '--coil', HOSTILE],
  ['measure', 'set', `${HOSTILE}.wav`, '--coil', HOSTILE],
  ['log', 'set', 'log'],
  ['log', 'set', 'log', '--json'],
  ['log', 'set', HOSTILE],
  ['fault', 'set'],
  ['fault', 'set', '--json'],
  ['fault', 'set', '--sheet', 'faults.svg'],
  ['fault', 'set', '--sheet', 'faults.pdf'],
  ['fault', 'set', '--observed', HOSTILE],
  ['check', 'set'],
  ['check', 'set', '--json'],
  ['share', 'set'],
  ['share', 'set', '--json'],
  ['share', 'set', '--html', 'x'],
  ['share', 'set', '--photo', HOSTILE],
  ['schema'],
  ['calc', 'coil', 'set'],
  ['calc', HOSTILE],
  [HOSTILE],
];

describe('names, keys and options that would steer a terminal', () => {
  it('are in a call of every command', () => {
    const called = new Set(CALLS.map(([name]) => name));
    expect(COMMANDS.filter(({ name }) => !called.has(name))).toEqual([]);
  });

  it.each(CALLS.map((args) => [args.join(' ').replaceAll(HOSTILE, 'HOSTILE'), args] as const))(
    '%s',
    async (_, args) => {
      const named = await outputOf(args, JSON.stringify(hostile(galena, isName)));
      expect(FORBIDDEN.exec(named.shown)).toBeNull();
      if (!args.includes(HOSTILE) && args[0] !== 'calc') expect(named.status).toBe(0);
      const everywhere = await outputOf(args, JSON.stringify(hostile(galena, () => true)));
      expect(FORBIDDEN.exec(everywhere.shown)).toBeNull();
      const broken = await outputOf(args, `{ "name": ${HOSTILE}`);
      expect(FORBIDDEN.exec(broken.shown)).toBeNull();
    },
  );
});
