import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { path } from '../../src/cli/commands/path.ts';
import { memoryIo } from '../support/memory-io.ts';

const EXAMPLE = 'examples/medium-wave-galena.json';
const run = async (assumed: readonly string[], ...args: string[]) => {
  const description = { ...JSON.parse(await readFile(EXAMPLE, 'utf8')), assumed };
  const io = { ...memoryIo(), read: async () => JSON.stringify(description) };
  await path.run(['set.json', ...args], io);
  return io;
};

describe('faintwave path of a set with assumed values', () => {
  it('names each with its value, and what names nothing in a note', async () => {
    const io = await run(['aerial.height', 'place.stations[0]', 'aerial.heihgt'], '--station', '603');
    expect(io.printed).toMatch(
      /^Assumed \(2 values[^\n]*\n {2}aerial\.height: 8 m\n {2}place\.stations\[0\]: Saltmarsh/m,
    );
    expect(io.printed).not.toContain('heihgt');
    expect(io.problems).toMatch(/assumed: "aerial\.heihgt" names nothing/);
  });

  it('gives them as data', async () => {
    const { dataPrinted } = await run(['aerial.height'], '--json');
    expect(JSON.parse(dataPrinted).assumed).toEqual([{ place: 'aerial.height', value: '8 m' }]);
  });
});
