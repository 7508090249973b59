import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { receptionSummary, stageLevel, stageSentence } from '../../../outputs/words/index.ts';
import { setCircuit } from '../../built/set-circuit.ts';
import type { SetDescription } from '../../set/description.ts';
import { readValue } from '../../set/read.ts';
import { receive } from './receive.ts';
import { receiver, receiveStation } from './receive-station.ts';
import type { Reception } from './types.ts';

const written = (name: string) =>
  JSON.parse(readFileSync(new URL(`../../../../examples/${name}.json`, import.meta.url), 'utf8'));
// biome-ignore lint/suspicious/noExplicitAny: tests reach into the written file freely
const setWith = (change: (d: any) => void = () => {}, name = 'medium-wave-galena'): SetDescription => {
  const d = written(name);
  change(d);
  const read = readValue(d);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
};
const station = (r: Reception, kHz: number) => r.stations.find((s) => Math.abs(s.frequency - kHz * 1e3) < 500)!;

describe('reception of the example sets', () => {
  const r = receive(setWith());

  it('follows every station through every stage with figures, units and words', () => {
    for (const s of r.stations) {
      expect(s.path.map((stage) => stage.id)).toEqual([
        'field',
        'aerial',
        'tuned circuit',
        'detector',
        'audio',
        'phones',
        'ear',
      ]);
      for (const stage of s.path) {
        expect(Number.isFinite(stage.value), `${s.name} ${stage.id}`).toBe(true);
        expect(stageLevel(stage)).toMatch(/\d/);
        expect(stageSentence(stage)).not.toMatch(/NaN|undefined|Infinity/);
      }
      expect(['loud', 'comfortable', 'quiet', 'faint', 'not heard']).toContain(s.heard);
    }
    expect(receptionSummary(r)).toMatch(/^You would hear /);
  });

  it('never creates power: each stage has at most what the one before could give', () => {
    for (const s of r.stations)
      for (const stage of s.path)
        if (stage.change !== undefined) expect(stage.change, `${s.name} ${stage.id}`).toBeLessThanOrEqual(1e-6);
  });

  it('gives the emf of its effective height: peak volts are √2·E·h', () => {
    const s = station(r, 909);
    expect(s.emf / (Math.SQRT2 * s.fieldStrength)).toBeCloseTo(r.parts.aerial.effectiveHeight, 0);
  });

  it('keeps the dial consistent with the stations: each sits where the scale has its frequency', () => {
    for (const s of r.dial.stations) {
      if (!s.place) continue;
      const near = r.dial.points.reduce((a, b) =>
        Math.abs(b.position - s.place!.position) < Math.abs(a.position - s.place!.position) ? b : a,
      );
      // A loaded circuit peaks a little off the faint-signal curve; half its bandwidth is what a hand can tell.
      expect(Math.abs(near.frequency - r.stations[s.index].frequency)).toBeLessThan(
        0.5 * r.stations[s.index].bandwidth + 0.02 * near.frequency,
      );
    }
    const frequencies = r.dial.points.map((p) => p.frequency);
    expect(frequencies.every((f, i) => i === 0 || f < frequencies[i - 1])).toBe(true);
  });
});

// Common practice, no source.
describe('what the trade knows', () => {
  it('more capacitance lowers the resonant frequency, and meshing the vanes is more capacitance', () => {
    const { dial } = receive(setWith());
    expect(dial.points[0].capacitance!).toBeLessThan(dial.points[199].capacitance!);
    expect(dial.points[0].frequency).toBeGreaterThan(dial.points[199].frequency);
  });

  it('a tap lower down the coil loads it less: a sharper set', () => {
    const q = (detectorTap: number) =>
      station(
        receive(
          setWith((d) => {
            d.arrangement.detectorTap = detectorTap;
          }),
        ),
        693,
      ).loadedQ;
    expect(q(10)).toBeGreaterThan(q(20));
    expect(q(20)).toBeGreaterThan(q(50));
  });

  it('nothing is heard without a detector that goes one way: a plain resistor in its place is silent', () => {
    const points = Array.from({ length: 81 }, (_, i) => ({ voltage: (i - 40) / 20, current: (i - 40) / 20 / 20e3 }));
    const r = receive(
      setWith((d) => {
        d.detector = { kind: 'measured', points };
        d.place.stations = [{ name: 'Carrier', frequency: '200 kHz', fieldStrength: '10 mV/m' }];
      }, 'long-wave-foil'),
    );
    expect(r.stations[0].tunedCircuitVoltage).toBeGreaterThan(1e-3);
    expect(r.stations[0].audioVoltage).toBeLessThan(1e-4 * r.stations[0].tunedCircuitVoltage);
    expect(r.stations[0].heard).toBe('not heard');
  });

  it('an aerial no higher than its counterpoise gives nothing, and the tuned circuit gains nothing, which is a number', () => {
    const { path, emf } = receive(
      setWith((d) => {
        d.aerial = {
          kind: 'bent',
          points: [
            [-500, -500, 0.05],
            [18.5, -500, 0.49129],
            [-500, -500, 0.0501662],
          ],
          surroundings: 'nothing',
        };
        d.earth = { kind: 'counterpoise', count: 1, length: 0.05, height: 0.18571 };
        d.place.stations = [{ name: 'North', frequency: '150 kHz', fieldStrength: '10 mV/m', bearing: 0 }];
      }),
    ).stations[0];
    expect(emf).toBe(0);
    expect(path.find(({ id }) => id === 'tuned circuit')!.facts).toMatchObject({ gain: 0 });
  });

  it('a silicon diode is deaf where germanium is not', () => {
    const level = (kind: string) =>
      station(
        receive(
          setWith((d) => {
            d.detector = { kind };
          }),
        ),
        693,
      ).soundPressureLevel!;
    expect(level('germanium') - level('silicon')).toBeGreaterThan(10);
  });

  it('a crystal earpiece without its resistor chokes, and is told so', () => {
    const heard = (resistor?: string) =>
      receive(
        setWith((d) => {
          d.detector = { kind: 'schottky', type: '1N5711' };
          d.load = { kind: 'crystal earpiece', ...(resistor ? { resistor } : {}) };
        }),
      ).stations[0];
    expect(heard().warnings).toContainEqual({ code: 'load.earpiece-without-resistor' });
    expect(heard('100 kΩ').soundPressureLevel).toBeGreaterThan(heard().soundPressureLevel!);
  });
});

describe('laws', () => {
  it('a faint station obeys square law, and ten times the field never gives less than ten times the sound', () => {
    const at = (field: string) =>
      receive(
        setWith((d) => {
          d.place.stations = [{ name: 'One', frequency: '909 kHz', fieldStrength: field }];
        }),
      ).stations[0].audioVoltage;
    expect(20 * Math.log10(at('20 µV/m') / at('10 µV/m'))).toBeCloseTo(12.04, 1);
    expect(at('10 mV/m') / at('1 mV/m')).toBeGreaterThan(10);
  });

  it('answers for a transmitter next door: 100 V/m is the most a description may hold', () => {
    for (const name of ['medium-wave-galena', 'medium-wave-germanium-amplifier', 'slider-set', 'coast-by-night']) {
      const strong = setWith((d) => {
        d.place.stations = [{ ...d.place.stations[0], fieldStrength: '100 V/m' }];
      }, name);
      const [s] = receive(strong).stations;
      for (const stage of s.path) expect(Number.isFinite(stage.value), `${name} ${stage.id}`).toBe(true);
      expect(s.directVoltage, name).toBeGreaterThan(10);
      expect(s.directVoltage, name).toBeLessThan(s.detectorVoltage);
    }
  });

  it('the best place of the pointer is where it says', () => {
    const ready = receiver(setCircuit(setWith()));
    fc.assert(
      fc.property(
        fc.constantFrom(...ready.circuit.set.place.stations),
        fc.double({ min: -0.02, max: 0.02, noNaN: true }),
        (s, off) => {
          const tuned = receiveStation(ready, s);
          const moved = receiveStation(ready, s, {
            position: Math.min(1, Math.max(0, tuned.position + off)),
            other: tuned.other,
          });
          expect(moved.steady.junctionVoltage).toBeLessThanOrEqual(tuned.steady.junctionVoltage * 1.01);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('a neighbour weakens as the set is made sharper', () => {
    const ratio = (aerialTap: number) =>
      station(
        receive(
          setWith((d) => {
            d.arrangement.aerialTap = aerialTap;
          }),
        ),
        1053,
      ).disturbances.find((x) => x.by.startsWith('Tollgate'))?.carrierRatio ?? 99;
    expect(ratio(6)).toBeGreaterThan(ratio(20));
  });
});
