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
