import { describe, expect, it } from 'vitest';
import reference from '../../reference/whole-sets-in-practice.json' with { type: 'json' };
import { setCircuit } from '../../src/engine/built/set-circuit.ts';
import { readValue } from '../../src/engine/set/read.ts';
import type { Ranged } from '../../src/engine/uncertainty/draws.ts';
import { uncertaintyOf } from '../../src/engine/uncertainty/uncertainty.ts';

/**
 * Whole sets as people described them: reference/whole-sets-in-practice.json has who, what was stated, what is assumed
 * and why, and what was heard or measured, as a range that was fixed before anything was compared.
 */
interface Account {
  readonly id: string;
  readonly source: { readonly title: string; readonly year: string | number; readonly certainty: string };
  readonly stated: Readonly<Record<string, string>>;
  readonly assumed: readonly string[];
  readonly observed:
    | { readonly words: Words }
    | { readonly figure: Figure; readonly low: number; readonly high: number };
  readonly description: unknown;
}
type Words = keyof typeof reference.words;
type Figure = 'directVoltage' | 'tunedCircuitVoltage';
const accounts = reference.accounts as unknown as readonly Account[];

/** Those the ranges miss, and why they may. */
const OUTSIDE: Readonly<Record<string, string>> = {
  'circular-121':
    'the distance is only said to be beyond 50 miles, 60 are taken; reports of the farthest stations are of the best sets and hours',
  'flat-at-2-miles':
    '5 kW at 2 miles barely heard is 35 dB below the median: the crystal, the contact or the phones were likely at fault',
};

/** What the program says of the account's set, and what was observed; with fields stronger by a factor. */
function compared({ observed, description }: Account, factor = 1) {
  const read = readValue(description);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { place } = read.set;
  const stations = place.stations.map(({ fieldStrength, power, ...rest }) => ({
    ...rest,
    fieldStrength: fieldStrength && fieldStrength * factor,
    power: power && power * factor ** 2,
  }));
  const [station] = uncertaintyOf(setCircuit({ ...read.set, place: { ...place, stations } }));
  const said: Ranged = 'words' in observed ? station!.margin : station!.figures[observed.figure];
  const [low, high] = 'words' in observed ? reference.words[observed.words].margin : [observed.low, observed.high];
  return { said, low, high, holds: said.range[0] <= high && said.range[1] >= low };
}

describe('accounts of whole sets', () => {
  it.each(accounts)('$id says where it is from, what is stated and what is assumed', (account) => {
    const { source, stated, assumed, observed } = account;
    expect(source.title).not.toBe('');
    expect(String(source.year)).toMatch(/\d{4}/);
    expect(source.certainty).toMatch(/^(seen|from memory|the set: seen)/);
    expect(stated.observed).toBeDefined();
    expect(assumed.length).toBeGreaterThan(0);
    if (!('words' in observed)) expect(observed.high).toBeGreaterThan(observed.low);
  });

  it('at least ten, of which the 90 % range holds nine of ten, and those outside are known', () => {
    expect(accounts.length).toBeGreaterThanOrEqual(10);
    const missed = accounts.flatMap((account) => {
      const { said, low, high, holds } = compared(account);
      return holds ? [] : [{ id: account.id, told: `${account.id}: ${low} … ${high} observed, ${said.range} said` }];
    });
    const told = missed.map((m) => m.told).join('\n');
    expect(missed.length / accounts.length, told).toBeLessThanOrEqual(0.1);
    expect(Object.keys(OUTSIDE), told).toEqual(expect.arrayContaining(missed.map((m) => m.id)));
  });

  it.each([
    ['weaker', -15],
    ['stronger', 15],
  ])('would not hold nine of ten with all fields 15 dB %s', (_how, dB) => {
    const held = accounts.filter((account) => compared(account, 10 ** (dB / 20)).holds);
    expect(held.length / accounts.length).toBeLessThan(0.9);
  });
});
