import { describe, expect, it } from 'vitest';
import { path } from '../../src/cli/commands/path.ts';
import { memoryIo } from '../support/memory-io.ts';

const EXAMPLE = 'examples/medium-wave-galena.json';
const run = async (...args: string[]) => {
  const io = memoryIo();
  await path.run([EXAMPLE, ...args], io);
  return io;
};

describe('faintwave path with wants', () => {
  it('says what the set gives of each, and what each suggestion does to each', async () => {
    const wants = ['--want', 'clear salt from 693 by 20dB', '--want', 'band 531-1602'];
    const { printed } = await run(...wants, '--keep', 'load', '--keep', 'aerial');
    expect(printed).toMatch(
      /^I want\n {2}Saltmarsh Radio clear of Radio Corvale by 20 dB: ✓ \S.*\n {2}531–1602\u00a0kHz covered: ✗ /m,
    );
    const [, suggestions] = /Suggestions for what you want\n((?: {2}.*\n)+)/.exec(printed)!;
    const [order, ...lines] = suggestions.trim().split('\n');
    expect(order).toMatch(/^In order of the gain/);
    expect(lines.length).toBeGreaterThan(0);
    for (const line of lines) {
      expect(line).toMatch(/Radio Corvale .*, range \S/);
      expect(line).not.toMatch(/phones|aerial:/);
    }
    expect(printed).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('has both as data', async () => {
    const { dataPrinted } = await run('--want', 'fewest parts', '--json');
    const { wants, suggestionsForWants } = JSON.parse(dataPrinted);
    expect(wants).toMatchObject([{ want: { kind: 'fewest parts' }, figure: expect.any(Number) }]);
    expect(suggestionsForWants).toEqual([]);
  });

  it.each([
    [['--want', 'louder'], /--want: expected "loudest NAME".*got "louder"/],
    [['--want', 'loudest nobody'], /--want: expected part of a name.*got "nobody"/],
    [['--want', 'band 1602-531'], /wants\[0\]\.to: expected a frequency above/],
    [['--keep', 'lode'], /keep\[0\]: .*got "lode" \(did you mean "load"\?\)/],
  ])('refuses %j with a way out', async (args, problem) => {
    await expect(run(...args)).rejects.toThrow(problem);
  });
});
