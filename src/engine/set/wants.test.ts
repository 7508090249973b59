import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { keptPath, overlaps } from './keep.ts';
import { readValue } from './read.ts';

const galena = () =>
  JSON.parse(readFileSync(new URL('../../../examples/medium-wave-galena.json', import.meta.url), 'utf8'));
const names: readonly { name: string; frequency: string }[] = galena().place.stations;

const readWith = (more: object) => readValue({ ...galena(), ...more });
const problemsOf = (more: object) => {
  const read = readWith(more);
  return read.ok ? [] : read.problems;
};

describe('what the builder wants', () => {
  it('reads every kind at once, with its defaults, SI, and writes it back as it was', () => {
    const wants = [
      { kind: 'loudest', station: names[0].name },
      { kind: 'clear', station: names[0].name, from: names[1].name },
      { kind: 'band', from: '531 kHz', to: '1602 kHz' },
      { kind: 'most stations' },
      { kind: 'speech', station: names[1].frequency },
      { kind: 'fewest parts' },
    ];
    const read = readWith({ wants, keep: ['load', 'coils[0].turns', 'arrangement.seriesCapacitor'] });
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.notes).toEqual([]);
    expect(read.written.wants).toEqual(wants);
    expect(read.set.wants).toMatchObject([
      {},
      { by: 30 },
      { from: 531e3, to: 1602e3, tolerance: 0.01 },
      {},
      { bandwidth: 3400 },
      {},
    ]);
  });

  it('adds nothing to a description that wants nothing', () => {
    const read = readWith({});
    expect(read.ok && [read.set.wants, read.set.keep, Object.keys(read.written).sort()]).toEqual([
      undefined,
      undefined,
      Object.keys(galena()).sort(),
    ]);
  });

  it('names every problem at once, each with its place and a way out', () => {
    const problems = problemsOf({
      wants: [
        { kind: 'loudest', station: `${names[0].name}x` },
        { kind: 'clear', station: names[0].name, from: names[0].name },
        { kind: 'band', from: '1602 kHz', to: '531 kHz' },
        { kind: 'speech', station: 'nowhere at all' },
      ],
      keep: ['lode', 'coils[9]', 'load.height', 'place', '__proto__', 'aerial..height'],
    });
    expect(problems.map(({ path, expected: { code } }) => [path, code])).toEqual([
      ['wants[0].station', 'station-name'],
      ['wants[1].from', 'another-station'],
      ['wants[2].to', 'quantity.above'],
      ['wants[3].station', 'station-name'],
      ['keep[0]', 'part-or-place'],
      ['keep[1]', 'part-or-place'],
      ['keep[2]', 'part-or-place'],
      ['keep[3]', 'part-or-place'],
      ['keep[4]', 'part-or-place'],
      ['keep[5]', 'part-or-place'],
    ]);
    expect(problems[0].hint).toEqual({ code: 'did-you-mean', option: names[0].name });
    expect(problems[4].hint).toEqual({ code: 'did-you-mean', option: 'load' });
  });

  it('refuses kinds and quantities that are none', () => {
    const problems = problemsOf({ wants: [{ kind: 'louder' }, { kind: 'band', from: '5 m', to: '1602 kHz' }, 7] });
    expect(problems.map(({ path }) => path)).toEqual(['wants[0].kind', 'wants[1].from', 'wants[2]']);
  });
});

describe('what is kept', () => {
  it('is a part or a place in one', () => {
    expect(keptPath('coils[0].turns')).toEqual(['coils', 0, 'turns']);
    expect(keptPath('load')).toEqual(['load']);
    for (const text of ['', 'place', 'load.', '.load', 'coils[x]', 'load height'])
      expect(keptPath(text)).toBeUndefined();
  });

  it('is touched by what is written within it or around it, and by nothing else', () => {
    const kept = ['load', 'make'];
    expect(overlaps(kept, ['load'])).toBe(true);
    expect(overlaps(kept, ['load', 'make'])).toBe(true);
    expect(overlaps(['load'], ['load', 'transformer', 'ratio'])).toBe(true);
    expect(overlaps(kept, ['load', 'transformer'])).toBe(false);
    expect(overlaps(['coils', 0], ['coils', 1, 'turns'])).toBe(false);
  });
});
