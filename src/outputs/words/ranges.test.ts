import { expect, test } from 'vitest';
import { levelSpan, numberSpan, ohmsBeside, spanBeside, spanText } from './ranges.ts';

const NBSP = '\u00a0';

test.each([
  [[0.114, 0.974], 'voltage', '110–970 mV'],
  [[0.9e-3, 2.14e-3], 'field strength', '0.9–2.1 mV/m'],
  [[154e-12, 160e-12], 'capacitance', '154–160 pF'],
  [[0.41, 0.9996], 'voltage', '0.41–1 V'],
  [[2e-9, 0.03], 'power', `2 nW–30 mW`],
  [[0, 12], 'resistance', '0–12 Ω'],
  [[1e-3, Number.POSITIVE_INFINITY], 'voltage', '1–∞ mV'],
] as const)('the range %j of a %s is %s', (range, kind, text) => {
  expect(spanText(range, kind)).toBe(text.replaceAll(' ', NBSP));
});

test('beside a value stands its range in the unit of the value', () => {
  expect(spanBeside(0.649, [0.41, 1.004], 'voltage')).toBe('(410–1000)');
  expect(spanBeside(182e-6, [179e-6, 185e-6], 'inductance')).toBe('(179–185)');
  expect(spanBeside(1.2e-3, [0.7e-3, 2.1e-3], 'field strength', 2)).toBe('(0.7–2.1)');
  expect(spanBeside(0.9996, [0.41, 2.4], 'voltage', 2)).toBe('(0.41–2.4)');
});

test('levels have no dash beside a minus', () => {
  expect(levelSpan([33.4, 50.6])).toBe('33–51');
  expect(levelSpan([-5.2, 12])).toBe('−5 to 12');
  expect(levelSpan([-9, -2])).toBe('−9 to −2');
});

test('a number without unit', () => {
  expect(numberSpan([98.4, 254])).toBe('98–250');
  expect(numberSpan([178.3, 181.6])).toBe('178–182');
});

test('states the range of a resistance in the unit and as fine as a meter shows it', () => {
  expect(ohmsBeside(0.23, [0.12, 0.36])).toBe('(0.1–0.4)');
  expect(ohmsBeside(1.17, [0.98, 1.37])).toBe('(1–1.4)');
  expect(ohmsBeside(73, [37, 150])).toBe('(37–150)');
  expect(ohmsBeside(2400, [1300, 4600])).toBe('(1.3–4.6)');
});
