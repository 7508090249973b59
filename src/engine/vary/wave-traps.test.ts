import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { stationCurves } from '../reception/curves.ts';
import { receive } from '../reception/path/receive.ts';
import { readValue } from '../set/read.ts';
import { heardAfter } from './heard-after.ts';
import { trialsOf } from './trial.ts';
import { trapEffects, trapFor } from './wave-traps.ts';

const EXAMPLE = JSON.parse(readFileSync('examples/medium-wave-galena.json', 'utf8'));
/** An example with other parts. */
const set = (more: Record<string, unknown> = {}) => {
  const result = readValue({ ...EXAMPLE, ...more });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.set;
};
const withTrap = (trap: Record<string, unknown>) => set({ arrangement: { ...EXAMPLE.arrangement, traps: [trap] } });
const stations = set().place.stations;
const strongest = receive(set()).best[0];
const other = receive(set()).best[1];

describe('a trap made for a station', () => {
  const offer = trapFor(trialsOf(set()), { stop: strongest, target: other });
  it('resonates at the station, takes it down, and leaves the target station heard', () => {
    expect(offer).toBeDefined();
    const { effect } = offer!;
    expect(Math.abs(effect.frequency / stations[strongest].frequency - 1)).toBeLessThan(0.01);
    // Thomson's formula, with the coil's own capacitance small beside the rest.
    const { inductance, capacitance } = effect;
    const resonance = 1 / (2 * Math.PI * Math.sqrt(inductance * capacitance));
    expect(resonance / effect.frequency).toBeGreaterThan(1);
    expect(resonance / effect.frequency).toBeLessThan(1.15);
    expect(effect.stopped?.by).toBeGreaterThan(10);
    expect(effect.target?.isLost).toBe(false);
  });
  it('has the same effect once it is fitted', () => {
    const { now, ...trials } = trialsOf(set());
    const trial = trials.with(offer!.changes);
    if ('notBuildable' in trial) throw new Error(trial.notBuildable);
    const [effect] = trapEffects(trialsOf(trial.set), other);
    expect(effect.stopped?.by).toBeCloseTo(offer!.effect.stopped!.by, 6);
    expect(effect.target?.loss).toBeCloseTo(offer!.effect.target!.loss, 6);
    expect(now.set.arrangement).not.toHaveProperty('traps');
  });
  it('takes away and adds the stations that it is said to, besides its own', () => {
    const trials = trialsOf(set());
    const { lost, gained } = heardAfter(trials, offer!.changes, strongest);
    const trial = trials.with(offer!.changes);
    if ('notBuildable' in trial) throw new Error(trial.notBuildable);
    const heard = (medians: typeof trial.medians) => medians.stationsHeard().map((at) => stations[at].name);
    const kept = heard(trials.now.medians).filter((name) => !lost.includes(name));
    expect(new Set([...kept, ...gained])).toEqual(new Set([...heard(trial.medians), stations[strongest].name]));
    expect(lost).not.toContain(stations[strongest].name);
    expect(heardAfter(trials, [])).toEqual({ lost: [], gained: [] });
  });
});

describe('a trap made while the target station is beyond the dial', () => {
  it('is the one made without a target', () => {
    const deep = { name: 'Deep Long', frequency: '198 kHz', fieldStrength: '10 mV/m' };
    const far = set({ place: { ...EXAMPLE.place, stations: [...EXAMPLE.place.stations, deep] } });
    const trials = trialsOf(far);
    const target = far.place.stations.length - 1;
    expect(trials.now.figures(target).isWithin).toBe(false);
    const offer = trapFor(trials, { stop: strongest, target });
    expect(offer).toEqual(trapFor(trials, { stop: strongest }));
    expect(offer?.effect.stopped?.by).toBeGreaterThan(10);
    expect(offer?.effect).not.toHaveProperty('target');
  });
});

describe('a trap of a set', () => {
  const own = stations[other];
  it('on the target station itself is named as what makes it unheard, or takes much off it', () => {
    const trapped = withTrap({ kind: 'parallel', stops: own.name, inductance: '150 µH', q: 200 });
    const reception = receive(trapped);
    const taken = reception.stations[other].warnings.find(({ code }) => code === 'arrangement.trap-takes');
    expect(taken).toMatchObject({ trap: 0 });
    expect(receive(set()).stations[other].warnings.some(({ code }) => code === 'arrangement.trap-takes')).toBe(false);
  });
  it('shows its notch in the curve across the band, however narrow', () => {
    const at = stations[strongest];
    const trapped = withTrap({ kind: 'parallel', stops: at.name, inductance: '60 µH', q: 200 });
    const { lowest, highest } = receive(trapped).dial;
    const curve = stationCurves(trapped, other, [lowest, highest])!.band;
    expect(curve.traps).toEqual([{ trap: 0, frequency: expect.closeTo(at.frequency, -2) }]);
    const level = (f: number) =>
      curve.points.reduce((a, b) => (Math.abs(b.frequency - f) < Math.abs(a.frequency - f) ? b : a)).level;
    expect(level(at.frequency)).toBeLessThan(level(at.frequency * 1.02) - 6);
    expect(level(at.frequency)).toBeLessThan(level(at.frequency * 0.98) - 6);
  });
  it.each([
    ['a coil that is not there', { kind: 'series', coil: 'gone', capacitance: '100 pF' }, 'arrangement.traps[0].coil'],
    [
      'the tuning coil',
      { kind: 'series', coil: EXAMPLE.coils[0].name, capacitance: '100 pF' },
      'arrangement.traps[0].coil',
    ],
    ['no coil at all', { kind: 'series', capacitance: '100 pF' }, 'arrangement.traps[0].inductance'],
    ['no capacitor', { kind: 'series', inductance: '100 µH' }, 'arrangement.traps[0].stops'],
    [
      'a station that is not there',
      { kind: 'series', inductance: '100 µH', stops: 'Radio Elm' },
      'arrangement.traps[0].stops',
    ],
  ])('of %s is refused at its place', (_, trap, path) => {
    const result = readValue({ ...EXAMPLE, arrangement: { ...EXAMPLE.arrangement, traps: [trap] } });
    expect(result).toMatchObject({ ok: false, problems: [{ path }] });
  });
});
