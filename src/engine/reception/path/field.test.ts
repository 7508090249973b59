import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { coastline } from '../../place/coast.ts';
import { readText } from '../../set/read.ts';
import { type FieldOptions, fieldsAtSite } from './field.ts';
import { receive } from './receive.ts';

const read = readText(readFileSync(new URL('../../../../examples/coast-by-night.json', import.meta.url), 'utf8'));
if (!read.ok) throw new Error('the example does not read');
const { set } = read;
const { place } = set;
const { stations } = place;
const land = createRequire(import.meta.url).resolve('world-atlas/land-50m.json');
const coast = coastline(JSON.parse(readFileSync(land, 'utf8')));
const fieldAtSite = (station: (typeof stations)[number], at: typeof place, options?: FieldOptions) =>
  fieldsAtSite(at, options)(station);
const dB = (a: number, b: number) => 20 * Math.log10(a / b);

describe('the field in a reception', () => {
  it('is louder by night from afar and the same from near by', () => {
    const day = receive(set, { time: 'day', coast });
    const night = receive(set, { time: 'night', coast });
    for (const [i, s] of stations.entries()) {
      const gain = dB(night.stations[i].fieldStrength, day.stations[i].fieldStrength);
      expect(gain, s.name).toBeGreaterThanOrEqual(0);
      const { distance = 0 } = fieldAtSite(s, place);
      if (distance < 60e3) expect(gain, s.name).toBeLessThan(1);
      if (distance > 800e3) expect(gain, s.name).toBeGreaterThan(20);
    }
  });

  // By hand from Rec. ITU-R P.1147 as in docs/physics/sky-wave.md: E = V − L_p + 107 − 20 log p − k√(p/1000) − L_r with
  // h = 100 km, geomagnetic latitudes from the dipole pole 78.5° N 69° W; L_p is nothing in Europe.
  it('is what the recommendation gives by hand', () => {
    const s = { ...stations[9], mastHeight: undefined, mastGain: 0 };
    const { fieldStrength, distance = 0, how } = fieldAtSite(s, { ...place, sunspots: 0 }, { time: 'night', coast });
    expect(how).toBe('sky wave');
    const rad = Math.PI / 180;
    const dip = (latitude: number, longitude: number) =>
      Math.asin(
        Math.sin(latitude * rad) * Math.sin(78.5 * rad) +
          Math.cos(latitude * rad) * Math.cos(78.5 * rad) * Math.cos((longitude + 69) * rad),
      );
    const phi = (dip(45.7, 14.6) + dip(58.15, 8.05)) / 2;
    const p = Math.sqrt((distance / 1e3) ** 2 + 4 * 100 ** 2);
    const k = 2 * Math.PI + 4.95 * Math.tan(phi) ** 2;
    const V = 10 * Math.log10(300);
    // Gain of a short mast at the angle of departure: cosine of it, as a field.
    const half = distance / 2 / 6_371_008.8;
    const psi = Math.atan2(Math.cos(half) - 6_371_008.8 / 6_471_008.8, Math.sin(half));
    const expected = V + 20 * Math.log10(Math.cos(psi)) + 107 - 20 * Math.log10(p) - k * Math.sqrt(p / 1000);
    expect(Math.abs(120 + 20 * Math.log10(fieldStrength) - expected)).toBeLessThan(0.1);
  });

  it('recovers over sea where the coastline is known', () => {
    const strait = stations[0];
    const over = fieldAtSite(strait, place, { coast });
    const without = fieldAtSite(strait, place);
    expect(dB(over.fieldStrength, without.fieldStrength)).toBeGreaterThan(10);
    expect(over.sea).toBeGreaterThan(0);
    expect(over.sea).toBeLessThan(over.distance!);
    expect(without.sea).toBe(0);
    // A person's own sections win over the map.
    const own = { ...strait, sections: [{ length: 1, ground: 'dry' as const }] };
    expect(fieldAtSite(own, place, { coast }).fieldStrength).toBeCloseTo(without.fieldStrength, 12);
  });

  it('keeps a measured field by day and by night', () => {
    const s = { ...stations[3], fieldStrength: 2e-3 };
    for (const time of ['day', 'night', new Date('2026-01-15T16:00Z')] as const)
      expect(fieldAtSite(s, place, { time })).toMatchObject({ fieldStrength: 2e-3, how: 'as given', spread: 2 });
  });

  it('is nothing from a station that is off the air or of unknown strength, and the rest goes on', () => {
    const time = new Date('2026-01-15T23:30Z');
    const rivers = stations.findIndex((s) => s.hours);
    const late = receive(set, { time, coast });
    expect(late.stations[rivers]).toMatchObject({ fieldStrength: 0, heard: 'not heard' });
    expect(late.stations[rivers].path[0].facts).toMatchObject({ stage: 'field', how: 'off the air' });
    expect(late.stations[0].heard).not.toBe('not heard');
    const nowhere = { ...stations[0], position: undefined, distance: undefined };
    expect(fieldAtSite(nowhere, place)).toMatchObject({ fieldStrength: 0, how: 'nothing' });
  });

  it('answers at poles, over the antimeridian, at the site itself and at its antipode', () => {
    const at = (latitude: number, longitude: number) => ({ latitude, longitude });
    const ends = [at(90, 0), at(-90, 77), at(17.5, 179.9), at(17.5, -179.9), at(58.15, 8.05), at(-58.15, -171.95)];
    for (const site of ends) {
      for (const position of ends) {
        for (const time of ['day', 'night', new Date('2026-06-21T22:00Z')] as const) {
          const field = fieldAtSite({ ...stations[0], position }, { ...place, position: site }, { time, coast });
          expect(field.fieldStrength).toBeGreaterThan(0);
          expect(field.fieldStrength).toBeLessThan(1000);
        }
      }
    }
  });
});
