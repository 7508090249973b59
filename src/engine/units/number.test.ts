import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leadingNumber, wholeNumber } from './number.ts';
import { parseQuantity } from './parse.ts';

const hintOf = (text: string) => {
  const read = leadingNumber(text);
  return read.ok ? read.value : read.hint;
};

describe('numbers as people write them', () => {
  it.each<[string, number]>([
    ['1.000', 1],
    ['1,5', 1.5],
    ['0,500', 0.5],
    ['1234,567', 1234.567],
    ['1,000,000', 1e6],
    ['1.000.000', 1e6],
    ['1.000.000,5', 1000000.5],
    ['1,000.5', 1000.5],
    ['1.234,567', 1234.567],
    ['1 000', 1000],
    ['1\u2009000', 1000],
    ['1\u202f000', 1000],
    ['1\u00a0000', 1000],
    ['1 000,5', 1000.5],
    ["1'000", 1000],
    ['1\u2019000.25', 1000.25],
    ['1_000', 1000],
    ['1,00,000', 1e5],
    ['12,34,567.5', 1234567.5],
    ['\u0661\u066c\u0662\u0663\u0664\u066b\u0665', 1234.5],
    ['\u06f3\u06f6\u06f5', 365],
    ['\uff13\uff16\uff15', 365],
    ['\u0969\u096c\u096b', 365],
    ['\u22125', -5],
    ['1e3', 1000],
    ['1.2e-6', 1.2e-6],
    ['2 1/2', 2.5],
    ['2\u00bd', 2.5],
    ['-0 1/2', -0.5],
    ['1 000 1/2', 1000.5],
    ['3/8', 0.375],
  ])('%s is %s', (text, expected) => {
    expect(wholeNumber(text)).toBe(expected);
  });

  it.each([
    '1,2,3',
    '1,5,000',
    '1.5,000',
    '1 00',
    '0 500',
    '1,000,00',
    '1..5',
    '1 .5',
    "1'000 000",
    '1 500/2',
    '2,5 1/2',
    '1/8.5',
    '1/0',
    '1e400',
    '1e-400',
    '1e3,000',
    '1.234 567',
    '',
    'x',
    '1'.repeat(65),
  ])('%s is refused', (text) => {
    expect(wholeNumber(text)).toBeUndefined();
  });

  it('refuses one comma and three digits, naming both ways of writing it', () => {
    expect(hintOf('1,000 pF')).toEqual({
      code: 'thousand-or-fraction',
      number: '1,000',
      whole: '1000',
      fraction: '1.000',
    });
    const read = parseQuantity('1,000 kW', 'power');
    expect(read).toMatchObject({ hint: { code: 'thousand-or-fraction', whole: '1000', fraction: '1.000' } });
    expect(parseQuantity('1e308 GHz', 'frequency').ok).toBe(false);
    expect(parseQuantity('1e-320 pF', 'capacitance').ok).toBe(false);
  });

  const ZEROS = [0x30, 0x660, 0x6f0, 0x966, 0x9e6, 0xe50, 0xff10, 0x1d7ce, 0x1d7d8, 0x1d7f6];
  /** Digits of the whole number in groups, from the right: three, or the Indian three and then twos. */
  const grouped = (whole: string, separator: string, indian: boolean): string => {
    const groups = [whole.slice(-3)];
    for (let rest = whole.slice(0, -3); rest !== ''; ) {
      const size = indian ? 2 : 3;
      groups.unshift(rest.slice(-size));
      rest = rest.slice(0, -size);
    }
    return groups.filter((group) => group !== '').join(separator);
  };
  const written = fc
    .record({
      whole: fc.nat(2 ** 31 - 1).map(String),
      decimals: fc.oneof(fc.constant(''), fc.stringMatching(/^\d{1,4}$/)),
      group: fc.constantFrom('', ',', '.', ' ', '\u2009', '\u202f', '\u00a0', "'", '\u2019', '_', '\u066c'),
      mark: fc.constantFrom('.', ',', '\u066b'),
      indian: fc.boolean(),
      zero: fc.constantFrom(...ZEROS),
      sign: fc.constantFrom('', '-', '+', '\u2212'),
      power: fc.constantFrom('', '', 'e3', 'E-6', 'e+2'),
    })
    .filter(({ group, mark }) => group !== mark);

  it('are read as exactly that number or refused, in any locale’s form', () => {
    const seen = { read: 0, refused: 0 };
    fc.assert(
      fc.property(written, ({ whole, decimals, group, mark, indian, zero, sign, power }) => {
        const body = grouped(whole, group, indian) + (decimals && mark + decimals);
        // The one form that is defined: a single point is a decimal point.
        fc.pre(!/^\d+\.\d+$/.test(body) || group !== '.' || decimals !== '');
        const digits = body.replace(/\d/g, (d) => String.fromCodePoint(zero + Number(d)));
        const expected = Number(`${sign.replace('\u2212', '-')}${whole}.${decimals || '0'}${power}`);
        const read = wholeNumber(sign + digits + power);
        if (read === undefined) seen.refused++;
        else {
          seen.read++;
          expect(Object.is(read, expected) || read === expected, `${sign}${digits}${power} read as ${read}`).toBe(true);
        }
        const quantity = parseQuantity(`${sign}${digits}${power} V`, 'voltage');
        if (quantity.ok) expect(quantity.value).toBe(expected);
      }),
      { numRuns: 3000 },
    );
    expect(seen.read).toBeGreaterThan(5 * seen.refused);
  });

  it('are never read from text that only begins like one', () => {
    const junk = fc.string({ unit: fc.constantFrom(..."0123456789.,' _/e+-\u2009\u066b\u0663"), maxLength: 12 });
    fc.assert(
      fc.property(junk, (text) => {
        const read = wholeNumber(text);
        if (read === undefined) return;
        expect(Number.isFinite(read)).toBe(true);
        if (/[/e]/.test(text) || /e/.test(String(read))) return;
        // No digit written was passed over.
        const digits = (one: string) => one.replace(/\D/g, '').replace(/^0+|0+$/g, '');
        expect(digits(String(read))).toBe(digits(text.replaceAll('\u0663', '3')));
      }),
      { numRuns: 2000 },
    );
  });
});
