import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { setCircuit } from '../../built/set-circuit.ts';
import { readValue } from '../../set/read.ts';
import { greatest, quotientAt } from './straight-quotient.ts';
import { tunedNetwork } from './tuned.ts';
import { loaded } from './views.ts';

const example = (file: string, change: (written: Record<string, unknown>) => void = () => {}) => {
  const written = JSON.parse(readFileSync(`examples/${file}`, 'utf8'));
  change(written);
  const read = readValue(written);
  if (!read.ok) throw new Error(`${file} does not read`);
  return setCircuit(read.set);
};
const TWO = 'two-tuned-circuits.json';
const ganged = (written: Record<string, unknown>) => {
  const { aerialTuning: _, ...arrangement } = written.arrangement as Record<string, unknown>;
  written.arrangement = { ...arrangement, ganged: true };
};
const FREQUENCIES = [603e3, 909e3, 1215e3, 1458e3];
const LOADS = [2e-6, 4e-5];

describe('the closed forms of a set that capacitors tune', () => {
  const files = readdirSync('examples').filter((name) => /\.json$/.test(name) && !/slider|rotor/.test(name));
  const sets = [
    ...files.map((file) => [file, example(file)] as const),
    ['two circuits, ganged', example(TWO, ganged)] as const,
  ].filter(([, { assembly }]) => assembly.tuning.length > 0);

  test.each(sets)('give the level that open voltage and impedance give: %s', (_, { assembly }) => {
    const network = tunedNetwork(assembly);
    for (const f of FREQUENCIES)
      for (const g of LOADS)
        for (const [position, other] of [
          [0, 1],
          [0.3, 0.6],
          [0.9, 0.2],
        ]) {
          const view = network.at(f);
          const level = loaded(view.at(position, other), g);
          expect(view.level(g, position, other) / level).toBeCloseTo(1, 9);
        }
  });

  test.each(sets)('find no place beside the peak where the detector gets more: %s', (_, { assembly }) => {
    const network = tunedNetwork(assembly);
    for (const f of FREQUENCIES)
      for (const g of LOADS) {
        const view = network.at(f);
        const { position, other, within } = view.peak(g);
        if (!within) continue;
        const top = view.level(g, position, other);
        for (const off of [-3e-3, -3e-4, 3e-4, 3e-3]) {
          expect(view.level(g, position + off, assembly.ganged ? position + off : other) / top).toBeLessThan(1 + 1e-6);
          if (!assembly.ganged) expect(view.level(g, position, other + off) / top).toBeLessThan(1 + 1e-6);
        }
      }
  });

  const direct = (written: Record<string, unknown>) => {
    written.arrangement = { kind: 'direct', coil: (written.coils as { name: string }[])[0].name };
  };
  const single = [
    ...sets.filter(([, { assembly }]) => assembly.tuning.length === 1),
    ['medium wave, direct', example('medium-wave-galena.json', direct)] as const,
    ['long wave, direct', example('long-wave-foil.json', direct)] as const,
  ];
  test.each(single)('find the top of the whole scale however much the detector loads it: %s', (_, { assembly }) => {
    const network = tunedNetwork(assembly);
    for (const f of [198e3, ...FREQUENCIES])
      for (const g of [2e-6, 1e-4, 4e-4, 2e-3]) {
        const view = network.at(f);
        if (!view.peak(2e-6).within) continue;
        const { position, other } = view.peak(g);
        const top = view.level(g, position, other);
        for (let place = 0; place <= 1; place += 0.02)
          expect(view.level(g, place, place) / top, `${f} Hz, ${g} S, at ${place}`).toBeLessThan(1 + 1e-6);
      }
  });

  test('levels about a solved frequency follow it as far as a response is wide', () => {
    const { assembly } = example(TWO);
    const network = tunedNetwork(assembly);
    for (const f of FREQUENCIES) {
      const { position, other } = network.at(f).peak(4e-6);
      const about = network.about!(f, 1000);
      for (const off of [-8e3, -1e3, 0, 3e3, 8e3])
        expect(about(f + off, 4e-6, position, other) / network.at(f + off).level(4e-6, position, other)).toBeCloseTo(
          1,
          2,
        );
    }
  });
});

describe('the greatest of a quotient of two straight lines', () => {
  const w = 2 * Math.PI * 1e6;
  // 1/(G + jB) of 220 µH with 5 µS: a + b·Y = 1, c + d·Y = (Y_coil + G + Y)/Y_coil.
  const x = w * 220e-6;
  const resonant = Float64Array.of(1, 0, 0, 0, 1, 5e-6 * x, 0, x);

  test('is the resonance of a parallel circuit', () => {
    const C = greatest(resonant, { w, low: 50e-12, high: 500e-12, lossLow: 0, lossHigh: 0 });
    expect(C / (1 / (w * x))).toBeCloseTo(1, 12);
  });

  test('lies a little lower where the loss grows with the capacitance', () => {
    const loss = 2e-3;
    const at = (C: number) => quotientAt(resonant, loss * w * C, w * C);
    const C = greatest(resonant, {
      w,
      low: 50e-12,
      high: 500e-12,
      lossLow: loss * w * 50e-12,
      lossHigh: loss * w * 500e-12,
    });
    expect(C).toBeLessThan(1 / (w * x));
    expect(at(C)).toBeGreaterThan(at(C * (1 + 1e-5)));
    expect(at(C)).toBeGreaterThan(at(C * (1 - 1e-5)));
  });

  test('is the nearer end where the resonance lies outside, and some place where nothing changes', () => {
    const within = (low: number, high: number) => greatest(resonant, { w, low, high, lossLow: 0, lossHigh: 0 });
    expect(within(200e-12, 500e-12)).toBe(200e-12);
    expect(within(20e-12, 100e-12)).toBe(100e-12);
    const nothing = greatest(new Float64Array(8), { w, low: 1e-11, high: 1e-10, lossLow: 0, lossHigh: 0 });
    expect(nothing).toBe(1e-11);
  });
});
