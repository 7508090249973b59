import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chooseStation, kilohertzOf } from '../../src/cli/choose-station.ts';
import { wavePointInSentence } from '../../src/outputs/words/index.ts';

const NAMES = ['Dunlin', 'dunlin north', 'North', 'trap', 'trap 1 coil', '🎧', '603', '603 kHz', 'C1', ''];
const isText = (name: string): boolean => name.trim() !== '' && kilohertzOf(name) === undefined;

describe('a name that a person asks for', () => {
  test('a station’s whole name finds it, before any other with that in its name', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(NAMES, { minLength: 1 }), fc.nat(), (names, pick) => {
        const stations = names.map((name, i) => ({ name, frequency: 500_000 + 9_000 * i }));
        const wanted = names[pick % names.length];
        if (isText(wanted)) expect(stations[chooseStation(stations, wanted)].name).toBe(wanted);
      }),
      { numRuns: 200 },
    );
  });

  test('a name that reads as a frequency is asked for as one', () => {
    const stations = [
      { name: '909 kHz', frequency: 603_000 },
      { name: 'Dunlin', frequency: 909_000 },
    ];
    expect(chooseStation(stations, '909 kHz')).toBe(1);
  });

  test('a joint of a listed circuit keeps its capitals within a sentence', () => {
    fc.assert(
      fc.property(fc.constantFrom('C1', 'Top', 'ÅNGSTRÖM', '🎧'), (name) => {
        const point = { code: 'node' as const, node: { code: 'listed' as const, name }, id: name, joins: undefined };
        expect(wavePointInSentence(point)).toContain(name);
      }),
    );
    expect(wavePointInSentence({ code: 'across-earth' })).toBe('across the earth connection');
  });
});
