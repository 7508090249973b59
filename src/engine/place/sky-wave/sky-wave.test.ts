import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import checks from '../../../../reference/propagation-checks.json' with { type: 'json' };
import { geomagneticLatitude } from './geomagnetic.ts';
import { hourlyLoss, polarizationLoss } from './losses.ts';
import { skyWave } from './sky-wave.ts';

// biome-ignore lint/suspicious/noExplicitAny: entries of the reference file differ in shape.
const check = (id: string): any => checks.checks.find((entry) => entry.id === id);

// "p1147-1": form of the equation looked up, several constants from memory (see its confidence field).
describe('night sky wave', () => {
  it('agrees with its equations worked by hand', () => {
    for (const [n, example] of check('p1147-1').examples.entries()) {
      const { level, reflectionHeight, slantDistance } = skyWave({
        frequency: example.f_khz * 1e3,
        distance: example.d_km * 1e3,
        transmitterGeomagneticLatitude: example.PhiT,
        receiverGeomagneticLatitude: example.PhiR,
        sunspots: n === 3 ? 100 : 0,
      });
      expect(level).toBeCloseTo(example.E_dBuV, 2);
      expect(reflectionHeight).toBe(example.h_r * 1e3);
      expect(slantDistance / 1e3).toBeCloseTo(example.p_km, 1);
    }
  });

  // "fcc-sky": 47 CFR 73.190, looked up. The same thing with 107.04 for 107, so 0.05 dB apart.
  it('agrees with the curve of the American rules', () => {
    for (const { d_km, phi, Fc50_300mV } of check('fcc-sky').values) {
      if (d_km > 3000) continue; // P.1147 splits such paths
      const field = skyWave({
        frequency: 5.4e5, // low enough for reflection at 100 km at every distance listed
        distance: d_km * 1e3,
        transmitterGeomagneticLatitude: phi,
        receiverGeomagneticLatitude: phi,
      });
      expect(Math.abs(field.level - Fc50_300mV)).toBeLessThan(0.05);
    }
  });

  it('agrees with geomagnetic latitudes', () => {
    for (const { lat, lon, Phi } of check('geomag-1').values)
      expect(geomagneticLatitude({ latitude: lat, longitude: lon })).toBeCloseTo(Phi, 2);
  });

  it('agrees with the loss curves', () => {
    const { Lt_values, Lp_values } = check('p1147-1');
    for (const [t, loss] of Object.entries(Lt_values.sunset))
      expect(Math.abs(hourlyLoss(Number(t), -99) - (loss as number))).toBeLessThan(0.01);
    for (const [t, loss] of Object.entries(Lt_values.sunrise))
      expect(Math.abs(hourlyLoss(99, Number(t)) - (loss as number))).toBeLessThan(0.01);
    for (const { I, theta, Lp } of Lp_values) expect(polarizationLoss(I, theta)).toBeCloseTo(Lp, 2);
    expect(hourlyLoss(6, -6)).toBe(0);
    expect(polarizationLoss(66, 0)).toBe(0);
  });

  it('falls with distance, is the same both ways, and grows with power as it must', () => {
    const latitude = fc.double({ min: -90, max: 90, noNaN: true });
    const far = fc.double({ min: 5e5, max: 2.9e6, noNaN: true });
    fc.assert(
      fc.property(far, latitude, latitude, (distance, a, b) => {
        const at = (distance: number, from: number, to: number, power = 1000) =>
          skyWave({
            frequency: 8e5,
            distance,
            transmitterGeomagneticLatitude: from,
            receiverGeomagneticLatitude: to,
            sunspots: 50,
            power,
          }).level;
        expect(at(distance * 1.01, a, b)).toBeLessThan(at(distance, a, b));
        expect(at(distance, b, a)).toBeCloseTo(at(distance, a, b), 9);
        expect(at(distance, a, b, 1e5) - at(distance, a, b)).toBeCloseTo(20, 9);
      }),
    );
  });

  it('says where it is out of its range', () => {
    const ends = { transmitterGeomagneticLatitude: 50, receiverGeomagneticLatitude: 50 };
    expect(skyWave({ frequency: 1e6, distance: 1e6, ...ends }).warnings).toEqual([]);
    expect(skyWave({ frequency: 1e6, distance: 0, ...ends }).warnings).toEqual([{ code: 'place.sky-wave-near' }]);
    expect(skyWave({ frequency: 1e6, distance: 1.5e7, ...ends }).warnings).toEqual([{ code: 'place.sky-wave-far' }]);
    expect(skyWave({ frequency: 5e6, distance: 1e6, ...ends }).warnings).toEqual([
      { code: 'place.sky-wave-frequency-range' },
    ]);
    expect(skyWave({ frequency: 1e6, distance: 1e6, power: 0, ...ends }).fieldStrength).toBe(0);
    expect(() => skyWave({ frequency: 1e6, distance: Number.NaN, ...ends })).toThrow(RangeError);
  });
});
