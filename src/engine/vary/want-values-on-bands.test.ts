import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { turnSwitch } from '../set/band-switch.ts';
import type { SetDescription, WrittenDescription } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { addBand } from './add-band.ts';
import { suggest } from './suggest.ts';
import { trialsOf } from './trial.ts';
import { wantValues } from './want-values.ts';
import { goalsOnBand, isOnAnotherBand, wantValuesOnBands } from './want-values-on-bands.ts';

const written = JSON.parse(readFileSync('examples/two-band.json', 'utf8'));
const wanting = (wants: WrittenDescription['wants'], of = written): SetDescription => {
  const read = readValue({ ...of, wants });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
};
const stations: readonly { readonly name: string; readonly frequency: string }[] = written.place.stations;
const [long, medium] = [
  stations.find(({ frequency }) => Number.parseFloat(frequency) < 300)!,
  stations.find(({ frequency }) => Number.parseFloat(frequency) > 500)!,
];
const bandsOf = (set: SetDescription) => set.bands!.map((_, i) => wantValues(trialsOf(turnSwitch(set, i)).now));

it('gives each station on the band that has it, whichever band the switch stands on', () => {
  const set = wanting([
    { kind: 'loudest', station: long.name },
    { kind: 'loudest', station: medium.name },
  ]);
  const values = wantValuesOnBands(trialsOf(set));
  const each = bandsOf(set);
  for (const [k, { figure, band, worth }] of values.entries()) {
    const at = set.bands!.findIndex(({ name }) => name === band);
    expect(figure).toBeDefined();
    expect(figure).toBe(each[at][k].figure);
    expect(worth).toBe(Math.max(...each.map((of) => of[k].worth)));
  }
  expect(values[0].band).not.toBe(values[1].band);
  const turned = set.bands!.map((_, i) => wantValuesOnBands(trialsOf(turnSwitch(set, i))));
  for (const other of turned) expect(other).toEqual(values);
});

it('counts the stations of all bands once, and what they cover together', () => {
  const set = wanting([
    { kind: 'most stations' },
    { kind: 'band', from: '200 kHz', to: '250 kHz', tolerance: '0 %' },
    { kind: 'band', from: '200 kHz', to: '1000 kHz', tolerance: '0 %' },
  ]);
  const [heard, within, across] = wantValuesOnBands(trialsOf(set));
  const each = bandsOf(set);
  expect(heard.figure).toBeGreaterThan(Math.max(...each.map(([one]) => one.figure!)));
  expect(heard.figure).toBeLessThanOrEqual(each.reduce((sum, [one]) => sum + one.figure!, 0));
  expect(within.isMet).toBe(each.some(([, one]) => one.isMet));
  const shares = each.map(([, , one]) => one.figure!);
  expect(across.figure).toBeGreaterThanOrEqual(Math.max(...shares));
  expect(across.figure).toBeLessThanOrEqual(shares.reduce((sum, share) => sum + share, 0) + 1e-12);
});

it('counts parts of all bands, each once, and asks nothing of the band of a station that is only to be kept away', () => {
  const set = wanting([
    { kind: 'fewest parts' },
    { kind: 'clear', station: medium.name, from: long.name, by: '20 dB' },
  ]);
  const [parts] = wantValuesOnBands(trialsOf(set));
  const counts = bandsOf(set).map(([one]) => one.figure!);
  expect(parts.figure).toBeGreaterThanOrEqual(Math.max(...counts));
  expect(parts.figure).toBeLessThan(counts[0] + counts[1]);
  expect(parts.band).toBeUndefined();
  const longWave = set.bands!.findIndex((_, i) => trialsOf(turnSwitch(set, i)).now.curve().lowest < 300e3);
  const kinds = (band: number) => goalsOnBand(trialsOf(turnSwitch(set, band))).map(({ want }) => want.kind);
  expect(kinds(longWave)).toEqual(['fewest parts']);
  expect(kinds(1 - longWave)).toEqual(['fewest parts', 'clear']);
});

it('is what wantValues has of a set without a band switch', () => {
  const { bands: _, ...free } = written;
  const set = wanting([{ kind: 'most stations' }, { kind: 'fewest parts' }], free);
  const trials = trialsOf(set);
  expect(wantValuesOnBands(trials)).toEqual(wantValues(trials.now));
});

it('leaves out of the goals of a band what another band is for', () => {
  const set = wanting([
    { kind: 'loudest', station: long.name },
    { kind: 'loudest', station: medium.name },
    { kind: 'most stations' },
    { kind: 'band', from: '200 kHz', to: '250 kHz', tolerance: '0 %' },
  ]);
  const kindsOn = (band: number) => {
    const goals = goalsOnBand(trialsOf(turnSwitch(set, band)));
    return goals.map(({ want }) => ('station' in want ? want.station : want.kind));
  };
  const longWave = set.bands!.findIndex((_, i) => trialsOf(turnSwitch(set, i)).now.curve().lowest < 300e3);
  expect(kindsOn(longWave)).toEqual([long.name, 'most stations', 'band']);
  expect(kindsOn(1 - longWave)).toEqual([medium.name, 'most stations']);
});

it('suggests nothing for a station that another band receives, though more turns of the coil would bring it', () => {
  const galena = JSON.parse(readFileSync('examples/medium-wave-galena.json', 'utf8'));
  const deep = { ...galena.place.stations[0], name: 'Deep Long', frequency: '198 kHz' };
  const place = { ...galena.place, stations: [galena.place.stations[0], deep] };
  const { bands, ...both } = wanting([], addBand({ ...galena, place }, 'long wave', 'shared')!.written);
  const trials = trialsOf({ ...both, bands });
  expect(trials.now.tuned(1).within).toBe(false);
  expect([0, 1].map((station) => isOnAnotherBand(trials, station))).toEqual([false, true]);
  expect(suggest(trials, 1)).toEqual([]);
  const alone = suggest(trialsOf(both), 1);
  expect(alone.map(({ settings }) => settings[0].adjustment)).toContain('arrangement.usedTurns');
});

it('covers nothing with turns so few that nothing resonates within the search for the ends of the dial', () => {
  const galena = JSON.parse(readFileSync('examples/medium-wave-galena.json', 'utf8'));
  const using = (usedTurns: number) =>
    wanting([{ kind: 'band', from: '531 kHz', to: '1602 kHz' }], {
      ...galena,
      arrangement: { kind: 'direct', coil: galena.arrangement.coil, usedTurns },
    });
  const [few, many] = [1, 30].map((turns) => trialsOf(using(turns)));
  expect(few.now.curve()).toMatchObject({ isTuned: false, lowest: 60e3, highest: 6e6 });
  expect(wantValues(few.now)[0]).toMatchObject({ figure: 0, isMet: false });
  expect(many.now.curve().isTuned).toBe(true);
  expect(wantValues(many.now)[0].figure).toBeGreaterThan(0.2);
});
