import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { ran } from '../support/command-line.ts';

const coast = 'examples/coast-by-night.json';
const json = async (...args: string[]) => JSON.parse((await ran(['stations', coast, '--json', ...args])).stdout);
const named = (answer: { stations: { name: string }[] }, name: string) =>
  answer.stations.find((row) => row.name === name) as unknown as Record<string, never> & {
    day: { fieldStrength: number };
    night: { fieldStrength: number; spread: number };
    heard: string;
    bearing: number;
    distance: number;
    nightBy: string;
  };

describe('faintwave stations', () => {
  it('lists what can be had, best first, with a first choice', async () => {
    const { status, stdout } = await ran(['stations', coast, '--day']);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^► +Strait Wireless +1062 +140 km +138° south-east/m);
    expect(stdout).toMatch(/► Try Strait Wireless first/);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: no colour outside a terminal
    expect(stdout).not.toMatch(/\u001b|NaN|undefined/);
  });

  it('hears by night what is not to be had by day', async () => {
    const day = await json('--day');
    const night = await json('--night');
    expect(named(day, 'The Old Mill Programme').heard).toBe('not heard');
    expect(named(night, 'The Old Mill Programme').heard).not.toBe('not heard');
    expect(named(night, 'Puszta Evening').nightBy).toBe('sky wave');
    expect(named(night, 'Puszta Evening').night.fieldStrength).toBeGreaterThan(
      1000 * named(day, 'Puszta Evening').day.fieldStrength,
    );
  });

  it('begins with the time the description says; an option overrides it', async () => {
    const byItself = await json();
    expect(byItself.time).toBe('night');
    expect(byItself).toEqual(await json('--night'));
    expect((await json('--day')).time).toBe('day');
    const path = async (...args: string[]) => (await ran(['path', coast, '--all', ...args])).stdout;
    const pathByItself = await path();
    expect(pathByItself).toMatch(/^By night/m);
    expect(pathByItself).toBe(await path('--night'));
    expect(await path('--day')).not.toMatch(/^By night/m);
    const set = JSON.parse(readFileSync(inRoot(coast), 'utf8'));
    set.place.listening = { month: 12, hour: 23.5 };
    const moment = (await ran(['stations', '-'], JSON.stringify(set))).stdout;
    expect(moment).toMatch(/2026-12-15 23:30 UTC \(night\)/);
    expect(moment).toMatch(/Radio Seven Rivers: The station is off the air at this time/);
    const both = await ran(['stations', coast, '--day', '--night']);
    expect([both.status, both.stderr]).toEqual([2, expect.stringMatching(/expected --day or --night, got both/)]);
  });

  it('knows the moment: who is off the air, and where the sun is', async () => {
    expect((await ran(['stations', coast, '--time', '2026-01-15T23:30Z'])).stdout).toMatch(
      /Radio Seven Rivers: The station is off the air at this time/,
    );
    expect((await ran(['stations', coast, '--time', '2026-06-15T12:00Z'])).stdout).toMatch(/12:00 UTC \(day\)/);
    const bad = await ran(['stations', coast, '--time', 'teatime']);
    expect([bad.status, bad.stderr]).toEqual([
      2,
      expect.stringMatching(/--time: expected a time such as .*, got "teatime"/),
    ]);
  });

  it('writes the list as a table and reads it back the same', async () => {
    const { stdout } = await ran(['stations', coast, '--csv']);
    const back = JSON.parse((await ran(['stations', '--import', '-'], stdout)).stdout);
    const given = JSON.parse(readFileSync(inRoot(coast), 'utf8')).place.stations;
    expect(back).toHaveLength(given.length);
    for (const [i, station] of given.entries()) expect(back[i]).toMatchObject(station);
    // Joined to the set it came from, nothing is there twice.
    const folder = mkdtempSync(join(tmpdir(), 'faintwave-'));
    writeFileSync(join(folder, 'list.csv'), stdout);
    const joined = await ran(['stations', coast, '--import', join(folder, 'list.csv')]);
    expect(JSON.parse(joined.stdout).place.stations).toHaveLength(given.length);
    writeFileSync(join(folder, 'joined.json'), joined.stdout);
    expect((await ran(['check', join(folder, 'joined.json')])).status).toBe(0);
  });

  it('tells what is wrong in a table, row by row, and takes the rest', async () => {
    const table = [
      'Station;Freq (kHz);Power (kW);Lat;Long;Kind',
      'Heron Radio;612;10;53.1 N;2.2 W;News and talk',
      'Heron Radio;612;10;53.1 N;2.2 W;News and talk',
      'Otter FM;lots;1;52 N;1 W;pop',
      'Stoat Sound;1000;0;91 N;1 W;knitting',
      'Fen Voice;1000;5;51 N;1 W;knitting',
    ].join('\n');
    const { status, stdout, stderr } = await ran(['stations', '--import', '-'], table);
    expect(status).toBe(0);
    const read = JSON.parse(stdout);
    expect(read.map((s: { name: string }) => s.name)).toEqual(['Heron Radio', 'Heron Radio', 'Fen Voice']);
    expect(read[0]).toMatchObject({ power: '10 kW', programme: 'speech' });
    expect(read[2]).not.toHaveProperty('programme');
    expect(stderr).toMatch(/Row 3: .*twice \(row 2 too\)/);
    expect(stderr).toMatch(/Row 4, Freq \(kHz\), is left out: "lots" is not read/);
    // A station with neither a power nor a place is one that a description refuses.
    expect(stderr).toMatch(/Row 5, Lat: "91 N" is not read/);
    expect(stderr).toMatch(/Row 5 is left out: .*its power is left out/);
    expect(stderr).toMatch(/Row 6: .*off the 9 kHz raster/);
    expect(stderr).toMatch(/Row 6: .*"knitting"/);
    expect((await ran(['stations', '--import', '-'], 'nothing here')).status).toBe(1);
  });
});

it('says that suggestions are for the stations received best, and adds the one that is asked for', async () => {
  const { status, stdout, stderr } = await ran(['path', coast, '--json', '--night', '--station', 'Kvernhus']);
  expect(status).toBe(0);
  const { suggestions, stations, best } = JSON.parse(stdout);
  expect(stderr).toMatch(/^note: suggestions are for the 8 stations received best of \d+; --station adds another$/m);
  const advised = new Set(suggestions.map((one: { station: number }) => one.station));
  const asked = stations.findIndex((s: { name: string }) => s.name.startsWith('Kvernhus'));
  expect(best.slice(0, 8)).not.toContain(asked);
  expect(advised).toContain(asked);
  for (const station of advised) expect([...best.slice(0, 8), asked]).toContain(station);
});

describe('of a set with a band switch', () => {
  const twoBand = 'examples/two-band.json';

  it('stations are of every band, with no word of the one that the switch is on unless it is asked for', async () => {
    const every = await ran(['stations', twoBand]);
    expect(every.stdout).toMatch(/Radio Ostrand +long wave/);
    expect(every.stderr).toBe('');
    expect((await ran(['stations', twoBand, '--switch', 'long wave'])).stderr).toContain('the band switch is on');
  });

  it('a log has what is predicted on the band that receives a station best, or on the one asked for', async () => {
    const verdicts = async (...args: string[]) => {
      const entries = 'time,station,heard\n2026-05-04T12:00Z,Radio Ostrand,faint\n';
      const file = join(mkdtempSync(join(tmpdir(), 'faintwave-')), 'log.csv');
      writeFileSync(file, entries);
      const { stations } = JSON.parse((await ran(['log', twoBand, file, '--json', ...args])).stdout);
      return stations.map((one: { lights: { day: { verdict: string } } }) => one.lights.day.verdict);
    };
    expect(await verdicts()).not.toContain('out of range');
    expect((await verdicts('--switch', 'medium wave')).slice(2, 4)).toEqual(['out of range', 'out of range']);
  });

  it('sets are compared on the band that receives the station best', async () => {
    const other = 'examples/medium-wave-galena.json';
    const compared = async (...args: string[]) =>
      JSON.parse((await ran(['compare', ...args, '--station', 'Radio Ostrand', '--json'])).stdout).sets;
    const isTuned = (one: { station: { dial?: unknown } }) => one.station.dial !== undefined;
    expect((await compared(twoBand, other)).map(isTuned)).toEqual([true, false]);
    expect((await compared(twoBand, other, '--switch', 'medium wave')).map(isTuned)).toEqual([false, false]);
  });
});
