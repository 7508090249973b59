import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import '../../../test/support/fixed-seed.ts';
import { eachOf } from '../../../test/support/each-set-of.ts';
import { readValue } from '../set/read.ts';
import { trialsOf } from '../vary/trial.ts';
import { goalsOf } from '../vary/want-values.ts';
import { backEndsOf, frontEndsOf } from './choices.ts';
import { chosenSets } from './chosen-set.ts';
import { estimators } from './estimate.ts';
import { readBox } from './read-box.ts';
import { turnsSpace } from './turns-space.ts';

/** By which a set may be better or worse than the closed form has it, dB. */
const CLOSE = 1.2;

const textOf = (file: string): string => readFileSync(inRoot(`examples/${file}.json`), 'utf8');
const read = readBox(textOf('boxes/rich'));
const written = JSON.parse(textOf('medium-wave-galena'));
const stations = written.place.stations.map((_: unknown, i: number): number => i);
const at = readValue({
  ...written,
  wants: stations.map((i: number) => ({ kind: 'loudest', station: written.place.stations[i].name })),
});

type Front = ReturnType<typeof frontEndsOf>[number];
const share = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });

/** The sets of a box, one of which is chosen by three shares: its estimate, the bound, and the set itself. */
function setsFrom(from: typeof read) {
  if (!from.ok || !at.ok) throw new Error('an example does not read');
  const { box } = from;
  const { place, ear, wants = [] } = at.set;
  const setOf = chosenSets(box, { place, ear, wants });
  const estimatorOf = estimators({ setOf, goals: goalsOf({ place, wants }), when: {} });
  const backs = backEndsOf(box);
  const chosen = (fronts: readonly Front[], [a, b, c]: readonly [number, number, number]) => {
    const front = fronts[Math.floor(a * fronts.length)];
    const back = backs[Math.floor(b * backs.length)];
    const grid = [...eachOf(turnsSpace(box, front).groups(1))];
    const turns = grid[Math.floor(c * grid.length)];
    const estimator = estimatorOf(front);
    const estimated = new Float64Array(wants.length);
    estimator.wind(turns);
    estimator.worth(back, estimated);
    const bound = new Float64Array(wants.length);
    estimator.bound(back, bound);
    const { now } = trialsOf(setOf({ front, back, turns }));
    return { turns, front, estimated, bound, now };
  };
  return { fronts: frontEndsOf(box), chosen };
}

it('the closed form is within 1.2 dB of the full reception, and its bound never below, for every arrangement with a capacitor', () => {
  const { fronts: all, chosen } = setsFrom(read);
  const kinds = new Map<string, readonly Front[]>();
  for (const front of all) kinds.set(front.arrangement, [...(kinds.get(front.arrangement) ?? []), front]);
  const closed = [...kinds].filter(([kind]) => kind !== 'slider' && kind !== 'variometer');
  expect(closed.map(([kind]) => kind).sort()).toEqual([
    'coupled',
    'direct',
    'ferrite rod',
    'frame',
    'series capacitor',
    'tapped',
  ]);
  let compared = 0;
  fc.assert(
    fc.property(fc.constantFrom(...closed), share, share, share, ([, fronts], a, b, c) => {
      const { turns, front, estimated, bound, now } = chosen(fronts, [a, b, c]);
      for (const [k, station] of stations.entries()) {
        const { within, heard } = now.tuned(station);
        if (!within) continue;
        expect(bound[k], `bound: ${front.arrangement} ${JSON.stringify(turns)}`).toBeGreaterThan(heard.spl);
        if (estimated[k] < -150) continue;
        compared++;
        expect(Math.abs(estimated[k] - heard.spl), `${front.arrangement} ${JSON.stringify(turns)}`).toBeLessThan(CLOSE);
      }
    }),
    { numRuns: 60 },
  );
  expect(compared).toBeGreaterThan(30);
});

/** The rich box, its aerials so long that their own resonance lies in the medium-wave band. */
const longAerials = readBox(
  JSON.stringify({
    ...JSON.parse(textOf('boxes/rich')),
    aerials: [30, 60, 90].map((length) => ({
      label: `${length} m`,
      aerial: { kind: 'inverted-L', height: '12 m', length: `${length} m` },
    })),
  }),
);

it.each([
  ['the aerials of the box', read],
  ['aerials that resonate in the band', longAerials],
])('no set that a coil tunes is ruled out for a station that its dial reaches: %s', (_, from) => {
  const { fronts: all, chosen } = setsFrom(from);
  const fronts = all.filter(({ arrangement }) => arrangement === 'slider' || arrangement === 'variometer');
  let reached = 0;
  fc.assert(
    fc.property(share, share, share, (a, b, c) => {
      const { turns, front, estimated, bound, now } = chosen(fronts, [a, b, c]);
      for (const [k, station] of stations.entries()) {
        const { within, heard } = now.tuned(station);
        const isCounted = estimated[k] > -150;
        const which = `${front.arrangement} ${JSON.stringify(turns)}, station ${k}`;
        // As the full reception has it, a station past the end of the scale is beyond the dial.
        expect(isCounted, which).toBe(within);
        if (!within) continue;
        reached++;
        expect(bound[k], which).toBeGreaterThan(heard.spl);
        expect(Math.abs(estimated[k] - heard.spl), which).toBeLessThan(CLOSE);
      }
    }),
    { numRuns: 150 },
  );
  expect(reached).toBeGreaterThan(50);
});
