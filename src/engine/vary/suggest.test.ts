import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { someSet } from '../../../test/support/random-sets.ts';
import { receive } from '../reception/path/receive.ts';
import { isHeard } from '../reception/verdict.ts';
import type { SetDescription } from '../set/description.ts';
import { readText, readValue } from '../set/read.ts';
import { withValueAt } from '../set/write.ts';
import { receiveRanged } from '../uncertainty/receive-ranged.ts';
import { compareDetectorsOn } from './compare.ts';
import { bestSetting, matching } from './match.ts';
import { CLEAR } from './objective.ts';
import { disturberIndex, type Suggestion, stationWish, suggest } from './suggest.ts';
import { type Trials, trialsOf } from './trial.ts';

const examples = readdirSync('examples').filter((file) => file.endsWith('.json'));
function exampleOf(file: string) {
  const read = readText(readFileSync(`examples/${file}`, 'utf8'));
  if (!read.ok) throw new Error(`${file} does not read`);
  return read;
}
const trialsOfExamples = new Map<string, Trials>();
/** Of an example, the same for every test: what one has built, the next need not. */
function trialsOfExample(file: string): Trials {
  let trials = trialsOfExamples.get(file);
  if (trials === undefined) trialsOfExamples.set(file, (trials = trialsOf(exampleOf(file).set)));
  return trials;
}
const applied = (written: unknown, { changes }: Pick<Suggestion, 'changes'>): unknown =>
  changes.reduce((before, { path, to }) => withValueAt(before, path, to), written);
const readOf = (written: unknown): SetDescription => {
  const read = readValue(written);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
};

describe.each(examples)('%s', (file) => {
  const { set, written } = exampleOf(file);
  const trials = trialsOfExample(file);
  const stations = [...new Set([0, set.place.stations.length - 1])];
  const now = receive(set);

  it.each(stations)('three answers are one: suggested, matched and compared taps, for station %i', (station) => {
    const suggested = suggest(trials, station, { most: 99 });
    const matched = matching(trialsOf(set), station);
    const [own] = compareDetectorsOn(set, station, [set.detector]);
    for (const id of ['arrangement.aerialTap', 'arrangement.detectorTap']) {
      const best = bestSetting(trials, station, id);
      const match = matched.find((one) => one.id === id);
      expect(match?.value).toBe(best?.value);
      expect(match?.gain).toBe(best?.gain);
      if (id === 'arrangement.detectorTap') {
        // No tap at all is no tap to compare detectors on.
        const isTap = typeof best?.value === 'number';
        expect(own.bestTap?.turns).toBe(isTap ? best.value : undefined);
        expect(own.bestTap?.gain).toBe(isTap ? best.gain : undefined);
      }
      const one = suggested.find(({ settings }) => settings.length === 1 && settings[0].adjustment === id);
      // A gain too small to be worth saying is not suggested.
      if (one === undefined) expect(best?.scoreGain ?? 0).toBeLessThan(0.5);
      else {
        expect(one.settings[0].to).toBe(best?.value);
        expect(one.gain).toBe(best?.gain);
      }
    }
  });

  it.each(stations)('what loses a station comes after all that loses none, for station %i', (station) => {
    const { wish } = stationWish(trials, station);
    const stop = wish === 'clearance' ? disturberIndex(trials.now, station) : undefined;
    const losing = suggest(trials, station, { most: 99 }).map(({ lost }) => lost.some((one) => one !== stop));
    expect(losing).toEqual([...losing].sort());
  });

  it.each([...new Set([now.best[0], now.best[now.best.length - 1]])])(
    'four answers are one: suggested, matched, compared, and the path of the set as changed, for station %i',
    (station) => {
      const pathOf = (of: SetDescription) => receiveRanged(of, { stations: [station] }).stations[station];
      const before = pathOf(set);
      const matched = matching(trials, station);
      for (const one of suggest(trials, station, { most: 99 })) {
        const what = JSON.stringify(one.settings);
        const changed = readOf(applied(written, one));
        const after = pathOf(changed);
        expect(after.soundPressureLevel, what).toBeCloseTo(one.after.level, 6);
        expect(after.margin, what).toBeCloseTo(one.after.margin, 6);
        expect(after.verdict, what).toBe(one.after.verdict);
        expect(after.bandwidth / one.after.bandwidth, what).toBeCloseTo(1, 6);
        if (one.wish === 'reach') continue;
        expect(before.soundPressureLevel, what).toBeCloseTo(one.before.level, 6);
        expect(before.bandwidth / one.before.bandwidth, what).toBeCloseTo(1, 6);
        const gain = after.soundPressureLevel! - before.soundPressureLevel!;
        if (one.wish === 'loudness') expect(one.gain!, what).toBeCloseTo(gain, 6);
        const [setting] = one.settings;
        if (one.settings.length > 1) continue;
        const match = matched.find(({ id, value }) => id === setting.adjustment && value === setting.to);
        if (match) expect(match.after.level - match.before.level, what).toBeCloseTo(gain, 6);
        if (!one.changes.every(({ part }) => part === 'detector')) continue;
        const [row] = compareDetectorsOn(set, station, [changed.detector], false);
        expect(row.difference, what).toBeCloseTo(gain, 6);
      }
    },
  );
});

/** What a station wants, as things stand in the median; each is never to become worse by a suggestion for it. */
function wantsOf({ now }: Trials, station: number) {
  const { isWithin, heard, level, clearance } = now.medians.figures(station);
  return {
    isWithin,
    isAudible: isWithin && heard !== 'not heard',
    clearance: Math.min(clearance, CLEAR),
    level,
    isLoudnessWanted: heard === 'not heard' || clearance >= CLEAR,
  };
}

/** Follows the first suggestion five times; every step keeps what was there. @returns how many were followed. */
function follow(start: Trials, station: number): number {
  let trials = start;
  for (let step = 0; step < 5; step++) {
    const [first] = suggest(trials, station);
    if (!first) return step;
    const next = trialsOf(readOf(applied(trials.now.set, first)));
    const [before, after] = [wantsOf(trials, station), wantsOf(next, station)];
    const what = JSON.stringify(first.settings);
    if (before.isWithin) expect(after.isWithin, what).toBe(true);
    if (before.isAudible) {
      expect(after.isAudible, what).toBe(true);
      expect(after.clearance, what).toBeGreaterThanOrEqual(before.clearance - 1e-6);
    }
    if (before.isWithin && before.isLoudnessWanted) expect(after.level, what).toBeGreaterThan(before.level);
    trials = next;
  }
  return 5;
}

describe('following the first suggestion five times', () => {
  it.each(examples)('never makes worse what a station of %s wants', (file) => {
    const trials = trialsOfExample(file);
    const { best } = receive(trials.now.set);
    // The one received best, and one that is not.
    for (const station of [best[0], best[best.length - 1]]) follow(trials, station);
  });

  const { stations } = exampleOf('medium-wave-galena.json').set.place;
  const four = [0, 2, 4, 6].map((i) => stations[i]);
  const sets = fc.sample(someSet, { numRuns: 60, seed: 7 }).filter((set) => set !== undefined);
  it.each(Array.from({ length: 30 }, (_, i) => i))('never makes worse what a station of random set %i wants', (i) => {
    const set = sets[i];
    follow(trialsOf({ ...set, place: { ...set.place, stations: four } }), i % four.length);
  });
});

describe('a station that others mask', () => {
  const { set } = exampleOf('medium-wave-galena.json');
  const station = set.place.stations.findIndex(({ name }) => name === 'Northmoor Calling');
  const trials = trialsOf(set);

  it('is cleared of them, and no suggestion leaves it less clear', () => {
    const { verdict } = receive(set).stations[station];
    expect(verdict).toBe('masked');
    expect(isHeard(verdict)).toBe(false);
    const all = suggest(trials, station);
    expect(all.length).toBeGreaterThan(2);
    for (const { wish, before, after } of all) {
      expect(wish).toBe('clearance');
      expect(after.clearance).toBeGreaterThan(before.clearance);
    }
  });

  it('still has suggestions for clearance when it half works', () => {
    const halfway = suggest(trials, station).find(({ after }) => after.clearance > 3 && after.clearance < CLEAR);
    expect(halfway).toBeDefined();
    const next = trialsOf(readOf(applied(set, halfway!)));
    const { clearance } = next.now.figures(station);
    expect(clearance).toBeGreaterThan(3);
    expect(clearance).toBeLessThan(CLEAR);
    const more = suggest(next, station);
    expect(more.length).toBeGreaterThan(0);
    for (const { wish } of more) expect(wish).toBe('clearance');
  });
});

describe('what is reasonable for a garden', () => {
  const { set } = exampleOf('medium-wave-galena.json');
  const suggested = (changed: SetDescription) =>
    suggest(trialsOf(changed), 0, { most: 99 }).flatMap(({ settings }) => settings);

  it('no mast grows without end', () => {
    for (const height of [6, 9, 12, 20]) {
      const aerial = { ...set.aerial, height } as SetDescription['aerial'];
      const higher = suggested({ ...set, aerial }).find(({ adjustment }) => adjustment === 'aerial.height');
      expect(Number.parseFloat(String(higher?.to ?? '0'))).toBeLessThanOrEqual(12);
    }
  });

  it('an earth of 12 Ω is not halved, one of 80 Ω may be', () => {
    const earth = (resistance: number) =>
      suggested({ ...set, earth: { kind: 'measured', resistance } }).filter(({ adjustment }) =>
        adjustment.startsWith('earth'),
      );
    expect(earth(12)).toEqual([]);
    for (const { to } of earth(80)) expect(to).toBe('40 Ω');
  });
});

describe.each(examples)('steps suggested for %s', (file) => {
  it('are no longer than one usual step, and within what a builder has', () => {
    const all = suggest(trialsOfExample(file), 0, { most: 99 }).flatMap(({ settings }) => settings);
    for (const adjustment of ['aerial.height', 'aerial.length', 'aerial.side']) {
      const one = all.find((setting) => setting.adjustment === adjustment);
      if (!one) continue;
      const [from, to] = [one.from as number, Number.parseFloat(String(one.to))];
      const metres = /mm$/.test(String(one.to)) ? to / 1e3 : to;
      expect(metres, adjustment).toBeGreaterThan(from);
      expect(metres, adjustment).toBeLessThanOrEqual(1.5 * from);
      expect(metres, adjustment).toBeLessThanOrEqual({ 'aerial.height': 15, 'aerial.length': 60 }[adjustment] ?? 1.2);
    }
  });
});

describe('stations out of range of the dial', () => {
  it.each([
    ['a rod with too few turns', 'ferrite-rod-valve-diode', 15],
    ['a frame with too many', 'frame-aerial', 40],
  ])('are brought within it: %s', (_, file, turns) => {
    const { written } = exampleOf(`${file}.json`);
    const changed = {
      ...written,
      aerial: { ...written.aerial, turns },
      arrangement: { kind: written.arrangement.kind },
    };
    const set = readOf(changed);
    const now = receive(set);
    expect(now.stations.every((s) => s.verdict === 'out of range' && s.soundPressureLevel === undefined)).toBe(true);
    const station = now.best[0];
    const all = suggest(trialsOf(set), station);
    expect(all.some(({ settings }) => settings[0].adjustment === 'aerial.turns')).toBe(true);
    for (const one of all) {
      expect(one.wish).toBe('reach');
      expect(receive(readOf(applied(changed, one))).stations[station].outOfRange).toBeUndefined();
    }
  });
});

it('refuses a station that is not there', () => {
  const trials = trialsOf(exampleOf('medium-wave-galena.json').set);
  for (const station of [-1, 0.5, 99]) expect(() => suggest(trials, station)).toThrow(RangeError);
});

it.each([
  ['medium-wave-galena.json', 600],
  ['spider-coil-earpiece.json', 700],
])('%s: what would help its eight stations is found by building at most %i sets', (file, most) => {
  const { set } = exampleOf(file);
  const trials = trialsOf(set);
  expect(set.place.stations).toHaveLength(8);
  for (const station of set.place.stations.keys()) suggest(trials, station);
  expect(trials.built()).toBeLessThanOrEqual(most);
});
