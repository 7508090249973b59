import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isHeard } from '../reception/verdict.ts';
import type { SetDescription, WrittenDescription } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { withValueAt } from '../set/write.ts';
import { receiveRanged } from '../uncertainty/receive-ranged.ts';
import { suggestForWants, type WantSuggestion } from './suggest-for-wants.ts';
import { gainForEffort } from './suggestion-order.ts';
import { trialsOf } from './trial.ts';
import { wantValues } from './want-values.ts';

type Wants = WrittenDescription['wants'];
const written = (file: string) => JSON.parse(readFileSync(`examples/${file}`, 'utf8'));
const setOf = (value: unknown): SetDescription => {
  const read = readValue(value);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
};
const wanting = (file: string, wants: Wants, keep: readonly string[] = []) => ({ ...written(file), wants, keep });
const suggestionsFor = (value: unknown) => suggestForWants(trialsOf(setOf(value)));
const applied = (value: unknown, { changes }: WantSuggestion): unknown =>
  changes.reduce((before, { path, to }) => withValueAt(before, path, to), value);
const valuesOf = (value: unknown) => wantValues(trialsOf(setOf(value)).now);
const [first, second] = written('medium-wave-galena.json').place.stations.map(({ name }: { name: string }) => name);

/** Two stations 18 kHz apart, the other 8 times as strong. */
const besides = (by: string) => {
  const value = written('medium-wave-galena.json');
  const [station] = value.place.stations;
  const at = (name: string, frequency: string, fieldStrength: string) => ({
    ...station,
    name,
    frequency,
    fieldStrength,
  });
  value.place.stations = [at('Ash', '900 kHz', '8 mV/m'), at('Beech', '918 kHz', '64 mV/m')];
  return { ...value, wants: [{ kind: 'clear', station: 'Ash', from: 'Beech', by }] };
};

describe('what a set gives of its wants', () => {
  const values = valuesOf(
    wanting('medium-wave-galena.json', [
      { kind: 'loudest', station: first },
      { kind: 'clear', station: first, from: second },
      { kind: 'band', from: '531 kHz', to: '1602 kHz' },
      { kind: 'band', from: '600 kHz', to: '1500 kHz' },
      { kind: 'most stations' },
      { kind: 'speech', station: first },
      { kind: 'fewest parts' },
    ]),
  );
  it('has a figure for each, and whether it is met where there is a limit', () => {
    expect(values.map(({ isMet }) => isMet)).toEqual([
      true,
      true,
      false,
      true,
      undefined,
      expect.any(Boolean),
      undefined,
    ]);
    expect(values[2].covered![1]).toBeLessThan(1602e3);
    expect(values[4].figure).toBeGreaterThan(0);
    expect(values[5].figure).toBeGreaterThan(300);
    expect(values[6].figure).toBeGreaterThanOrEqual(6);
  });
  it('has the level that a reception shows: the median of all such sets', () => {
    const set = setOf(
      wanting('medium-wave-galena.json', [{ kind: 'loudest', station: first }, { kind: 'most stations' }]),
    );
    const [loudest, most] = wantValues(trialsOf(set).now);
    const { stations } = receiveRanged(set);
    expect(loudest.figure).toBeCloseTo(stations[0].hearing!.level, 6);
    expect(most.figure).toBe(stations.filter(({ verdict }) => isHeard(verdict)).length);
  });
  it('has none for a station beyond the dial, which is worth less the further it lies', () => {
    const at = (frequency: string) => {
      const value = written('medium-wave-galena.json');
      value.place.stations[0].frequency = frequency;
      return valuesOf({ ...value, wants: [{ kind: 'loudest', station: first }] })[0];
    };
    const [near, far] = [at('400 kHz'), at('200 kHz')];
    expect([near.figure, near.isMet]).toEqual([undefined, false]);
    expect(far.worth).toBeLessThan(near.worth);
  });
});

describe('two stations 18 kHz apart', () => {
  it('come apart with every suggestion that is followed, and advice goes on until the want is met', () => {
    let value: unknown = { ...besides('30 dB'), keep: ['load', 'aerial', 'earth'] };
    let figure = valuesOf(value)[0].figure!;
    for (let step = 0; step < 2; step++) {
      const all = suggestionsFor(value);
      const [top] = all;
      // None that leaves them as they are, such as a larger aerial.
      for (const { effects } of all) expect(effects[0].change).toBeGreaterThanOrEqual(0.5);
      const now = valuesOf(value)[0];
      if (!top) {
        expect(now.isMet || step > 0).toBe(true);
        break;
      }
      value = applied(value, top);
      const next = valuesOf(value)[0].figure!;
      expect(next).toBeGreaterThan(figure);
      figure = next;
    }
  });
});

describe('a band that is not covered', () => {
  it('is brought nearer by turns, capacitors or a looser aerial', () => {
    for (const [from, to] of [
      ['400 kHz', '1200 kHz'],
      ['531 kHz', '1602 kHz'],
    ]) {
      const all = suggestionsFor(wanting('medium-wave-galena.json', [{ kind: 'band', from, to, tolerance: 0 }]));
      expect(all.length, from).toBeGreaterThan(0);
      expect(all[0].effects[0].change).toBeGreaterThan(0.2);
    }
  });
  it('of a direct aerial is widened by a series capacitor, by itself or with more turns', () => {
    const value = wanting('medium-wave-galena.json', [{ kind: 'band', from: '531 kHz', to: '1602 kHz' }]);
    const { coil } = value.arrangement;
    const all = suggestionsFor({ ...value, arrangement: { kind: 'direct', coil } });
    expect(
      all.some(({ settings }) => settings.some(({ adjustment }) => adjustment === 'arrangement.seriesCapacitor')),
    ).toBe(true);
  });
});

it('no want is met by a set that is deaf: the station received best stays within 6 dB', () => {
  const all = suggestionsFor(wanting('medium-wave-galena.json', [{ kind: 'band', from: '531 kHz', to: '1602 kHz' }]));
  expect(all[0].effects[0].after.isMet).toBe(true);
  for (const { loudness } of all) for (const { change } of loudness) expect(change).toBeGreaterThan(-6);
});

describe('a station below the dial', () => {
  it('is reached by turns or capacitance', () => {
    const value = wanting('medium-wave-galena.json', [{ kind: 'loudest', station: first }]);
    value.place.stations[0].frequency = '400 kHz';
    const all = suggestionsFor(value);
    expect(all.length).toBeGreaterThan(0);
    expect(all[0].effects[0].after.figure).toBeDefined();
  });
});

/** A set on a place with stations of its own. */
const receiving = (stations: readonly (readonly [name: string, frequency: string, field: string])[], more: object) => {
  const value = written('medium-wave-galena.json');
  const [{ programme }] = value.place.stations;
  value.place.stations = stations.map(([name, frequency, fieldStrength]) => ({
    name,
    frequency,
    fieldStrength,
    programme,
  }));
  return { ...value, ...more };
};

describe('a station that is not heard', () => {
  it('is clear of nothing: no want for it is met, however far the other stays below', () => {
    const faint = receiving([['Ash', '900 kHz', '0.05 mV/m']], {});
    faint.place.stations.push({ ...faint.place.stations[0], name: 'Beech', frequency: '1500 kHz' });
    const wants: Wants = [
      { kind: 'clear', station: 'Ash', from: 'Beech', by: '10 dB' },
      { kind: 'loudest', station: 'Ash' },
      { kind: 'speech', station: 'Ash', bandwidth: '1 kHz' },
    ];
    for (const { isMet, verdict, figure } of valuesOf({ ...faint, wants })) {
      expect(verdict).toBe('not heard');
      expect(figure).toBeDefined();
      expect(isMet).toBe(false);
    }
  });
  it('above the end of the dial is out of range, though the set tunes there once more', () => {
    const { arrangement, coils } = written('medium-wave-galena.json');
    const beyond = receiving([['Ash', '1700 kHz', '20 mV/m']], {
      wants: [{ kind: 'loudest', station: 'Ash' }],
      coils: [{ ...coils[0], turns: 90 }],
      arrangement: { ...arrangement, aerialTap: 30, detectorTap: 30 },
    });
    expect(valuesOf(beyond)).toMatchObject([{ verdict: 'out of range', figure: undefined, isMet: false }]);
    const [{ verdict, soundPressureLevel, dial, outOfRange }] = receiveRanged(setOf(beyond)).stations;
    expect([verdict, soundPressureLevel, dial, outOfRange?.side]).toEqual([
      'out of range',
      undefined,
      undefined,
      'above',
    ]);
  });
});

describe('a station just below the dial', () => {
  const stations = [
    ['Ash', '480 kHz', '20 mV/m'],
    ['Beech', '700 kHz', '20 mV/m'],
    ['Cedar', '900 kHz', '20 mV/m'],
    ['Dogwood', '1100 kHz', '20 mV/m'],
  ] as const;
  const below = receiving(stations, {
    wants: [{ kind: 'loudest', station: 'Ash' }],
    coils: [{ ...written('medium-wave-galena.json').coils[0], turns: 44 }],
  });
  const all = suggestionsFor(below);
  it('is reached by as little as brings it well within, and the first change loses no station', () => {
    const [top] = all;
    expect(valuesOf(below)[0].figure).toBeUndefined();
    expect([top.effects[0].after.verdict, top.lost, top.gained]).toEqual(['comfortable', [], [0]]);
    const { curve, medians } = trialsOf(setOf(applied(below, top))).now;
    expect(480e3 / curve().lowest).toBeGreaterThan(1.04);
    expect(480e3 / curve().lowest).toBeLessThan(1.15);
    expect(medians.stationsHeard()).toEqual([0, 1, 2, 3]);
  });
  it('is on the dial after whatever is suggested for it', () => {
    for (const { effects } of all) expect(effects[0].after.figure).toBeDefined();
  });
});

describe('what is kept', () => {
  it.each(['coast-by-night.json', 'ferrite-rod-valve-diode.json', 'medium-wave-germanium-amplifier.json'])(
    'stays as it is in %s',
    (file) => {
      const value = written(file);
      const [{ name: station }] = value.place.stations;
      const wants: Wants = [{ kind: 'loudest', station }];
      const kept = ['load', 'aerial', 'arrangement.detectorTap'];
      for (const { changes } of suggestionsFor({ ...value, wants, keep: kept }))
        for (const { path } of changes)
          expect(['load', 'aerial', 'arrangement.detectorTap']).not.toContain(
            path[0] === 'arrangement' ? path.join('.') : path[0],
          );
    },
  );
});

describe('every suggestion', () => {
  const wants: Wants = [
    { kind: 'loudest', station: first },
    { kind: 'clear', station: first, from: second },
    { kind: 'band', from: '531 kHz', to: '1602 kHz' },
    { kind: 'fewest parts' },
  ];
  const value = wanting('medium-wave-galena.json', wants, ['load']);
  const all = suggestionsFor(value);
  it('says what it does to each want, as the set changed has it', () => {
    expect(all.length).toBeGreaterThan(0);
    for (const suggestion of all) {
      const after = valuesOf(applied(value, suggestion));
      expect(suggestion.effects.map((effect) => effect.after.figure)).toEqual(after.map(({ figure }) => figure));
    }
  });
  it('makes no want worse by more than 0.1 dB, or stands last as a trade-off', () => {
    const firstTradeOff = all.findIndex(({ isTradeOff }) => isTradeOff);
    for (const [i, { effects, isTradeOff }] of all.entries()) {
      expect(Math.min(...effects.map(({ change }) => change)) < -0.1 - 1e-6).toBe(isTradeOff);
      if (firstTradeOff >= 0 && i > firstTradeOff) expect(isTradeOff).toBe(true);
    }
  });
  it('stands in the order of gain for effort, and says which stations it loses', () => {
    const set = setOf(value);
    const now = trialsOf(set).now.medians.stationsHeard();
    const disturber = set.place.stations.findIndex(({ name }) => name === second);
    const places = all.filter(({ isTradeOff }) => !isTradeOff).map((one) => gainForEffort(one, one.gain, [disturber]));
    expect(places).toEqual([...places].sort((a, b) => b - a));
    for (const one of all) {
      const after = trialsOf(setOf(applied(value, one))).now.medians.stationsHeard();
      expect(one.lost).toEqual(now.filter((station) => !after.includes(station)));
      expect(one.gained).toEqual(after.filter((station) => !now.includes(station)));
    }
  });
});

describe('a trade-off', () => {
  it('is given where nothing else brings a want nearer', () => {
    const file = 'medium-wave-germanium-amplifier';
    const [station, from] = written(`${file}.json`).place.stations.map(({ name }: { name: string }) => name);
    const all = suggestionsFor(
      wanting(`${file}.json`, [
        { kind: 'fewest parts' },
        { kind: 'speech', station, bandwidth: '7 kHz' },
        { kind: 'clear', station, from, by: '70 dB' },
      ]),
    );
    expect(all.map(({ isTradeOff }) => isTradeOff)).toEqual([true]);
    const changes = all[0].effects.map(({ change }) => change);
    expect(Math.min(...changes)).toBeLessThan(-0.1);
    expect(Math.max(...changes)).toBeGreaterThan(0.5);
    expect(all[0].lost.length).toBeGreaterThan(0);
  });

  it('stands after what makes no want worse, and all are no more than are asked for', () => {
    const trials = trialsOf(
      setOf(
        wanting('medium-wave-galena.json', [
          { kind: 'band', from: '200 kHz', to: '1602 kHz' },
          { kind: 'loudest', station: first },
          { kind: 'speech', station: second, bandwidth: '7 kHz' },
        ]),
      ),
    );
    const kinds = (most: number) => suggestForWants(trials, { most }).map(({ isTradeOff }) => isTradeOff);
    expect(kinds(3)).toEqual([false, true, true]);
    expect(kinds(2)).toEqual([false, true]);
    expect(kinds(1)).toEqual([false]);
  });

  it('that gains less than nothing stands the later, the more it takes and the more stations it loses', () => {
    const change = (effort: 'buy' | 'outdoors') => ({
      changes: [{ adjustment: 'earth.kind', part: 'earth', path: ['earth', 'kind'], from: 0, to: 1, effort }] as const,
    });
    const bought = gainForEffort({ ...change('buy'), lost: [] }, -5);
    expect(bought).toBeGreaterThan(gainForEffort({ ...change('outdoors'), lost: [1, 2, 3] }, -6));
    expect(bought).toBeGreaterThan(gainForEffort({ ...change('buy'), lost: [1] }, -5));
    expect(bought).toBeGreaterThan(gainForEffort({ ...change('outdoors'), lost: [] }, -5));
    expect(gainForEffort({ ...change('buy'), lost: [1] }, 5)).toBeLessThan(
      gainForEffort({ ...change('buy'), lost: [] }, 5),
    );
  });
});

it('a wave trap takes a purchase, and is not put back for the station that it stops', () => {
  const [, , station, from] = written('medium-wave-galena.json').place.stations.map(
    ({ name }: { name: string }) => name,
  );
  const all = suggestionsFor(
    wanting('medium-wave-galena.json', [
      { kind: 'speech', station, bandwidth: '7 kHz' },
      { kind: 'clear', station, from, by: '70 dB' },
    ]),
  );
  const trap = all.find(({ settings }) => settings[0].adjustment === 'arrangement.traps')!;
  expect([trap.effort, trap.lost]).toEqual(['buy', [3]]);
  expect(gainForEffort(trap, trap.gain, [3])).toBeCloseTo(trap.gain / 6, 9);
  const places = all.filter(({ isTradeOff }) => !isTradeOff).map((one) => gainForEffort(one, one.gain, [3]));
  expect(places).toEqual([...places].sort((a, b) => b - a));
});

it('a station that comes onto the dial is no gain in decibels', () => {
  const value = wanting('medium-wave-galena.json', [
    { kind: 'loudest', station: first },
    { kind: 'loudest', station: second },
  ]);
  value.place.stations[0].frequency = '400 kHz';
  const all = suggestionsFor(value);
  const reaching = all.filter(({ reached }) => reached.length > 0);
  expect(reaching.length).toBeGreaterThan(0);
  for (const { reached, unreached, gain, effects } of reaching) {
    expect([reached, unreached]).toEqual([[0], []]);
    expect(gain).toBe(effects[1].change);
  }
});
