import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainDraws } from '../../../test/support/plain-draws.ts';
import { someSet } from '../../../test/support/random-sets.ts';
import { changedCircuit, setCircuit } from '../built/set-circuit.ts';
import { fieldsAtSite } from '../reception/path/field.ts';
import { receiver, receiveStation } from '../reception/path/receive-station.ts';
import { readValue } from '../set/read.ts';
import { DRAWS, type Ranged, rangedOf } from './draws.ts';
import type { FigureId } from './figures.ts';
import { changesFor, setInputs } from './inputs.ts';
import { valueAtDeviate } from './spread.ts';
import { uncertaintyOf } from './uncertainty.ts';

const written = (name: string) =>
  JSON.parse(readFileSync(new URL(`../../../examples/${name}.json`, import.meta.url), 'utf8'));
// biome-ignore lint/suspicious/noExplicitAny: tests reach into the written file freely
function circuitOf(name: string, change: (d: any) => void = () => {}) {
  const d = written(name);
  change(d);
  const read = readValue(d);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return setCircuit(read.set);
}
const keep =
  (...names: string[]) =>
  (d: { place: { stations: { name: string }[] } }) => {
    d.place.stations = d.place.stations.filter((s) => names.includes(s.name));
  };
const width = ({ range }: Ranged): number => range[1] - range[0];

/** Of levels as they are, of all else in dB, so that one tolerance serves. */
const inDecibels = (id: FigureId, x: number): number => (id === 'soundPressureLevel' ? x : 20 * Math.log10(x));

describe('ranges against plain draws of 2,000 sets', () => {
  const compared: FigureId[] = [
    'soundPressureLevel',
    'tunedCircuitVoltage',
    'gain',
    'directVoltage',
    'distortion',
    'detectorInputResistance',
    'detectorPower',
    'loadedQ',
    'unloadedQ',
  ];
  it.each([
    ['medium-wave-galena', ['Saltmarsh Radio', 'Radio Corvale']],
    ['long-wave-foil', ['Harbour Light Long Wave', 'Continental Tower']],
    ['ferrite-rod-valve-diode', ['Ridge Radio', 'The Lantern Service']],
  ])('%s: widths within 15 %%, medians within 1.5 dB', (name, stations) => {
    const circuit = circuitOf(name, keep(...stations));
    const plain = plainDraws(circuit, DRAWS, 20260101);
    uncertaintyOf(circuit).forEach((station, i) => {
      for (const id of compared) {
        const drawn = rangedOf(Float64Array.from(plain, (set) => inDecibels(id, set[i]!.figures[id])));
        const { median, range } = station!.figures[id];
        const [low, high] = range.map((x) => inDecibels(id, x));
        const told = `${stations[i]}, ${id}: ${low} … ${high} about ${median}, drawn ${drawn.range} about ${drawn.median}`;
        expect(Math.abs((high - low) / width(drawn) - 1), told).toBeLessThan(0.15);
        expect(Math.abs(inDecibels(id, median) - drawn.median), told).toBeLessThan(1.5);
      }
    });
  });
});

describe('the uncertainty of a station', () => {
  const circuit = circuitOf('medium-wave-galena', keep('Saltmarsh Radio', 'Radio Corvale', 'Quayside'));
  const [saltmarsh, corvale] = uncertaintyOf(circuit).map((s) => s!);

  it('is the same however often and beside whichever stations it is asked for', () => {
    expect(uncertaintyOf(circuit, { stations: [1] })[0]).toEqual(corvale);
  });

  it('has every median within its range, and a chance that follows from the margin', () => {
    for (const s of [saltmarsh, corvale]) {
      for (const ranged of [s.fieldStrength, s.margin, ...Object.values(s.figures)]) {
        expect(ranged.range[0]).toBeLessThanOrEqual(ranged.median);
        expect(ranged.median).toBeLessThanOrEqual(ranged.range[1]);
      }
    }
    for (const [name, among] of [
      ['Saltmarsh Radio', saltmarsh],
      ['Radio Corvale', corvale],
    ] as const) {
      const alone = uncertaintyOf(circuitOf('medium-wave-galena', keep(name)))[0]!;
      expect(alone.chance > 0.5).toBe(alone.margin.median > 0);
      expect(alone.chance > 0.95).toBe(alone.margin.range[0] > 0);
      // What others take is no part of the margin.
      expect(among.chance).toBeLessThanOrEqual(alone.chance);
    }
    expect(saltmarsh.chance).toBeGreaterThan(corvale.chance);
  });

  it('counts a range of the field about twice at the ear for a faint station: square law', () => {
    const field = (s: typeof corvale) => 20 * Math.log10(s.fieldStrength.range[1] / s.fieldStrength.range[0]);
    const atEar = corvale.budget.find(({ what }) => what === 'field strength')!.effect;
    expect((atEar[1] - atEar[0]) / field(corvale)).toBeGreaterThan(1.7);
    expect((atEar[1] - atEar[0]) / field(corvale)).toBeLessThan(2.1);
  });

  it('names what makes the doubt in order, and what measuring it gains', () => {
    const widths = saltmarsh.budget.map(({ effect }) => effect[1] - effect[0]);
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
    expect(saltmarsh.budget.slice(0, 2).map(({ what }) => what)).toEqual(['field strength', 'phones']);
    const whole = width(saltmarsh.figures.soundPressureLevel);
    for (const { gain } of saltmarsh.budget) expect(gain).toBeLessThan(whole);
  });

  it('narrows by what was measured, about as the budget promised', () => {
    const promised = saltmarsh.budget.find(({ what }) => what === 'phones')!.gain;
    const [now] = uncertaintyOf(
      circuitOf('medium-wave-galena', (d) => {
        keep('Saltmarsh Radio', 'Radio Corvale', 'Quayside')(d);
        d.load.sensitivity = '102 dB';
        d.load.inductance = '2 H';
      }),
    );
    const narrower = width(saltmarsh.figures.soundPressureLevel) - width(now!.figures.soundPressureLevel);
    expect(Math.abs(narrower - promised)).toBeLessThan(1);
    expect(now!.budget.some(({ what, effect }) => what === 'phones' && effect[1] > 2)).toBe(false);
  });

  it('knows a field that is given to 2 dB and of an unknown one says nothing', () => {
    const [given] = uncertaintyOf(
      circuitOf('medium-wave-galena', (d) => {
        keep('Saltmarsh Radio')(d);
        d.place.stations[0].fieldStrength = '20 mV/m';
      }),
    );
    const { range, median } = given!.fieldStrength;
    expect(20 * Math.log10(range[1] / median)).toBeCloseTo(2, 1);
    expect(median).toBeCloseTo(0.02, 4);
    const off = circuitOf('medium-wave-galena', (d) => {
      keep('Saltmarsh Radio')(d);
      d.place.stations[0].hours = '05:00-06:00';
    });
    const noon = new Date(Date.UTC(2026, 5, 15, 12));
    expect(uncertaintyOf(off, { time: noon })).toEqual([undefined]);
  });

  it('gives no chance to a station that the dial does not reach', () => {
    const [beyond] = uncertaintyOf(
      circuitOf('medium-wave-galena', (d) => {
        keep('Saltmarsh Radio')(d);
        d.place.stations[0].frequency = '198 kHz';
      }),
    );
    expect(beyond!.chance).toBe(0);
  });
});

describe('any set', () => {
  const sets = fc.sample(someSet, { seed: 11, numRuns: 40 }).flatMap((set) => (set ? [set] : []));
  it.each(sets.slice(0, 12))('$name has ranges that hold their medians', (set) => {
    for (const station of uncertaintyOf(setCircuit(set))) {
      if (!station) continue;
      for (const [id, { median, range }] of Object.entries(station.figures)) {
        expect(Number.isNaN(median + range[0] + range[1]), id).toBe(false);
        expect(range[0] <= median && median <= range[1], `${id}: ${range} about ${median}`).toBe(true);
      }
      expect(station.chance).toBeGreaterThanOrEqual(0);
      expect(station.chance).toBeLessThanOrEqual(1);
    }
  });
});

describe('changed parts', () => {
  it.each(['medium-wave-galena', 'long-wave-foil', 'ferrite-rod-valve-diode', 'frame-aerial', 'spider-coil-earpiece'])(
    '%s: every input moves the level at the ear, and none of them at its own middle',
    (name) => {
      const circuit = circuitOf(name);
      const fieldOf = fieldsAtSite(circuit.set.place);
      const [station] = circuit.set.place.stations;
      const level = (changes: Parameters<typeof changedCircuit>[1]) =>
        receiveStation(receiver(changedCircuit(circuit, changes), fieldOf), station).heard.spl;
      const now = level({});
      expect(level({})).toBeCloseTo(receiveStation(receiver(circuit, fieldOf), station).heard.spl, 9);
      // The set as made is the usual one: every input in its middle.
      expect(level(changesFor(setInputs(circuit), () => 0))).toBeCloseTo(now, 6);
      for (const { id, spread, changes, moves } of setInputs(circuit)) {
        if (!changes || moves === 'dial') continue;
        const [low, high] = [level(changes(valueAtDeviate(spread, -1.6))), level(changes(valueAtDeviate(spread, 1.6)))];
        expect(Math.max(Math.abs(low - now), Math.abs(high - now)), id).toBeGreaterThan(1e-4);
        expect(Number.isFinite(low + high), id).toBe(true);
      }
    },
  );

  it('a neutral change of each kind changes nothing', () => {
    const circuit = circuitOf('spider-coil-earpiece');
    const fieldOf = fieldsAtSite(circuit.set.place);
    const [station] = circuit.set.place.stations;
    const level = (changes: Parameters<typeof changedCircuit>[1]) =>
      receiveStation(receiver(changedCircuit(circuit, changes), fieldOf), station).heard.spl;
    const same = {
      soilResistivity: 1.0000001,
      earthResistance: 1.0000001,
      effectiveHeight: 1.0000001,
      aerialCapacitance: 1.0000001,
      aerialLoss: 1.0000001,
      coils: { 0: { loss: 1.0000001, inductance: 1.0000001, selfCapacitance: 1.0000001 } },
      tuningMinimum: 1.0000001,
      tuningMaximum: 1.0000001,
      saturationCurrent: 1.0000001,
      seriesResistance: 1.0000001,
      leakage: 1.0000001,
      loadImpedance: 1.0000001,
    };
    expect(level(same)).toBeCloseTo(level({}), 4);
  });
});
