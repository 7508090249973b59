import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { switchBand } from '../set/band-switch.ts';
import { readText } from '../set/read.ts';
import { receiveRanged } from '../uncertainty/receive-ranged.ts';
import { MEASUREMENTS } from './measurements.ts';
import { INSTRUMENTS, type Instrument, measuringCautions, offeredMeasurements } from './offered.ts';

function setOf(file: string) {
  const read = readText(readFileSync(`examples/${file}`, 'utf8'));
  if (!read.ok) throw new Error(file);
  return read.set;
}
const demo = setOf('medium-wave-galena.json');
const station = receiveRanged(demo, { time: 'day' }).stations[0];
const gainOf = (one: { narrowing?: { before: number; after: number } }) =>
  one.narrowing ? 1 - one.narrowing.after / one.narrowing.before : 0;

test('with ears and the dial alone only what these allow is offered', () => {
  const kinds = new Set(offeredMeasurements(demo, station, []).map(({ kind }) => kind));
  expect(kinds.has('dial')).toBe(true);
  expect(kinds.has('audibility')).toBe(true);
  for (const kind of ['width', 'detector', 'earth-electrodes', 'analyser-coil', 'decay'] as const)
    expect(kinds.has(kind), kind).toBe(false);
});

test('every instrument allows more, and none takes anything away', () => {
  const kindsWith = (has: readonly Instrument[]) =>
    new Set(offeredMeasurements(demo, station, has).map((one) => `${one.kind} ${one.properties}`));
  const without = kindsWith([]);
  for (const instrument of INSTRUMENTS) {
    const kinds = kindsWith([instrument]);
    for (const kind of without) expect(kinds.has(kind), `${kind} with ${instrument}`).toBe(true);
  }
  const all = kindsWith(INSTRUMENTS);
  expect(all.size).toBeGreaterThan(without.size + 15);
});

test('a ringing is recorded by an oscilloscope or by a sound card', () => {
  for (const instrument of ['oscilloscope', 'sound card'] as const) {
    const decay = offeredMeasurements(demo, station, [instrument]).find(({ kind }) => kind === 'decay');
    expect(decay?.equipment).toContain(instrument);
    expect(decay?.cautions).toContain('bench.mains-isolated');
  }
});

test('of a set with a band switch, readings of the dial are of the coil that is tuned on the band', () => {
  const set = setOf('two-band.json');
  const dialOf = (band: string) =>
    offeredMeasurements(switchBand(set, band), { frequency: 1e6 }, []).filter(({ kind }) => kind === 'dial');
  expect(dialOf('medium wave').map(({ coil }) => coil)).toEqual([0]);
  expect(dialOf('long wave').map(({ coil }) => coil)).toEqual([1]);
});

test('what narrows the answer most comes first', () => {
  const offered = offeredMeasurements(demo, station, INSTRUMENTS);
  const gains = offered.map(gainOf);
  expect(gains[0]).toBeGreaterThan(0.5);
  for (let i = 1; i < gains.length; i++) expect(gains[i]).toBeLessThanOrEqual(gains[i - 1] + 1e-3);
});

test.each(readdirSync('examples').filter((file) => file.endsWith('.json')))(
  '%s: each is offered once, of a part that the set has',
  (file) => {
    const set = setOf(file);
    const offered = offeredMeasurements(set, { frequency: 1e6 }, INSTRUMENTS);
    const names = offered.map(
      ({ kind, part, coil, properties }) => `${kind} ${part} ${coil} ${kind === 'value' ? properties : ''}`,
    );
    expect(new Set(names).size).toBe(names.length);
    expect(offered.length).toBeGreaterThan(5);
    if (set.detector.kind === 'valve') expect(offered.some(({ part }) => part === 'detector')).toBe(false);
  },
);

test('whatever touches an aerial, an earth or an instrument on the mains says what can hurt', () => {
  for (const kind of Object.keys(MEASUREMENTS) as (keyof typeof MEASUREMENTS)[]) {
    const codes = measuringCautions(kind);
    const { equipment } = MEASUREMENTS[kind];
    if (/aerial|field-strength/.test(kind)) expect(codes, kind).toContain('aerial.thunder');
    if (/earth/.test(kind)) expect(codes, kind).toContain('earth.mains-and-gas');
    if (equipment.some((one) => /generator|oscilloscope|sound card|analyser/.test(one)))
      expect(codes, kind).toContain('bench.mains-isolated');
  }
  const valve = setOf('ferrite-rod-valve-diode.json');
  expect(measuringCautions('dial', valve)).toContain('detector.heater-supply');
  expect(measuringCautions('dial', demo)).not.toContain('detector.heater-supply');
});

test('the place on the dial is as sure as the measured values leave it, and readings taken once promise little more', () => {
  const measured = {
    ...JSON.parse(readFileSync('examples/medium-wave-galena.json', 'utf8')),
    correlations: [{ first: 'coils[0].inductance', second: 'tuning.stray', correlation: -0.9 }],
  };
  measured.coils[0].measured = { inductance: { value: '217 µH', error: '0.5 %' } };
  measured.tuning.measured = {
    stray: { value: '20 pF', error: '1 pF' },
    minimum: { value: '15 pF', error: '0.5 pF' },
    maximum: { value: '500 pF', error: '1 %' },
  };
  const read = readText(JSON.stringify(measured));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const dialOf = (set: typeof demo) => offeredMeasurements(set, station, []).find(({ kind }) => kind === 'dial')!;
  const [before, after] = [dialOf(demo).narrowing!, dialOf(read.set).narrowing];
  expect(before.narrows).toBe('dial');
  expect(before.before).toBeGreaterThan(0.1);
  // Either nothing is promised any more, or little.
  expect(after?.narrows === 'dial' ? after.before : 0).toBeLessThan(0.04);
});
