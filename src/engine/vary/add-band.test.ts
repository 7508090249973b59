import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { receiveBands } from '../reception/path/receive-bands.ts';
import { turnSwitch } from '../set/band-switch.ts';
import { readValue } from '../set/read.ts';
import { addBand, canShareCoil } from './add-band.ts';
import { bandFigures } from './band-figures.ts';
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

  it.each([
    ['medium-wave-germanium-amplifier', 'main'],
    ['spider-coil-earpiece', 'disc'],
  ])('can share the coil of %s: the long wave has all turns, the medium wave those next to earth', (name, coil) => {
    const written = example(name);
    const { written: two } = addBand(written, 'long wave', 'shared')!;
    expect(two.coils.map((one) => one.name)).toEqual([coil]);
    const turns = written.coils[0].turns;
    expect(two.arrangement).toEqual({ ...written.arrangement, usedTurns: turns, unusedTurns: 'shorted' });
    const [medium, long] = receiveBands(read(two)).bands;
    const alone = bandFigures(read(written));
    // The shorted turns take some inductance away, the more the closer they are coupled.
    expect(medium.lowest / alone.lowest).toBeGreaterThan(1);
    expect(medium.lowest / alone.lowest).toBeLessThan(1.08);
    expect(long.lowest).toBeLessThan(BANDS['long wave'].from);
    expect(long.highest).toBeGreaterThan(BANDS['long wave'].to);
  });

  it('on a shared coil is tuned by fewer of its turns where it is the higher one', () => {
    const long = addBand(example('medium-wave-galena'), 'long wave', 'shared')!.written;
    const { bands: _, ...alone } = turnSwitch(long, 1);
    const { written, rewound } = addBand(alone as typeof long, 'medium wave', 'shared')!;
    expect(written.coils).toEqual(alone.coils);
    const { usedTurns } = turnSwitch(written, 1).arrangement as { readonly usedTurns: number };
    expect(usedTurns).toBeGreaterThan(45);
    expect(usedTurns).toBeLessThan(75);
    expect(rewound.after.lowest).toBeLessThan(560e3);
    expect(rewound.after.highest).toBeGreaterThan(1500e3);
  });

  it('shares no coil in layers, on a core, of coupled circuits or used in part already', () => {
    for (const name of ['long-wave-foil', 'two-tuned-circuits', 'slider-set', 'frame-aerial'])
      expect(canShareCoil(example(name)), name).toBe(false);
    expect(canShareCoil(addBand(example('medium-wave-galena'), 'long wave', 'shared')!.written)).toBe(false);
  });

  it('is refused where no switch can make it', () => {
    expect(addBand(example('slider-set'), 'long wave')).toBeUndefined();
    expect(addBand(example('frame-aerial'), 'long wave')).toBeUndefined();
    expect(addBand(example('two-band'), 'long wave')).toBeUndefined();
  });

  it('below the others on a shared coil leaves every band on that coil where it was', () => {
    const written = example('medium-wave-galena');
    const arrangement = { ...written.arrangement, aerialTap: written.arrangement.aerialTap / 2 };
    const three = addBand(
      { ...written, bands: [{ name: 'near' }, { name: 'far', arrangement }] },
      'long wave',
      'shared',
    )!.written;
    const { turns } = written.coils[0];
    expect(three.coils[0]).not.toMatchObject({ turns });
    expect(three.bands).toMatchObject([{ name: 'near' }, { arrangement: { usedTurns: turns } }, { name: 'long wave' }]);
    const of = (set: typeof three) => receiveBands(read(set)).bands;
    const before = of({ ...written, bands: [{ name: 'near' }, { name: 'far', arrangement }] });
    for (const [i, { lowest }] of before.entries()) {
      // The shorted turns take some inductance away.
      expect(of(three)[i].lowest / lowest).toBeGreaterThan(1);
      expect(of(three)[i].lowest / lowest).toBeLessThan(1.08);
    }
  });

  it('shares no coil that another band uses in another circuit', () => {
    const written = example('medium-wave-galena');
    const { coil } = written.arrangement;
    const coupled = { kind: 'coupled', coil: 'other', aerialCoil: coil };
    expect(canShareCoil({ ...written, bands: [{ name: 'near' }, { name: 'far', arrangement: coupled }] })).toBe(false);
    const apart = { ...coupled, aerialCoil: 'a third' };
    expect(canShareCoil({ ...written, bands: [{ name: 'near' }, { name: 'far', arrangement: apart }] })).toBe(true);
  });
});
