import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { receiveBands } from '../reception/path/receive-bands.ts';
import { turnSwitch } from '../set/band-switch.ts';
import { readValue } from '../set/read.ts';
import { addBand } from './add-band.ts';
import { BANDS } from './bands.ts';

const example = (name: string) => JSON.parse(readFileSync(inRoot(`examples/${name}.json`), 'utf8'));
function read(value: unknown) {
  const result = readValue(value);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.set;
}

describe('a band more', () => {
  it.each([
    ['medium-wave-galena', 'long wave', 'medium wave'],
    ['long-wave-foil', 'medium wave', 'long wave'],
    ['two-tuned-circuits', 'long wave', 'medium wave'],
  ] as const)('of %s leaves its own band as it was and covers most of the new one', (name, to, from) => {
    const written = example(name);
    const added = addBand(written, to)!;
    const set = read(added.written);
    const { bands, coils, ...before } = added.written;
    const { coils: _, ...rest } = written;
    expect(before).toEqual(rest);
    expect(coils.slice(0, written.coils.length)).toEqual(written.coils);
    expect(bands?.map((band) => band.name)).toEqual([from, to]);
    const [first, second] = receiveBands(set).bands;
    // The capacitor spans the ratio that it spans: what it covers lies within and around the band.
    const { from: low, to: high } = BANDS[to];
    expect(second.lowest).toBeLessThan(Math.sqrt(low * high));
    expect(second.highest).toBeGreaterThan(Math.sqrt(low * high));
    expect(Math.min(second.highest, high) / Math.max(second.lowest, low)).toBeGreaterThan(0.8 * (high / low) ** 0.5);
    expect(first.highest / first.lowest).toBeGreaterThan(1.5);
  });

  it('is wound with coils of its own, and a third can follow', () => {
    const two = addBand(example('medium-wave-galena'), 'long wave')!;
    expect(two.written.coils.map(({ name }) => name)).toEqual(['main', 'main long wave']);
    expect(two.index).toBe(1);
    expect(turnSwitch(two.written, 1).arrangement).toMatchObject({ coil: 'main long wave' });
    const other = {
      ...two.written,
      bands: two.written.bands!.map((band, i) => (i === 1 ? { ...band, name: 'low' } : band)),
    };
    expect(addBand(other, 'long wave')!.written.coils.map(({ name }) => name)).toEqual([
      'main',
      'main long wave',
      'main long wave 2',
    ]);
  });

  it('is refused where no switch can make it', () => {
    expect(addBand(example('slider-set'), 'long wave')).toBeUndefined();
    expect(addBand(example('frame-aerial'), 'long wave')).toBeUndefined();
    expect(addBand(example('two-band'), 'long wave')).toBeUndefined();
  });
});
