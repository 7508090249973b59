import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import checks from '../../../../reference/propagation-checks.json' with { type: 'json' };
import type { Coast } from '../coast.ts';
import { greatCircle } from '../geodesy.ts';
import { groundWave, groundWaveCurves } from '../ground-wave/ground-wave.ts';
import { mixedPath } from '../ground-wave/mixed-path.ts';
import { type Arrival, arrivalMemory } from './arrival.ts';
import { arrivals } from './arrivals.ts';
import { bandOf, channels, guessRaster, nearestChannel, onRaster } from './channels.ts';
import { onAir, readHours } from './hours.ts';
import { departureAngle, mastGain } from './mast.ts';
import { pathProfile } from './profile.ts';
import type { Station } from './station.ts';

// biome-ignore lint/suspicious/noExplicitAny: entries of the reference file differ in shape.
const check = (id: string): any => checks.checks.find((entry) => entry.id === id);
const NIGHT = new Date('2025-12-21T23:00Z');
const NOON = new Date('2025-12-21T12:00Z');
const place = { position: { latitude: 52, longitude: 0 } };
/** An invented coast: land west of 2° E. */
const halves: Coast = {
  surfaceAt: ({ longitude }) => (longitude < 2 ? 'land' : 'sea'),
  sections: (from, to) => {
    const { distance } = greatCircle(from, to);
    const share = (2 - to.longitude) / (from.longitude - to.longitude);
    return [
      { surface: 'sea', length: distance * (1 - share) },
      { surface: 'land', length: distance * share },
    ];
  },
};
const one = (station: Partial<Station>, options = {}, where: Parameters<typeof arrivals>[0] = place): Arrival =>
  arrivals(where, [{ name: 'Moor', frequency: 999e3, power: 1e4, ...station }], options)[0];

describe('what arrives', () => {
  it('is the ground wave by day: power, mast and kind of ground', () => {
    const arrival = one({ distance: 1e5 });
    const curve = groundWave({ frequency: 999e3, ground: 'average' });
    expect(arrival.total.level).toBeCloseTo(curve.level(1e5) + 10, 9);
    expect(arrival.source).toBe('ground wave');
    expect(arrival.total.fieldStrength).toBeCloseTo(1e-6 * 10 ** (arrival.total.level / 20), 12);
    expect(one({ distance: 1e5, mastGain: 3 }).total.level - arrival.total.level).toBeCloseTo(3, 9);
    // reference "conv-2": a lossless quarter wave gives 313.8 for 300 mV/m
    const quarter = one({ distance: 1e5, mastHeight: 75 }).total.level - arrival.total.level;
    expect(quarter).toBeCloseTo(20 * Math.log10(check('conv-2').values.quarter_wave_mVm / 300), 1);
    expect(one({ distance: 1e5 }, {}, { ground: 'sea' }).total.level).toBeGreaterThan(arrival.total.level + 10);
  });

  it('follows the coastline, or sections written by hand', () => {
    const position = { latitude: 52, longitude: 4 };
    const arrival = one({ position }, { coast: halves });
    expect(arrival.sections.map(({ ground }) => ground)).toEqual(['sea', 'average']);
    expect(arrival.bearing).toBeGreaterThan(85);
    const curves = groundWaveCurves({ frequency: 999e3 });
    expect(arrival.ground!.level).toBeCloseTo(mixedPath(999e3, arrival.sections, curves).level + 10, 9);
    const sections = [{ length: 1, ground: 'sea' as const }];
    const own = one({ position, sections }, { coast: halves });
    expect(own.ground!.level).toBeCloseTo(curves('sea').level(own.distance!) + 10, 9);
    expect(own.ground!.spread).toBeLessThan(arrival.ground!.spread);
  });

  it('has a sky wave by night only, and adds powers', () => {
    const position = { latitude: 48, longitude: 10 };
    const day = one({ position }, { time: NOON });
    const night = one({ position }, { time: NIGHT });
    expect(day.sky).toBeUndefined();
    expect(day.sun?.state).toBe('day');
    expect(night.sky!.level).toBeGreaterThan(night.ground!.level + 10);
    expect([night.source, night.fading]).toEqual(['sky wave', 'slow']);
    const powers = 10 ** (night.sky!.level / 10) + 10 ** (night.ground!.level / 10);
    expect(night.total.level).toBeCloseTo(10 * Math.log10(powers), 9);
    expect(one({ position }, { light: 'night' }).sky!.hourlyLoss).toBe(0);
    expect(one({ position }, { time: NIGHT, light: 'day' }).sky).toBeUndefined();
  });

  it('warns of fading where both are alike', () => {
    const arrival = [60e3, 90e3, 120e3, 150e3, 200e3, 250e3]
      .map((distance) => one({ distance, bearing: 90 }, { time: NIGHT }))
      .find(({ ground, sky }) => Math.abs(ground!.level - sky!.level) < 10);
    expect(arrival?.fading).toBe('deep');
    expect(arrival?.warnings).toContainEqual(expect.objectContaining({ code: 'place.fading-deep' }));
    expect(one({ distance: 15e3, bearing: 90 }, { time: NIGHT }).fading).toBe('none');
  });

  it('lets a measured field win and doubts it when it is far out', () => {
    const measured = one({ distance: 1e5, fieldStrength: 5e-3 });
    expect(measured.total).toMatchObject({ fieldStrength: 5e-3, spread: 2 });
    expect(measured.source).toBe('measured');
    expect(one({ distance: 1e5, fieldStrength: 5 }).warnings).toContainEqual({
      code: 'place.measured-field-differs',
      difference: expect.toSatisfy((dB: number) => dB > 20),
    });
    expect(one({ power: undefined, fieldStrength: 5e-3 }).total.level).toBeCloseTo(73.979, 3);
  });

  it('knows noise, neighbours and hours', () => {
    const list: Station[] = [
      { name: 'Moor', frequency: 999e3, fieldStrength: 1e-2 },
      { name: 'Fen', frequency: 1008e3, fieldStrength: 1e-3 },
      { name: 'Hill', frequency: 1080e3, fieldStrength: 1e-3 },
      { name: 'Dale', frequency: 990e3, fieldStrength: 1e-1, hours: '06:00-20:00' },
    ];
    const [moor] = arrivals(place, list, { time: NIGHT });
    expect(moor.neighbours).toEqual([{ index: 1, name: 'Fen', offset: 9e3, difference: expect.closeTo(-20, 9) }]);
    expect(arrivals(place, list, { time: NOON })[0].neighbours.map(({ name }) => name)).toEqual(['Dale', 'Fen']);
    expect(arrivals(place, list, { time: NIGHT })[3].warnings).toContainEqual({ code: 'place.off-air' });
    expect(moor.noise.atmospheric).toBeDefined();
    expect(moor.signalToNoise).toBeCloseTo(moor.total.level - moor.noise.level, 9);
    const loud = arrivals({ ...place, localNoise: 1e-3 }, list)[0];
    expect(loud.noise.level).toBeCloseTo(60 + 10 * Math.log10(9000 / 2700), 9);
  });

  it('answers sensibly to what cannot be', () => {
    expect(one({ power: 0, distance: 1e5 })).toMatchObject({ source: 'nothing', total: { fieldStrength: 0 } });
    expect(one({})).toMatchObject({ source: 'nothing' });
    expect(one({ position: place.position }).warnings).toContainEqual(
      expect.objectContaining({ code: 'place.beside-transmitter' }),
    );
    expect(one({ position: place.position }).total.level).toBeGreaterThan(140);
    expect(one({ distance: 4e7 }).warnings).toContainEqual(
      expect.objectContaining({ code: 'place.distance-beyond-antipode' }),
    );
    expect(
      one({ position: { latitude: -52, longitude: 180 } }, { time: NIGHT, coast: halves }).total.level,
    ).toBeLessThan(40);
    expect(one({ position: { latitude: 99, longitude: 0 } }).warnings).toContainEqual({
      code: 'place.not-computed',
      reason: expect.stringMatching(/^latitude/),
    });
    expect(one({ distance: 1e5, power: Number.NaN }).source).toBe('nothing');
    expect(one({ distance: 1e5, frequency: Number.NaN }).source).toBe('nothing');
    const poles = one(
      { position: { latitude: -90, longitude: 0 } },
      { time: NOON },
      { position: { latitude: 90, longitude: 0 } },
    );
    expect(poles.distance).toBeCloseTo(20015115, -1);
    expect(arrivals(place, [])).toEqual([]);
  });

  it('never gives a figure that is not a number, and the memory changes nothing', () => {
    const memory = arrivalMemory();
    const station = fc.record(
      {
        name: fc.string(),
        frequency: fc.double({ min: 1e5, max: 2e6, noNaN: true }),
        power: fc.double({ min: 0, max: 1e6, noNaN: true }),
        position: fc.record({
          latitude: fc.double({ min: -90, max: 90, noNaN: true }),
          longitude: fc.double({ min: -180, max: 180, noNaN: true }),
        }),
        mastHeight: fc.double({ min: 1, max: 500, noNaN: true }),
      },
      { requiredKeys: ['name', 'frequency', 'power', 'position'] },
    );
    fc.assert(
      fc.property(fc.array(station, { maxLength: 4 }), fc.integer({ min: 0, max: 8759 }), (stations, hour) => {
        const options = { time: new Date(Date.UTC(2025, 0, 1, hour)) };
        const found = arrivals(place, stations, options);
        for (const { total, noise } of found) {
          expect(total.level).not.toBeNaN();
          expect(total.fieldStrength).toBeGreaterThanOrEqual(0);
          expect(total.spread).not.toBeNaN();
          expect(noise.level).not.toBeNaN();
        }
        expect(arrivals(place, stations, { ...options, memory })).toEqual(found);
        expect(arrivals(place, stations, { ...options, memory })).toEqual(found);
      }),
      { numRuns: 40 },
    );
  });
});

describe('masts', () => {
  it('agree with textbook gains', () => {
    const metres = (wavelengths: number) => wavelengths * 299.792458;
    expect(mastGain(metres(0.001), 1e6)).toBeCloseTo(0, 6);
    expect(mastGain(metres(0.25), 1e6)).toBeCloseTo(0.39, 2);
    // Unattenuated mV/m at 1 mile for 1 kW: short mast 186, half wave 236, 5/8 wave 274 (handbook figures, from memory).
    expect(mastGain(metres(0.5), 1e6)).toBeCloseTo(20 * Math.log10(236 / 186), 1);
    expect(mastGain(metres(0.625), 1e6)).toBeCloseTo(20 * Math.log10(274 / 186), 1);
    expect(mastGain(metres(0.25), 1e6, 60)).toBeLessThan(-5);
  });

  it('radiate what they are given', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.005, max: 0.7, noNaN: true }), (wavelengths) => {
        // The mean of the gain over the upper half space is that of the short mast: ∫ G cos ψ dψ = 2/3.
        let sum = 0;
        for (let n = 0; n < 900; n++) {
          const psi = (n + 0.5) / 10;
          const gain = 10 ** (mastGain(wavelengths * 299.792458, 1e6, psi) / 10);
          sum += gain * Math.cos((psi * Math.PI) / 180) * (Math.PI / 1800);
        }
        // The floor put under nulls adds a little.
        expect(sum).toBeGreaterThan(0.665);
        expect(sum).toBeLessThan(0.68);
      }),
      { numRuns: 10 },
    );
  });

  it('send at the angle of the triangle', () => {
    expect(departureAngle(0, 1e5)).toBe(90);
    expect(departureAngle(1e6, 1e5)).toBeCloseTo(9, 0);
    expect(departureAngle(2.2e6, 1e5)).toBeGreaterThanOrEqual(0);
    expect(departureAngle(4e6, 1e5)).toBeCloseTo(departureAngle(2e6, 1e5), 9);
  });
});

describe('path profile', () => {
  it("ends at the path's own level, without steps, rising behind the coast", () => {
    const sections = [
      { length: 80e3, ground: 'dry' as const },
      { length: 60e3, ground: 'sea' as const },
      { length: 30e3, ground: 'average' as const },
    ];
    const { points, boundaries } = pathProfile({ frequency: 999e3, sections, power: 5e3, points: 400 });
    expect(boundaries.map(({ distance }) => distance)).toEqual([80e3, 140e3]);
    const curves = groundWaveCurves({ frequency: 999e3 });
    const end = mixedPath(999e3, sections, curves).level + 10 * Math.log10(5);
    expect(points.at(-1)!.distance).toBe(170e3);
    expect(points.at(-1)!.level).toBeCloseTo(end, 9);
    for (let n = 1; n < points.length; n++)
      expect(Math.abs(points[n].level - points[n - 1].level)).toBeLessThan(points[n].distance < 5e3 ? 8 : 2.5);
    const at = (distance: number) => points.find((point) => point.distance >= distance)!.level;
    expect(at(100e3)).toBeGreaterThan(at(80e3) + 5);
    expect(() => pathProfile({ frequency: 1e6, sections: [] })).toThrow(RangeError);
  });
});

describe('channels and hours', () => {
  it('counts the channels of the plans', () => {
    // GE75 has 15 long-wave and 120 medium-wave channels; the 10 kHz plan has 118 from 530 to 1700 kHz (from memory).
    expect(channels(9000, 'long wave')).toHaveLength(15);
    expect(channels(9000, 'medium wave')).toHaveLength(120);
    expect(channels(10000, 'medium wave')).toHaveLength(118);
    expect(channels(10000, 'long wave')).toEqual([]);
    for (const f of [...channels(9000, 'long wave'), ...channels(9000, 'medium wave')])
      expect(onRaster(f, 9000)).toBe(true);
    expect(nearestChannel(1000e3, 9000)).toBe(999e3);
    expect(guessRaster([540e3, 1010e3, 1240e3])).toBe(10000);
    expect([198e3, 999e3, 400e3].map(bandOf)).toEqual(['long wave', 'medium wave', undefined]);
  });

  it('reads hours', () => {
    expect(readHours('0600-2200')).toEqual([[360, 1320]]);
    expect(readHours('5-9, 16-24')).toEqual([
      [300, 540],
      [960, 1440],
    ]);
    expect(readHours('99-100')).toBeUndefined();
    expect(onAir('22:00-02:00', new Date('2025-01-01T01:00Z'))).toBe(true);
    expect(onAir('22:00-02:00', new Date('2025-01-01T12:00Z'))).toBe(false);
    expect(onAir('08:00-12:00', new Date('2025-01-01T07:30Z'), 60)).toBe(true);
    expect(onAir('sometimes', new Date('2025-01-01T07:30Z'))).toBeUndefined();
  });
});
