import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fault } from '../../src/cli/commands/fault.ts';
import { memoryIo } from '../support/memory-io.ts';

const example = (name: string) => JSON.parse(readFileSync(`examples/${name}.json`, 'utf8'));

/** The command on a set, with what a person types at a terminal, if there is one. */
async function run(set: object, typed?: string[], ...args: readonly string[]) {
  const asked: string[] = [];
  const io = {
    ...memoryIo(),
    read: async () => JSON.stringify(set),
    ask:
      typed &&
      (async (question: string) => {
        asked.push(question);
        return typed.shift();
      }),
  };
  await fault.run(['set', ...args], io);
  return { printed: io.printed, data: io.dataPrinted, asked };
}

describe('faintwave fault at a terminal', () => {
  const set = example('medium-wave-galena');
  // All three are heard well.
  const [first, second, third] = ['603 kHz', '909 kHz', '1458 kHz'].map((frequency) =>
    set.place.stations.find((station: { frequency: string }) => station.frequency === frequency),
  );
  const twins = [{ ...first, name: 'Twin' }, { ...second, name: 'Twin' }, third];

  it('ends where a person says so, and answers by what was typed until then, of the station asked about', async () => {
    const { printed, asked } = await run({ ...set, place: { ...set.place, stations: twins } }, [
      '',
      'not heard',
      'end',
    ]);
    expect(asked).toHaveLength(3);
    expect(printed.match(/Next check/g)).toHaveLength(1);
    expect(printed).toMatch(/Likely causes:\n {2}\d+(\.\d+)? %/);
    expect(printed).toContain(`loudness of Twin (${second.frequency}): not heard`);
    expect(printed).not.toContain(`loudness of Twin (${first.frequency}): not heard`);
    // What plays is no reading of a set with everything disconnected.
    expect(printed).toMatch(
      /everything disconnected:\n( {2}.*: .*\n)+With nothing wrong, playing the strongest station:\n {2}direct voltage across the phones: /,
    );
  });
});

it('a set with an amplifier on the mains is asked for no voltage, and told none', async () => {
  const set = example('medium-wave-germanium-amplifier');
  const place = { ...set.place, stations: set.place.stations.slice(0, 1) };
  const onMains = { ...set, place, load: { ...set.load, supply: 'mains' } };
  const { data } = await run(onMains, undefined, '--json');
  expect(JSON.parse(data).expected).not.toHaveProperty('directVoltage');
  const { printed } = await run(onMains);
  expect(printed).toContain('across the terminals for the amplifier, with the amplifier disconnected');
  expect(printed).not.toMatch(/direct voltage|phones’ terminals/);
});

describe('faintwave fault --sheet', () => {
  const set = 'examples/medium-wave-galena.json';
  it('writes the tree as a PDF, or as one SVG with both pages', async () => {
    const io = memoryIo();
    await fault.run([set, '--sheet', 'tree.svg'], io);
    await fault.run([set, '--sheet', 'tree.pdf', '--paper', 'letter'], io);
    const svg = io.files.get('tree.svg') as string;
    expect(svg).toContain('height="594mm"');
    expect(svg).toContain('1 of 2');
    expect(svg).toContain('2 of 2');
    const pdf = Buffer.from(io.files.get('tree.pdf') as Uint8Array).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(2);
    expect(io.printed).toBe('');
    expect(io.problems).toContain('tree.svg');
  });
  it.each([
    [['--sheet', 'tree.png'], /pdf/],
    [['--sheet', 'tree.pdf', '--json'], /--json does not go with --sheet/],
    [['--sheet', 'tree.pdf', '--observed', 'x'], /--observed does not go with --sheet/],
    [['--paper', 'a4'], /--paper goes with --sheet/],
  ])('refuses %s', async (args, problem) => {
    await expect(fault.run([set, ...args], memoryIo())).rejects.toThrow(problem);
  });
});
