import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText } from '../set/read.ts';
import { stationCurves } from './curves.ts';
import { receive } from './path/receive.ts';

const example = (name: string) => {
  const read = readText(readFileSync(new URL(`../../../examples/${name}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
};

/** Frequencies at which a curve of levels falls 3 dB below its top, between points by their dB. */
function halfPower(points: readonly { readonly frequency: number; readonly level: number }[]): [number, number] {
  const top = points.reduce((best, p, i) => (p.level > points[best].level ? i : best), 0);
  const limit = points[top].level - 10 * Math.log10(2);
  const cross = (step: 1 | -1): number => {
    let i = top;
    while (points[i + step].level > limit) i += step;
    const [a, b] = [points[i], points[i + step]];
    return a.frequency + ((b.frequency - a.frequency) * (a.level - limit)) / (a.level - b.level);
  };
  return [cross(-1), cross(1)];
}

describe.each(['medium-wave-galena', 'long-wave-foil', 'ferrite-rod-valve-diode'])('curves of %s', (name) => {
  const set = example(name);
  const { stations, dial } = receive(set);
  const covered = [dial.lowest, dial.highest] as const;
  const within = stations.filter(({ dial: place }) => place !== undefined);

  it('have their top at the station and the bandwidth that its reception says', () => {
    for (const station of within) {
      const { resonance } = stationCurves(set, station.index, covered)!;
      const step = resonance.points[1].frequency - resonance.points[0].frequency;
      const top = resonance.points.reduce((best, p) => (p.level > best.level ? p : best));
      // The aerial's slope with frequency shifts the top of a broad curve by a little.
      expect(Math.abs(top.frequency - station.frequency), station.name).toBeLessThan(
        step + 0.06 * (station.frequency / station.loadedQ),
      );
      expect(resonance.loadedQ, station.name).toBe(station.loadedQ);
      const [low, high] = halfPower(resonance.points);
      expect(station.frequency / (high - low) / station.loadedQ, station.name).toBeCloseTo(1, 1);
    }
  });

  it('have every station at the level that its own carrier brings to the detector', () => {
    for (const station of within) {
      const { band, detector } = stationCurves(set, station.index, covered)!;
      const own = band.stations[band.wanted];
      expect(own.frequency).toBe(station.frequency);
      // `detectorVoltage` is a peak value.
      expect(own.level, station.name).toBeCloseTo(20 * Math.log10(station.detectorVoltage * Math.SQRT1_2), 6);
      expect(detector.operating.amplitude / station.detectorVoltage, station.name).toBeCloseTo(1, 6);
    }
  });

  it('have the Q of each coil within its range, over the tuning range and somewhat beyond', () => {
    const { q } = stationCurves(set, within[0].index, covered)!;
    expect(q.map((coil) => coil.name)).toEqual(set.coils.map((coil) => coil.name));
    for (const { points } of q) {
      expect(points[0].frequency).toBeLessThan(dial.lowest);
      expect(points.at(-1)!.frequency).toBeGreaterThan(dial.highest);
      for (const p of points) expect([p.low <= p.q, p.q <= p.high]).toEqual([true, true]);
    }
  });

  it('have the Q of each coil at the station’s own frequency, as the curve has it there', () => {
    for (const station of within)
      for (const { points, atStation, name: coil } of stationCurves(set, station.index, covered)!.q) {
        const at = `${station.name}, ${coil}`;
        expect(atStation.frequency, at).toBe(station.frequency);
        const above = points.findIndex(({ frequency }) => frequency >= station.frequency);
        const [least, most] = [points[above - 1].q, points[above].q].sort((a, b) => a - b);
        // Between neighbouring points of a smooth curve, which may have its top there.
        expect(atStation.q, at).toBeGreaterThan(0.99 * least);
        expect(atStation.q, at).toBeLessThan(1.01 * most);
        expect(atStation.low, at).toBeLessThan(atStation.q);
        expect(atStation.high, at).toBeGreaterThan(atStation.q);
      }
  });

  it('are none for a station that is not there', () => {
    expect(stationCurves(set, stations.length, covered)).toBeUndefined();
  });
});
