import { readFileSync } from 'node:fs';
import { inRoot } from '../../scripts/support/paths.mjs';
import type { Io } from '../../src/cli/command.ts';
import { run } from '../../src/cli/main.ts';
import { memoryIo } from './memory-io.ts';

/** Runs a command on an example, or on files that are given, in this process. @returns what it said to people. */
export async function said(args: readonly string[], files: Readonly<Record<string, string>> = {}): Promise<string> {
  let text = '';
  const io: Io = {
    ...memoryIo(),
    out: (more) => {
      text += more;
    },
    err: (more) => {
      text += more;
    },
    width: Number.POSITIVE_INFINITY,
    read: async (file) => files[file] ?? readFileSync(inRoot(file), 'utf8'),
  };
  await run(args, io);
  return text;
}

/** What each command is asked besides the file; nothing is written to a disk. */
export const CALLED_WITH: Readonly<Record<string, readonly (readonly string[])[]>> = {
  path: [[], ['--night', '--all']],
  dial: [[], ['--night']],
  stations: [[], ['--night'], ['--time', '2026-01-15T21:00Z']],
  curves: [
    ...['resonance', 'band', 'q', 'detector'].map((curve) => ['--curve', curve]),
    ['--out', '/nowhere/out.svg'],
    ['--out', '/nowhere/out.csv'],
  ],
  compare: [[], ['examples/slider-set.json'], ['examples/slider-set.json', '--sheet', '/nowhere/out.svg']],
  move: [['--to', 'long-wave']],
  log: [['examples/logs/first-evenings.csv']],
  sheets: [['--out', '/nowhere', '--only', 'cautions', '--svg']],
  listen: [['--out', '/nowhere/out.wav', '--seconds', '0.1']],
  film: [[], ['--out', '/nowhere/out.vtt', '--scene', '2']],
  wave: [[], ['--exact'], ['--out', '/nowhere/out.csv', '--for', '1 µs']],
};
/** They print data. */
export const FOR_PROGRAMS = new Set(['calc', 'schema']);
/** It takes a box of parts, not a set. */
export const OF_A_BOX = new Set(['find']);

/** Calls that are refused, with what of each stands in the answer as it was written. */
export const REFUSED_CALLS: readonly (readonly string[])[] = [
  ['fly'],
  ['path'],
  ['path', 'SET', '--wings'],
  ['path', 'SET', '--station'],
  ['path', 'SET', '--all=yes'],
  ['path', 'SET', '--station', 'nobody'],
  ['path', 'SET', 'SET'],
  ['path', 'SET', '--day', '--night'],
  ['stations', 'SET', '--time', 'teatime'],
  ['curves', 'SET', '--curve', 'noise'],
  ['curves', 'SET', '--out', 'out.gif'],
  ['match', 'SET', '--taps', 'low'],
  ['move', 'SET', '--to', 'short-wave'],
  ['move', 'SET', '--to', 'medium-wave'],
  ['wave', 'SET', '--for', '3 h'],
  ['wave', 'SET', '--size', 'large'],
  ['wave', 'SET', '--coming-on'],
  ['wave', 'SET', '--exact', '--cover'],
  ['listen', 'SET'],
  ['listen', 'SET', '--out', 'a.wav', '--heater', 'on'],
  ['listen', 'SET', '--out', 'a.wav', '--seconds', 'long'],
  ['sheets', 'SET'],
  ['sheets', 'SET', '--out', 'a', '--board', 'large'],
  ['log', 'SET'],
  ['check'],
  ['schema', 'SET'],
  ['calc'],
];
