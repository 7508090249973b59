import { describe, expect, it } from 'vitest';
import galena from '../../../../examples/medium-wave-galena.json' with { type: 'json' };
import { builtSet } from '../../built/built-set.ts';
import { setCircuit } from '../../built/set-circuit.ts';
import { faultModel } from '../../faults/fault-model.ts';
import { predictedAudio } from '../../measure/sound-card/predicted-audio.ts';
import { readValue } from '../../set/read.ts';
import { receiveRanged } from '../../uncertainty/receive-ranged.ts';
import { trialsOf } from '../../vary/trial.ts';
import { receive } from '../path/receive.ts';
import { receiver, receiveStation } from '../path/receive-station.ts';

/** An aerial whose own resonance lies little above the band: past it the set tunes once more. */
const read = readValue({
  ...galena,
  aerial: {
    kind: 'impedance',
    points: [
      { frequency: '600 kHz', resistance: '30 Ω', reactance: -600 },
      { frequency: '900 kHz', resistance: '35 Ω', reactance: -330 },
      { frequency: '1.2 MHz', resistance: '45 Ω', reactance: -60 },
      { frequency: '1.5 MHz', resistance: '60 Ω', reactance: 200 },
      { frequency: '2 MHz', resistance: '90 Ω', reactance: 450 },
    ],
    effectiveHeight: '5 m',
  },
  earth: { kind: 'measured', resistance: '50 Ω' },
  arrangement: { ...galena.arrangement, aerialTap: 20 },
  place: {
    ...galena.place,
    stations: [
      { name: 'On the dial', frequency: '700 kHz', fieldStrength: '40 mV/m' },
      { name: 'Above it', frequency: '1.8 MHz', fieldStrength: '200 mV/m' },
    ],
  },
});
if (!read.ok) throw new Error(JSON.stringify(read.problems));
const { set } = read;

describe('a station above the end of the scale, where the set tunes once more', () => {
  it('is such a station', () => {
    const ready = receiver(setCircuit(set));
    expect(receiveStation(ready, set.place.stations[1]).within).toBe(true);
    expect(receive(set).dial.highest).toBeLessThan(1.7e6);
  });

  it('is out of range for all that say whether it is received', () => {
    const { stations } = receive(set);
    expect(stations.map(({ dial }) => dial !== undefined)).toEqual([true, false]);
    expect(receiveRanged(set, { stations: [0, 1] }).stations.map(({ dial }) => dial !== undefined)).toEqual([
      true,
      false,
    ]);
    const { now } = trialsOf(set);
    expect([0, 1].map((station) => now.tuned(station).within)).toEqual([true, false]);
    const { bench, sound } = faultModel(builtSet(set), { cases: 1, also: [1] });
    expect(bench.stations.map((station, i) => [station, sound.within[i]])).toEqual([
      [0, true],
      [1, false],
    ]);
    expect(() => predictedAudio(set, 1, 'line')).toThrow(RangeError);
    expect(predictedAudio(set, 0, 'line').length).toBeGreaterThan(10);
  });
});
