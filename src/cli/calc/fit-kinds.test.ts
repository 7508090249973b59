import { describe, expect, test } from 'vitest';
import { coilOf, frequencies, onePort, seriesOf, twoPort } from '../../../test/support/simulated-sweeps.ts';
import { MEASUREMENTS, type MeasurementKind, QUANTITY_KINDS } from '../../engine/index.ts';
import { fitCalculation } from './fit.ts';

const SWEEP = frequencies(150e3, 1.6e6, 41);
const coil = onePort(coilOf(220e-6, 7e-12, 25), SWEEP);
const peak = (f: number) => {
  const turn = 80 * (f / 1e6 - 1e6 / f);
  return `${f} 0.9 0 ${0.1 / (1 + turn ** 2)} ${(-0.1 * turn) / (1 + turn ** 2)} ${0.1 / (1 + turn ** 2)} ${(-0.1 * turn) / (1 + turn ** 2)} 0.9 0`;
};
const junction = [
  ['-1 V', '-2.4 µA'],
  ['-0.2 V', '-0.8 µA'],
  ['20 mV', '0.43 µA'],
  ['50 mV', '1.7 µA'],
  ['100 mV', '8.9 µA'],
  ['150 mV', '37 µA'],
  ['200 mV', '110 µA'],
  ['300 mV', '400 µA'],
].map(([voltage, current]) => ({ voltage, current }));
const capacitor = { law: 'semicircular', minimum: '15 pF', maximum: '500 pF' };

/** Readings as people write them, one example of every kind. */
const EXAMPLES: Readonly<Record<MeasurementKind, object>> = {
  resonance: {
    points: [
      { capacitance: '100 pF', frequency: '1022 kHz' },
      { capacitance: '220 pF', frequency: '704 kHz' },
      { capacitance: '330 pF', frequency: '579 kHz' },
      { capacitance: '470 pF', frequency: '487 kHz' },
    ],
  },
  dial: {
    capacitor,
    readings: [
      { position: 0.12, frequency: '1251 kHz' },
      { position: 0.3, frequency: '909 kHz' },
      { position: 0.52, frequency: '714 kHz' },
      { position: 0.8, frequency: '585 kHz' },
    ],
  },
  detector: { temperature: '22 °C', points: junction.slice(2) },
  width: {
    points: [0.97, 0.985, 1, 1.015, 1.03].map((f, i) => ({
      frequency: `${909 * f} kHz`,
      level: [0.32, 0.56, 1, 0.55, 0.33][i],
    })),
  },
  decay: {
    sampleRate: '48 kHz',
    samples: Array.from({ length: 200 }, (_, i) => Math.exp(-i / 60) * Math.cos(i) + 0.001 * Math.sin(97 * i * i)),
  },
  'decay-record': {
    record: `time (ms);volts\n${Array.from({ length: 300 }, (_, i) => {
      const ringing = i < 60 ? 0 : Math.exp((60 - i) / 50) * Math.cos(i) + 0.001 * Math.sin(97 * i * i);
      return `${(i / 48).toFixed(4)};${ringing.toFixed(6)}`;
    }).join('\n')}`,
  },
  'equal-levels': { lower: '450.5 kHz', upper: '459.5 kHz' },
  'capacitance-width': { frequency: '1 MHz', lower: '218 pF', upper: '222 pF', stray: '20 pF', ratio: 1.5 },
  'detector-leakage': { temperature: '22 °C', points: junction },
  'detector-voltmeter': {
    temperature: '22 °C',
    source: '1.5 V',
    points: [
      ['1 MΩ', '42 mV'],
      ['220 kΩ', '90 mV'],
      ['47 kΩ', '140 mV'],
      ['10 kΩ', '205 mV'],
      ['2.2 kΩ', '310 mV'],
    ].map(([resistor, voltage]) => ({ resistor, voltage })),
  },
  'detector-bridge': {
    temperature: '22 °C',
    points: [
      ['60 mV', '10 kΩ'],
      ['100 mV', '6 kΩ'],
      ['200 mV', '2 kΩ'],
      ['400 mV', '1 kΩ'],
    ].map(([source, upper]) => ({ source, upper, otherUpper: '1 kΩ', otherLower: '1 kΩ' })),
  },
  'mutual-inductance': { aiding: '460 µH', opposing: '260 µH', first: '160 µH', second: '200 µH' },
  'double-hump': { lower: '880 kHz', upper: '930 kHz', q: 90 },
  'aerial-substitution': {
    capacitor,
    points: [
      { frequency: '693 kHz', without: 0.62, with: 0.2 },
      { frequency: '1053 kHz', without: 0.5, with: 0.41, series: '60 pF' },
    ],
  },
  'aerial-replacement': { points: [{ frequency: '693 kHz', capacitance: '220 pF' }] },
  'aerial-resistance': {
    ownResistance: '8 Ω',
    ownError: '1 Ω',
    points: [
      { added: '0 Ω', level: '20 mV' },
      { added: '47 Ω', level: '11.1 mV' },
      { added: '100 Ω', level: '7.4 mV' },
    ],
  },
  'earth-electrodes': {
    oneTwo: '100 Ω',
    oneThree: '130 Ω',
    twoThree: '150 Ω',
    rods: { length: '1.2 m', diameter: '12 mm', oneTwo: '8 m', oneThree: '8 m', twoThree: '9 m' },
  },
  'earth-comparison': {
    level: '20 mV',
    otherLevel: '14 mV',
    circuitResistance: '60 Ω',
    circuitError: '4 Ω',
    otherResistance: '70 Ω',
  },
  'phones-resistance': { reading: '2.01 kΩ', leads: '0.4 Ω' },
  'phones-impedance': {
    frequency: '1 kHz',
    resistor: '10 kΩ',
    resistorVoltage: '0.5 V',
    voltage: '0.6 V',
    wholeVoltage: '0.9 V',
  },
  'phones-sound-card': {
    frequency: '1 kHz',
    resistor: '10 kΩ',
    open: { level: 0.75, phase: '0°' },
    known: { level: 0.43, phase: '0°' },
    phones: { level: 0.5, phase: '15°' },
  },
  audibility: {
    impedance: '9 kΩ',
    phase: '60°',
    trials: [{ shunt: '200 Ω' }, { shunt: '240 Ω' }, { shunt: '170 Ω' }, { shunt: '220 Ω' }],
  },
  'field-strength': {
    calibration: [
      { emf: '1 mV', current: '0.3 µA' },
      { emf: '10 mV', current: '12 µA' },
    ],
    current: '4 µA',
    effectiveHeight: '4 m',
    heightError: '12 %',
  },
  'analyser-coil': { file: coil, frequency: '1 MHz' },
  'analyser-capacitor': { file: twoPort(seriesOf(470e-12, 15e-9, 1), 'series', SWEEP), fixture: 'series' },
  'analyser-aerial': { file: onePort(seriesOf(220e-12, 14e-6, 45), SWEEP) },
  'analyser-earpiece': { file: onePort(seriesOf(12e-9, 1e-9, 1), SWEEP) },
  'analyser-transformer': { file: coil, shorted: onePort(coilOf(22e-6, 7e-12, 25), SWEEP) },
  'analyser-peak': { file: `# Hz S RI R 50\n${frequencies(0.96e6, 1.04e6, 41).map(peak).join('\n')}\n` },
};

describe('calc fit of every kind of measurement', () => {
  for (const [kind, readings] of Object.entries(EXAMPLES))
    test(`${kind}: each figure that it yields, with unit, standard error and range`, () => {
      const result = fitCalculation.run({ kind, ...readings });
      if (!result.ok) throw new Error(JSON.stringify(result.problems));
      const { yields } = MEASUREMENTS[kind as MeasurementKind];
      for (const [name, { quantity, optional }] of Object.entries(yields)) {
        const figure = result.answer[name] as { value: number; unit: string; standardError: number; range: number[] };
        if (optional && figure === undefined) continue;
        expect(figure, name).toBeDefined();
        expect(figure.unit, name).toBe(quantity ? QUANTITY_KINDS[quantity].unit : '');
        expect(figure.standardError, name).toBeGreaterThan(0);
        expect(figure.range[0], name).toBeLessThanOrEqual(figure.value);
        expect(figure.range[1], name).toBeGreaterThanOrEqual(figure.value);
      }
      expect(result.answer.warnings.filter((w) => w.includes('not used here'))).toEqual([]);
    });

  test('a broken file is named line by line at its field', () => {
    const result = fitCalculation.run({
      kind: 'analyser-coil',
      file: '# MHz S RI R 50\n1 0.5\n2 0,5 0\n',
      fixture: 'sideways',
    });
    expect(result.ok ? [] : result.problems.map((p) => `${p.path}: ${p.message}`)).toEqual([
      expect.stringMatching(
        /^file: expected the text of a Touchstone file of one or two ports, got .*: line 2: expected .*; line 3: expected numbers with a decimal point, got "0,5"$/,
      ),
      expect.stringMatching(/^fixture: expected one of "reflection", "series", "shunt", got "sideways"$/),
    ]);
  });
  test('a record is cut from its edge to the next one, and its rows are named', () => {
    const ring = (i: number) => Math.exp(-i / 40) * Math.cos(0.8 * i);
    const rows = Array.from({ length: 900 }, (_, i) => (i < 100 ? 0.02 : i < 500 ? ring(i - 100) : ring(i - 500)));
    const record = rows.map((volts, i) => `${i / 1000},${volts}`).join('\n');
    const result = fitCalculation.run({ kind: 'decay-record', record });
    const { frequency, q } = (result.ok ? result.answer : {}) as unknown as Record<string, { value: number }>;
    expect(frequency.value).toBeCloseTo((1000 * 0.8) / (2 * Math.PI), 2);
    expect(q.value).toBeCloseTo(0.4 * 40, 2);
    const broken = fitCalculation.run({ kind: 'decay-record', record: record.replace('0.3,', 'noon,') });
    expect(broken.ok ? '' : broken.problems[0].message).toMatch(
      /: line 301: expected a time and a voltage, got "noon /,
    );
    const uneven = fitCalculation.run({ kind: 'decay-record', record: record.replace('\n0.4,', '\n0.43,') });
    expect(uneven.ok ? '' : uneven.problems[0].message).toMatch(/: line 401: expected times that rise by equal steps$/);
  });
  test('readings that lead nowhere together are named at their field', () => {
    const result = fitCalculation.run({ kind: 'equal-levels', lower: '459 kHz', upper: '450 kHz' });
    expect(result.ok ? [] : result.problems.map((p) => `${p.path}: ${p.message}`)).toEqual([
      'upper: expected "upper" above "lower", got it below',
    ]);
  });
});
