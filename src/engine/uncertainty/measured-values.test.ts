import { describe, expect, it } from 'vitest';
import frame from '../../../examples/frame-aerial.json' with { type: 'json' };
import demo from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import earpiece from '../../../examples/spider-coil-earpiece.json' with { type: 'json' };
import twoCircuits from '../../../examples/two-tuned-circuits.json' with { type: 'json' };
import { mutualOf } from '../built/coil-parts.ts';
import { changedCircuit, type SetCircuit, setCircuit } from '../built/set-circuit.ts';
import { editedSet } from '../set/edit.ts';
import { readValue } from '../set/read.ts';
import { setInputs } from './inputs.ts';
import { NINETY } from './spread.ts';
import { uncertaintyOf } from './uncertainty.ts';

type Written = Record<string, unknown>;
function setOf(written: unknown) {
  const read = readValue(written);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
}
const circuitOf = (written: unknown): SetCircuit => setCircuit(setOf(written));
/** An example with measured values put beside the sizes of one part. */
const withMeasured = (part: string, measured: Written, written: Written = demo): Written =>
  part === 'coils'
    ? { ...written, coils: (written.coils as Written[]).map((coil) => ({ ...coil, measured })) }
    : { ...written, [part]: { ...(written[part] as Written), measured } };

const plainSet = circuitOf(demo);
/** Ninety per cent range of an input over its middle, high end. */
const reach = (circuit: SetCircuit, id: string): number => {
  const { spread } = setInputs(circuit).find((input) => input.id === id)!;
  return spread.kind === 'factor' ? Math.log(spread.high / spread.middle) : spread.high - spread.middle;
};

describe('a measured value wins over the calculated one', () => {
  const plain = circuitOf(demo);

  it('of a coil: inductance, Q where it was measured, self-capacitance; its parts add up to the whole', () => {
    const measured = {
      inductance: { value: '182 µH', error: '2 %' },
      q: { value: 170, at: '909 kHz', error: '6 %' },
      selfCapacitance: { value: '4 pF' },
    };
    const { model } = circuitOf(withMeasured('coils', measured)).coils[0];
    expect(model.inductance).toBeCloseTo(182e-6, 12);
    expect(model.qAt(909e3)).toBeCloseTo(170, 6);
    expect((2 * Math.PI * 909e3 * model.inductanceAt(909e3)) / model.resistanceAt(909e3)).toBeCloseTo(170, 6);
    expect(model.selfCapacitance).toBe(4e-12);
    expect(model.selfResonance).toBeCloseTo(1 / (2 * Math.PI * Math.sqrt(182e-6 * 4e-12)), 0);
    const halves = model.partial(0, 20) + model.partial(20, 56) + 2 * model.mutual([0, 20], [20, 56]);
    expect(halves / model.inductance).toBeCloseTo(1, 6);
    expect(Math.log(model.inductanceRange[1] / 182e-6)).toBeCloseTo(0.02 * NINETY, 6);
    expect(Math.log(model.qRangeAt(909e3)[1] / 170)).toBeCloseTo(0.06 * NINETY, 6);
    // Q runs with frequency as calculated.
    const { model: was } = plain.coils[0];
    expect(model.qAt(1.4e6) / model.qAt(909e3)).toBeCloseTo(was.qAt(1.4e6) / was.qAt(909e3), 9);
  });

  it('of a coil, inductance alone: Q stays as calculated', () => {
    const { model } = circuitOf(withMeasured('coils', { inductance: { value: '182 µH' } })).coils[0];
    expect(model.qAt(1e6)).toBeCloseTo(plain.coils[0].model.qAt(1e6), 6);
  });

  it('of a capacitor: its ends, the course between them as calculated, and the strays', () => {
    const measured = {
      minimum: { value: '11 pF', error: '1 pF' },
      maximum: { value: '372 pF', error: '1 %' },
      stray: { value: '9 pF', error: '2 pF' },
    };
    const { tuning } = circuitOf(withMeasured('tuning', measured));
    expect(tuning.min).toBeCloseTo(20e-12, 15);
    expect(tuning.max).toBeCloseTo(381e-12, 15);
    expect(tuning.capacitanceAt(0.5)).toBeCloseTo(9e-12 + (11e-12 + 372e-12) / 2, 15);
    expect(tuning.positionFor(tuning.capacitanceAt(0.3))).toBeCloseTo(0.3, 9);
    expect(tuning.minRange[1] - tuning.minRange[0]).toBeLessThan(plain.tuning.minRange[1] - plain.tuning.minRange[0]);
  });

  it('of an aerial among what is around it: capacitance, height, and resistance with the earth', () => {
    const measured = {
      capacitance: { value: '235 pF', error: '3 %' },
      effectiveHeight: { value: '3.1 m', error: '10 %' },
      resistance: { value: '95 Ω', at: '900 kHz', error: '10 %' },
    };
    const circuit = circuitOf(withMeasured('aerial', measured));
    expect(circuit.aerial!.capacitance).toBeCloseTo(235e-12, 15);
    expect(circuit.aerial!.effectiveHeightAt(1e6)).toBeCloseTo(3.1, 6);
    expect(circuit.aerial!.resistanceAt(900e3) + circuit.earth.impedanceAt(900e3).re).toBeCloseTo(95, 6);
    const ids = setInputs(circuit).map(({ id }) => id);
    expect(ids).not.toContain('soil');
    expect(ids).not.toContain('aerial loss');
    expect(reach(circuit, 'aerial capacitance')).toBeCloseTo(0.03 * NINETY, 6);
    expect(reach(circuit, 'effective height')).toBeCloseTo(0.1 * NINETY, 6);
  });

  it('of an earth, of a detector, of phones', () => {
    const earth = circuitOf(withMeasured('earth', { resistance: { value: '56.5 Ω', error: '5 %' } }));
    expect(earth.earth.resistance).toBeCloseTo(56.5, 9);
    expect(reach(earth, 'contact with the soil')).toBeCloseTo(0.05 * NINETY, 6);
    const junction = circuitOf(
      withMeasured('detector', {
        saturationCurrent: { value: '2.4 µA', error: '4 %' },
        ideality: { value: 1.32, error: '1 %' },
        seriesResistance: { value: '80 Ω', error: '5 %' },
        leakage: { value: '500 kΩ', error: '5 %' },
      }),
    );
    expect(junction.detector.law!.saturationCurrent).toBeCloseTo(2.4e-6, 12);
    expect(junction.detector.law!.leakage).toBeCloseTo(1 / 500e3, 12);
    expect(reach(junction, 'saturation current')).toBeCloseTo(0.04 * NINETY, 6);
    expect(reach(junction, 'ideality')).toBeCloseTo(0.0132 * NINETY, 6);
    const phones = circuitOf(
      withMeasured('load', {
        resistance: { value: '1.9 kΩ' },
        impedance: { value: '11 kΩ', error: '3 %' },
        sensitivity: { value: '98 dB', error: '1.2 dB' },
      }),
    );
    expect(phones.load.directResistance).toBe(1900);
    expect(phones.load.sensitivity).toMatchObject({ level: 98, assumed: false });
    expect(reach(phones, 'sensitivity')).toBeCloseTo(1.2 * NINETY, 6);
    expect(reach(phones, 'load impedance')).toBeCloseTo(0.03 * NINETY, 6);
  });

  it('of a loop and of a crystal earpiece', () => {
    const loop = circuitOf(
      withMeasured('aerial', { inductance: { value: '210 µH' }, q: { value: 120, at: '900 kHz' } }, frame),
    ).loop!;
    expect(loop.inductance).toBeCloseTo(210e-6, 12);
    expect((2 * Math.PI * 900e3 * loop.inductance) / loop.resistanceAt(900e3)).toBeCloseTo(120, 6);
    const piece = circuitOf(withMeasured('load', { capacitance: { value: '8 nF', error: '2 %' } }, earpiece));
    expect(reach(piece, 'load impedance')).toBeCloseTo(0.02 * NINETY, 6);
  });

  it('of a station: its field, to the error stated', () => {
    const stations = demo.place.stations.slice(0, 1).map((s) => ({
      ...s,
      measured: { fieldStrength: { value: '12 mV/m', error: '8 %' } },
    }));
    const [station] = uncertaintyOf(circuitOf({ ...demo, place: { ...demo.place, stations } }));
    const { median, range } = station!.fieldStrength;
    expect(median).toBeCloseTo(0.012, 6);
    expect(Math.log(range[1] / median)).toBeCloseTo(0.08 * NINETY, 2);
  });
});

it('errors of a capacitor’s end and of the strays add in quadrature, whatever else goes together', () => {
  const measured = { minimum: { value: '11 pF', error: '2 pF' }, stray: { value: '20 pF', error: '3 pF' } };
  const alone = withMeasured('tuning', measured);
  const junction = { saturationCurrent: { value: '2.4 µA', error: '4 %' }, ideality: { value: 1.32, error: '1 %' } };
  const other = { first: 'detector.saturationCurrent', second: 'detector.ideality', correlation: 0.03 };
  const together = { first: 'tuning.minimum', second: 'tuning.stray', correlation: -0.5 };
  const both = { ...withMeasured('detector', junction, alone), correlations: [other] };
  const end = (written: Written, id = 'capacitor minimum') => reach(circuitOf(written), id);
  expect(end(both)).toBe(end(alone));
  expect(end(both, 'capacitor maximum')).toBe(end(alone, 'capacitor maximum'));
  expect(Math.expm1(end(alone))).toBeCloseTo((NINETY * Math.hypot(2, 3)) / 31, 6);
  const opposed = end({ ...alone, correlations: [together] });
  expect(Math.expm1(opposed)).toBeCloseTo((NINETY * Math.sqrt(4 + 9 - 6)) / 31, 6);
});

it('a set measured all over has the narrower range of level at the ear', () => {
  const part = (key: string, measured: Written) => [key, { ...((demo as Written)[key] as Written), measured }];
  const circuit = circuitOf({
    ...withMeasured('coils', { inductance: { value: '170 µH' }, q: { value: 150 } }),
    ...Object.fromEntries([
      part('aerial', {
        capacitance: { value: '200 pF' },
        effectiveHeight: { value: '3 m' },
        resistance: { value: '60 Ω' },
      }),
      part('detector', { saturationCurrent: { value: '3 µA' }, ideality: { value: 1.4 } }),
      part('load', { impedance: { value: '10 kΩ' }, sensitivity: { value: '100 dB' } }),
    ]),
  });
  const [uncertain] = uncertaintyOf(circuit, { stations: [0] });
  const [before] = uncertaintyOf(circuitOf(demo), { stations: [0] });
  const width = ({ range: [low, high] }: { range: readonly [number, number] }) => high - low;
  expect(width(uncertain!.figures.soundPressureLevel)).toBeLessThan(width(before!.figures.soundPressureLevel));
});

describe('reading', () => {
  it('names everything wrong with measured values at once, with its place', () => {
    const read = readValue({
      ...demo,
      coils: [{ ...demo.coils[0], measured: { inductance: { value: '12 pF' }, q: { value: 0 } } }],
      earth: { ...demo.earth, measured: { resistance: { error: '5 %' } } },
      tuning: { ...demo.tuning, measured: { stray: { value: '9 pF', error: '20 %' } } },
    });
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.problems.map(({ path }) => path).sort()).toEqual([
      'coils[0].measured.inductance.value',
      'coils[0].measured.q.value',
      'earth.measured.resistance.value',
      'tuning.measured.stray.error',
    ]);
  });

  it('refuses measured ends of a capacitor that do not rise', () => {
    const measured = { minimum: { value: '600 pF' }, maximum: { value: '400 pF' } };
    const read = readValue(withMeasured('tuning', measured));
    expect(read.ok).toBe(false);
  });

  it('keeps the sizes and everything written about a measurement; without it the calculated figure is back', () => {
    const measured = { inductance: { value: '182 µH', error: '2 %', method: 'dial', date: '2026-11-29' } };
    const read = readValue(withMeasured('coils', measured));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.notes).toEqual([]);
    expect(read.set.coils[0]).toMatchObject({ turns: 56, measured: { inductance: { method: 'dial' } } });
    const { measured: _, ...sizes } = read.written.coils[0] as Written;
    expect(circuitOf({ ...demo, coils: [sizes] }).coils[0].inductance).toBe(circuitOf(demo).coils[0].inductance);
  });
});

it('a change of the winding changes a measured inductance by the same factor as the calculated one', () => {
  const set = setOf(withMeasured('coils', { inductance: { value: '182 µH' } }));
  const edited = editedSet(set, [{ path: ['coils', 0, 'turns'], to: 62 }]);
  const plain = editedSet(setOf(demo), [{ path: ['coils', 0, 'turns'], to: 62 }]);
  if (!edited.ok || !plain.ok) throw new Error('not edited');
  const grown = setCircuit(plain.set).coils[0].model.inductance / circuitOf(demo).coils[0].model.inductance;
  expect(setCircuit(edited.set).coils[0].model.inductance).toBeCloseTo(182e-6 * grown, 10);
  // Another detector has been measured by nobody.
  const measuredSpot = setOf(withMeasured('detector', { saturationCurrent: { value: '9 µA' } }));
  const other = editedSet(measuredSpot, [{ path: ['detector', 'spot'], to: 'good' }]);
  expect(other.ok && other.set.detector.measured).toBeUndefined();
});

describe('the coupling of two coils', () => {
  const withCoupling = (measured?: Written): Written => ({
    ...twoCircuits,
    // Further apart than serves best: there the level follows the coupling.
    arrangement: {
      ...twoCircuits.arrangement,
      distance: '260 mm',
      ...(measured && { measured: { coupling: measured } }),
    },
  });
  const apart = circuitOf(withCoupling());
  const [aerial, own] = apart.coils;
  const { arrangement } = apart.set;
  if (arrangement.kind !== 'two circuits') throw new Error(arrangement.kind);
  const k =
    mutualOf(aerial, own, arrangement)([0, aerial.turns], [0, own.turns]) /
    Math.sqrt(aerial.inductance * own.inductance);

  it('is known to a third where they stand, by its own error once it was measured', () => {
    expect(reach(apart, 'coupling')).toBeCloseTo(Math.log(1.3), 9);
    expect(reach(circuitOf(withCoupling({ value: k, error: '4 %' })), 'coupling')).toBeCloseTo(0.04 * NINETY, 9);
    expect(setInputs(plainSet).some(({ id }) => id === 'coupling')).toBe(false);
  });

  it('turned by a factor it is that of coils whose coupling is so', () => {
    const turned = changedCircuit(apart, { coupling: 1.2 });
    const stated = circuitOf(withCoupling({ value: 1.2 * k }));
    const [one, other] = [turned, stated].map(({ assembly }) => JSON.stringify(rounded(assembly)));
    expect(one).toBe(other);
  });

  it('measured as calculated it narrows what is heard, and never widens it', () => {
    const widths = [undefined, { value: k, error: '15 %' }, { value: k, error: '2 %' }].map((measured) => {
      const all = uncertaintyOf(circuitOf(withCoupling(measured)), { stations: [0, 1, 2, 3] });
      return all.map((one) => {
        const [low, high] = one!.figures.soundPressureLevel.range;
        return { width: high - low, budget: one!.budget.find(({ what }) => what === 'coupling') };
      });
    });
    const [before, roughly, well] = widths;
    expect(before.some(({ budget }) => budget !== undefined)).toBe(true);
    before.forEach(({ width }, i) => {
      expect(roughly[i].width).toBeLessThanOrEqual(width + 0.02);
      expect(well[i].width).toBeLessThanOrEqual(roughly[i].width + 0.02);
    });
    expect(Math.max(...before.map(({ width }, i) => width - well[i].width))).toBeGreaterThan(0.05);
  });
});

/** Figures of a network to nine digits. */
const rounded = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (_, one) => (typeof one === 'number' ? Number(one.toPrecision(9)) : one)));
