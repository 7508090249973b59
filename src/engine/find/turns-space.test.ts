import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import '../../../test/support/fixed-seed.ts';
import { eachOf } from '../../../test/support/each-set-of.ts';
import { coilModel } from '../kinds/models.ts';
import { readValue } from '../set/read.ts';
import { backEndsOf, frontEndsOf, type SetChoice } from './choices.ts';
import { chosenSets } from './chosen-set.ts';
import { readBox } from './read-box.ts';
import { turnsSpace } from './turns-space.ts';

const jsonOf = (file: string) => JSON.parse(readFileSync(inRoot(`examples/${file}.json`), 'utf8'));
const galena = readValue(jsonOf('medium-wave-galena'));
if (!galena.ok) throw new Error('the example does not read');
const { place, ear } = galena.set;

function boxOf(more: object) {
  const read = readBox(JSON.stringify({ ...jsonOf('boxes/beginner'), ...more }));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read;
}

/** The parts of a set, and the length of its tube that two coils end to end take. */
function madeFrom(box: ReturnType<typeof boxOf>['box'], choice: SetChoice) {
  const set = chosenSets(box, { place, ear, wants: [] })(choice);
  const lengths = set.coils.map((coil) => coilModel(coil).windingLength);
  const { arrangement } = set;
  const sum = lengths.reduce((total, length) => total + length, 0);
  const taken = arrangement.kind === 'coupled' ? arrangement.distance + sum / 2 : lengths[0];
  return { set, taken };
}

describe('turns that formers and reels allow', () => {
  it('two coils end to end are no longer than their tube, however far apart', () => {
    const millimetres = (min: number, max: number) => fc.integer({ min, max }).map((n) => `${n} mm`);
    const apartTried = new Set<number | undefined>();
    fc.assert(
      fc.property(
        millimetres(30, 90),
        millimetres(60, 140),
        fc.constantFrom('0.3 mm', '0.5 mm', '0.71 mm'),
        fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
        (diameter, length, size, share) => {
          const { box } = boxOf({
            formers: [{ former: { kind: 'tube', diameter, length } }],
            wires: [{ wire: { size, covering: 'enamel' }, length: '40 m' }],
            limits: { tapEvery: 50, arrangements: ['coupled'] },
          });
          const [back] = backEndsOf(box);
          for (const front of frontEndsOf(box)) {
            const grid = [...eachOf(turnsSpace(box, front).groups(1))];
            const most = Math.max(0, ...grid.map(({ secondTurns = 0 }) => secondTurns));
            const widest = grid.filter(
              ({ secondTurns, turns }, i) => secondTurns === most || grid[i + 1]?.turns !== turns,
            );
            const some = widest[Math.floor(share * widest.length)];
            if (!some) continue;
            apartTried.add(front.apart);
            for (const turns of [some, grid[grid.length - 1]])
              expect(madeFrom(box, { front, back, turns }).taken).toBeLessThanOrEqual(
                (box.formers[0].former as { length: number }).length + 1e-9,
              );
          }
        },
      ),
      { numRuns: 12 },
    );
    expect(apartTried).toEqual(new Set([0.005, 0.02, 0.05]));
  });

  it('the most turns of any former are within the limits of a description', () => {
    const { box } = boxOf({
      formers: [
        { former: { kind: 'frame', side: '10 cm', depth: '300 mm' } },
        { former: { kind: 'frame', outline: 'round', side: '1 cm', depth: '2 m' } },
        { former: { kind: 'rod', diameter: '10 mm', length: '1 m' } },
        { count: 2, former: { kind: 'tube', diameter: '30 mm', length: '2 m' } },
        { former: { kind: 'plate', innerDiameter: '20 mm', outerDiameter: '100 mm', slots: 11 } },
      ],
      wires: [{ wire: { size: '0.2 mm', covering: 'enamel' }, length: '1000 m' }],
      limits: { tapEvery: 50, arrangements: ['tapped', 'frame', 'ferrite rod', 'variometer'] },
    });
    const [back] = backEndsOf(box);
    // A frame too small for the model is left out, and the others stay.
    expect(frontEndsOf(box).map(({ winding }) => winding.former)).not.toContain(1);
    const kinds = new Set<string>();
    for (const front of frontEndsOf(box)) {
      const { winding, second, arrangement } = front;
      const key = [arrangement, winding.former, winding.reel, second?.former, second?.reel].join(' ');
      if (kinds.has(key)) continue;
      kinds.add(key);
      const turns = {
        turns: winding.most,
        ...(second ? { secondTurns: 5 } : {}),
        ...(arrangement === 'tapped' ? { aerialTap: 1 } : {}),
      };
      expect(() => madeFrom(box, { front, back, turns }), key).not.toThrow();
    }
    expect(kinds.size).toBeGreaterThan(3);
  });

  it('the finest grid has every whole turn and tap, and coarser ones some of them', () => {
    const { box } = boxOf({ limits: { tapEvery: 3, arrangements: ['tapped', 'coupled'] } });
    for (const front of frontEndsOf(box)) {
      const space = turnsSpace(box, front);
      const keysOf = (grid: number) => [...eachOf(space.groups(grid))].map((turns) => JSON.stringify(turns));
      const all = new Set(keysOf(0));
      expect(all.size).toBe(space.count);
      for (const grid of [0, 1, 3]) {
        const some = keysOf(grid);
        expect(some.length).toBe(space.size(grid).sets);
        expect(new Set(some).size).toBe(some.length);
        expect(some.every((key) => all.has(key))).toBe(true);
      }
    }
  });
});
