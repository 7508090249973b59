import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { setCircuit } from '../built/set-circuit.ts';
import { receive } from '../reception/path/receive.ts';
import { receiveBands } from '../reception/path/receive-bands.ts';
import { moveBand } from '../vary/move-band.ts';
import { bandNamed, standingBand, switchBand, switchedOutCoils, turnSwitch } from './band-switch.ts';
import type { SetDescription } from './description.ts';
import { editedSet } from './edit.ts';
import { readValue } from './read.ts';

const written = JSON.parse(readFileSync(inRoot('examples/two-band.json'), 'utf8'));
const plain = JSON.parse(readFileSync(inRoot('examples/medium-wave-galena.json'), 'utf8'));

function read(value: unknown): SetDescription {
  const result = readValue(value);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.set;
}
const problemsOf = (value: unknown) => {
  const result = readValue(value);
  return result.ok ? [] : result.problems.map(({ path, expected: { code } }) => `${path}: ${code}`);
};
const [medium, long] = written.bands;

/** A set of any bands, one of which the switch stands on, and two of their places. */
const anySwitched = fc
  .uniqueArray(fc.string({ maxLength: 12 }), { minLength: 2, maxLength: 4 })
  .chain((names) =>
    fc.tuple(
      fc.constant(names),
      fc.nat(names.length - 1),
      fc.nat(names.length - 1),
      fc.nat(names.length - 1),
      fc.array(fc.anything(), { minLength: names.length, maxLength: names.length }),
    ),
  )
  .map(([names, standing, first, second, arrangements]) => {
    const own = arrangements.map((one, i) => ({ is: one ?? i }));
    return {
      set: {
        arrangement: own[standing],
        bands: names.map((name, i) => (i === standing ? { name } : { name, arrangement: own[i] })),
      },
      own,
      standing,
      first,
      second,
    };
  });

describe('turning a band switch', () => {
  it('makes the arrangement of that band the set’s own and loses nothing', () => {
    fc.assert(
      fc.property(anySwitched, ({ set, own, first }) => {
        const turned = turnSwitch(set, first);
        expect(standingBand(turned)).toBe(first);
        expect(turned.arrangement).toBe(own[first]);
        turned.bands.forEach((band, i) => {
          expect(band.name).toBe(set.bands[i].name);
          expect(i === first ? turned.arrangement : band.arrangement).toBe(own[i]);
        });
      }),
    );
  });

  it('to the band where it stands is the identity, by whatever way it came there', () => {
    fc.assert(
      fc.property(anySwitched, ({ set, standing, first, second }) => {
        expect(turnSwitch(set, standing)).toBe(set);
        expect(turnSwitch(turnSwitch(turnSwitch(set, first), second), standing)).toEqual(set);
      }),
    );
  });

  it('leaves anything else as it is', () => {
    fc.assert(
      fc.property(fc.anything(), fc.integer(), (value, index) => {
        expect(turnSwitch(value, index)).toBe(value);
      }),
    );
    expect(turnSwitch(plain, 0)).toBe(plain);
    expect(turnSwitch(written, 2)).toBe(written);
    expect(turnSwitch(written, -1)).toBe(written);
    expect(() => switchBand(read(written), 'short wave')).toThrow(RangeError);
  });

  it('finds a band of any name by it', () => {
    for (const name of ['__proto__', 'constructor', '1', 'Über-lang'])
      expect(bandNamed(read({ ...written, bands: [medium, { ...long, name }] }), name)).toBe(1);
    expect(bandNamed(read(written), ' Long-Wave ')).toBe(1);
    expect(bandNamed(read(written), 'long')).toBeUndefined();
  });
});

describe('a set with a band switch', () => {
  const set = read(written);
  const onLong = switchBand(set, 'long wave');

  it('on a band is received as the plain set of that band', () => {
    const alone = read({ ...written, arrangement: long.arrangement, bands: undefined });
    const stations = ({ stations }: ReturnType<typeof receive>) => stations.map(({ path }) => path);
    expect(stations(receive(onLong))).toEqual(stations(receive(alone)));
    expect(receive(onLong).dial.points).toEqual(receive(alone).dial.points);
  });

  it('covers the carriers of both broadcast bands, long wave and medium wave', () => {
    // ITU Radio Regulations, Region 1, GE75: carriers of long wave from 153 kHz, of medium wave from 531 kHz.
    const { bands } = receiveBands(set);
    expect(bands.map(({ name }) => name)).toEqual(['medium wave', 'long wave']);
    expect(bands[0].lowest).toBeLessThan(531e3);
    expect(bands[0].highest).toBeGreaterThan(1602e3);
    expect(bands[1].lowest).toBeLessThan(153e3);
    expect(bands[1].highest).toBeGreaterThan(279e3);
  });

  it('gives the figures of its coils on each band at a frequency of that band', () => {
    const { bands } = receiveBands(set);
    for (const { coils, lowest, highest } of bands) {
      expect(coils.map(({ name }) => name)).toEqual(set.coils.map(({ name }) => name));
      for (const { qAt } of coils) expect(qAt >= lowest && qAt <= highest).toBe(true);
    }
    expect(new Set(bands.map(({ coils }) => coils[0].qAt)).size).toBe(bands.length);
  });

  it('has every station on the band that reaches it, in whatever order the bands are written', () => {
    const names = (of: SetDescription) => {
      const { bands, bestOf, best } = receiveBands(of);
      return { best, bestOf: bestOf.map((band) => (band === undefined ? undefined : bands[band].name)) };
    };
    const { best, bestOf } = names(set);
    expect(bestOf).toEqual(
      set.place.stations.map(({ frequency }) => (frequency < 300e3 ? 'long wave' : 'medium wave')),
    );
    expect(names(read({ ...written, bands: written.bands.toReversed() }))).toEqual({ best, bestOf });
    expect(names(onLong)).toEqual({ best, bestOf });
    expect(receiveBands(read(plain)).bestOf.every((band) => band === undefined)).toBe(true);
  });

  it('warns of the coil that is switched out', () => {
    expect(switchedOutCoils(set)).toEqual(['long']);
    expect(switchedOutCoils(onLong)).toEqual(['medium']);
    expect(setCircuit(onLong).assembly.warnings).toContainEqual({
      code: 'arrangement.coil-switched-out',
      coil: 'medium',
    });
  });

  it('keeps the coils of its other bands as they are when one band is moved', () => {
    const { changes } = moveBand(onLong, { to: 'medium wave' });
    expect(changes.filter(({ path }) => path[0] === 'coils').map(({ path }) => path[1])).not.toContain(0);
    expect(changes.some(({ path }) => path[0] === 'coils' && path[1] === 1)).toBe(true);
  });

  it('is not changed so that another band cannot be built any more', () => {
    const shared = read({
      ...written,
      bands: [medium, { name: 'lower end', arrangement: { kind: 'tapped', coil: 'medium', aerialTap: 40 } }],
    });
    const edited = editedSet(shared, [{ path: ['coils', 0, 'turns'], to: 30 }]);
    expect(edited.ok).toBe(false);
    expect(editedSet(set, [{ path: ['coils', 0, 'turns'], to: 30 }]).ok).toBe(true);
  });
});

describe('what is wrong with bands', () => {
  it('is named with its place, all of it at once', () => {
    const bad = {
      ...written,
      bands: [
        medium,
        { name: 'Medium-wave', arrangement: { kind: 'slider', coil: 'long' } },
        { name: 'third', arrangement: { kind: 'tapped', coil: 'nobody', aerialTap: 2 } },
        { name: 'fourth', arrangement: { kind: 'tapped', coil: 'long', aerialTap: 4000 } },
      ],
    };
    expect(problemsOf(bad)).toEqual([
      'bands[2].arrangement.coil: coil-name',
      'bands[3].arrangement.aerialTap: turns.at-most',
      'bands[1].name: name-of-its-own',
      'bands[1].arrangement.kind: one-of',
    ]);
  });

  it('is a switch that stands on no band, or on two', () => {
    expect(problemsOf({ ...written, bands: [{ ...long, name: 'a' }, long] })).toEqual(['bands: standing-band']);
    expect(problemsOf({ ...written, bands: [medium, { name: 'also' }] })).toEqual([
      'bands[1].arrangement: band-arrangement',
    ]);
  });

  it('is a single band, more than a switch has ways for, and a name that is none', () => {
    expect(problemsOf({ ...written, bands: [medium] })).toEqual(['bands: list.at-least']);
    expect(problemsOf({ ...written, bands: [medium, long, long, long, long] })).toEqual(['bands: items.at-most']);
    expect(problemsOf({ ...written, bands: [{ name: '' }, long] })).toEqual(['bands[0].name: a-name']);
    expect(problemsOf({ ...written, bands: [medium, { ...long, arrangement: { kind: 'tapped' } }] })).toEqual([
      'bands[1].arrangement.coil: text',
      'bands[1].arrangement.aerialTap: number',
    ]);
  });
});
