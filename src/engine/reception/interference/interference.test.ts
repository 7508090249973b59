import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../../../scripts/support/paths.mjs';
import { setCircuit } from '../../built/set-circuit.ts';
import { magnitude } from '../../numerics/complex.ts';
import type { SetDescription } from '../../set/description.ts';
import { readText } from '../../set/read.ts';
import { bearingOf, emfOf, receiver, receiveStation, TEST_TONE } from '../path/receive-station.ts';
import { audioRatiosAt, disturbancesAt, interferenceAmong } from './interference.ts';
import { disturbances } from './separation.ts';
import { carrierBalance } from './two-carriers.ts';

/** An example with so many stations, spread over the band, with their bearings. */
function crowded(example: string, count: number): SetDescription {
  const read = readText(readFileSync(inRoot(`examples/${example}.json`), 'utf8'));
  if (!read.ok) throw new Error('the example does not read');
  const { set } = read;
  const [like] = set.place.stations;
  const stations = Array.from({ length: count }, (_, i) => ({
    ...like,
    name: `Station ${i}`,
    frequency: 540e3 + (1e6 * i) / count,
    fieldStrength: 1e-3 * 10 ** (((7 * i) % 11) / 5),
    bearing: (37 * i) % 360,
  }));
  return { ...set, place: { ...set.place, stations } };
}

/** A receiver that counts how often the aerial's effective height is calculated, and all its stations as received. */
function counted(set: SetDescription) {
  const circuit = setCircuit(set);
  let heights = 0;
  const counting = <T extends { effectiveHeightAt: (f: number) => number } | undefined>(aerial: T): T =>
    aerial && {
      ...aerial,
      effectiveHeightAt: (f: number) => {
        heights++;
        return aerial.effectiveHeightAt(f);
      },
    };
  const ready = receiver({ ...circuit, aerial: counting(circuit.aerial), loop: counting(circuit.loop) });
  const tuned = set.place.stations.map((s) => receiveStation(ready, s));
  const all = tuned.map((s) => disturbancesAt(ready, s, tuned, tuned.length, 4));
  return { ready, tuned, all, heights };
}

describe.each(['medium-wave-galena', 'frame-aerial'])('interference among many stations, %s', (example) => {
  it('calculates the aerial once for each station', () => {
    for (const count of [20, 40, 80]) expect([count, counted(crowded(example, count)).heights]).toEqual([count, count]);
  });

  it('is what each pair of stations gives when it is calculated by itself', () => {
    const { ready, tuned, all } = counted(crowded(example, 40));
    const { circuit, network } = ready;
    for (const [k, wanted] of tuned.entries()) {
      const g = 1 / wanted.steady.inputResistance;
      const sent = ({ station }: typeof wanted) => ({
        name: station.name,
        frequency: station.frequency,
        modulation: Math.min(station.modulation, 1),
      });
      const others = tuned
        .filter((other) => other !== wanted)
        .map((other) => ({
          arriving: other,
          view: network.at(other.station.frequency),
          emf: emfOf(circuit, other.station, other.field, bearingOf(wanted.station, wanted.field)),
        }));
      const pairs = others.map(({ arriving, view, emf }) => ({
        ...sent(arriving as typeof wanted),
        index: tuned.indexOf(arriving as typeof wanted),
        voltage: emf * view.level(g, wanted.position, wanted.other),
      }));
      const audioLoad = Math.max(magnitude(ready.audioLoadAt(TEST_TONE)), 1);
      expect(all[k]).toEqual(
        disturbances({ ...sent(wanted), voltage: wanted.steady.junctionVoltage }, pairs, {
          slopeVoltage: circuit.averaged.detector.slopeVoltage,
          loadTime: (circuit.set.load.bypass + 30e-12) / (1 / audioLoad + g / 2),
          inFull: audioRatiosAt(ready, wanted, (place) => others[place], carrierBalance()),
          mostInFull: 4,
        }),
      );
    }
    expect(all.flat().length).toBeGreaterThan(40);
  });

  it('keeps the strongest few with the figures they had, and counts the rest', () => {
    const { ready, tuned, all } = counted(crowded(example, 40));
    const few = tuned.map(interferenceAmong(ready, tuned));
    for (const [k, { disturbances, more }] of few.entries()) {
      expect(disturbances.length + more).toBe(all[k].length);
      expect(disturbances.length).toBeLessThanOrEqual(16);
      expect(disturbances.slice(0, 12)).toEqual(all[k].slice(0, 12));
      const leastClear = (list: readonly { separation: number }[]) => Math.min(...list.map((d) => d.separation));
      expect(leastClear(disturbances)).toBe(leastClear(all[k]));
    }
    expect(Math.max(...few.map(({ more }) => more))).toBeGreaterThan(0);
  });

  it('evaluates so many pairs at most for each station of a long list', () => {
    for (const count of [100, 200, 400]) {
      const { ready, tuned } = counted(crowded(example, count));
      let evaluated = 0;
      const at = (frequency: number) => {
        const view = ready.network.at(frequency);
        const level = (...about: Parameters<typeof view.level>) => {
          evaluated++;
          return view.level(...about);
        };
        return Object.assign(Object.create(view) as typeof view, { level });
      };
      const among = interferenceAmong({ ...ready, network: { at } }, tuned);
      for (const s of tuned) among(s);
      expect(evaluated).toBeLessThanOrEqual(count * 150);
    }
  });

  it('finds in a long list the disturbers that all pairs give, with the same figures', () => {
    const { ready, tuned } = counted(crowded(example, 200));
    // In full without a limit: what a pair of stations gives is then the same in any list.
    const among = interferenceAmong(ready, tuned, undefined, Number.POSITIVE_INFINITY);
    for (const wanted of tuned.filter((_, k) => k % 10 === 0)) {
      // All pairs, in lists short enough to be evaluated whole.
      const whole = Array.from({ length: 4 }, (_, part) => tuned.slice(50 * part, 50 * part + 50))
        .flatMap((part) => disturbancesAt(ready, wanted, part, part.length, Number.POSITIVE_INFINITY))
        .sort((a, b) => a.audioRatio - b.audioRatio);
      const { disturbances } = among(wanted);
      expect(disturbances.slice(0, 12)).toEqual(whole.slice(0, 12));
    }
  });
});
