import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  extentOf,
  holds,
  mapWithin,
  movedMap,
  placeMapNames,
  pointOf,
  ringsFor,
  stretches,
  viewOfAll,
  zoomedMap,
} from './map-view.ts';

const size = { width: 800, height: 450 };
const km = fc.double({ min: -15_000, max: 15_000, noNaN: true });
/** Views that no zoom by two takes to the edge of the world, where they are held. */
const inner = fc.double({ min: -9000, max: 9000, noNaN: true });
const view = fc.record({ x: inner, y: inner, kmPerPixel: fc.double({ min: 0.05, max: 10, noNaN: true }) });
const pixel = fc.tuple(fc.double({ min: 0, max: 800, noNaN: true }), fc.double({ min: 0, max: 450, noNaN: true }));

describe('the view of the map', () => {
  it('keeps the place under the pointer while zooming', () => {
    fc.assert(
      fc.property(view, pixel, fc.double({ min: 0.5, max: 2, noNaN: true }), (from, at, factor) => {
        const to = zoomedMap(from, factor, size, at);
        const under = (v: typeof to) => v.x + (at[0] - 400) * v.kmPerPixel;
        expect(under(to)).toBeCloseTo(under(from), 6);
      }),
    );
  });

  it('moves there and back to where it was', () => {
    fc.assert(
      fc.property(view, (from) => {
        const back = movedMap(movedMap(from, 30, -20, size), -30, 20, size);
        expect(back.x).toBeCloseTo(from.x, 6);
        expect(back.y).toBeCloseTo(from.y, 6);
      }),
    );
  });

  it('shows every station and the site at first, even all in one place', () => {
    const point = fc.tuple(km, km);
    fc.assert(
      fc.property(fc.array(point, { maxLength: 30 }), (points) => {
        const shown = extentOf(viewOfAll(points, size), size, 0);
        for (const [x, y] of [...points, [0, 0] as const]) expect(holds(shown, [x, y, x, y])).toBe(true);
      }),
    );
    expect(viewOfAll([[0, 0]], size).kmPerPixel).toBeGreaterThan(0);
    expect(mapWithin({ x: 1e9, y: 0, kmPerPixel: 1e9 }, size).kmPerPixel).toBeLessThan(200);
  });

  it('puts a station where its distance and bearing say', () => {
    expect(pointOf({ distance: 100e3, bearing: 90 })?.map(Math.round)).toEqual([100, -0]);
    expect(pointOf({ distance: 100e3, bearing: 180 })?.map(Math.round)).toEqual([0, 100]);
    expect(pointOf({ distance: 100e3 })).toBeUndefined();
    const arrival = {
      distance: 100e3,
      bearing: 90,
      sections: [
        { length: 40e3, ground: 'sea' },
        { length: 60e3, ground: 'dry' },
      ],
    };
    const [sea, land] = stretches(arrival as unknown as Parameters<typeof stretches>[0]);
    expect([sea.sea, land.sea]).toEqual([true, false]);
    // Sections begin at the transmitter: 40 km of sea from there leave 60 km to the site.
    expect(sea.to[0]).toBeCloseTo(60, 9);
    expect(land.to[0]).toBeCloseTo(0, 9);
  });

  it('writes no name over another or over the edge', () => {
    fc.assert(
      fc.property(fc.array(pixel, { maxLength: 40 }), (points) => {
        const named = points.map((at, index) => ({ index, name: `Station ${index}`, at }));
        const labels = placeMapNames(named, size, (text) => text.length * 7);
        const boxes = labels.map(({ x, y, anchor, text }) => {
          const left = anchor === 'start' ? x : x - text.length * 7;
          return [left, y - 11, left + text.length * 7, y + 3];
        });
        for (const [i, a] of boxes.entries()) {
          expect(a[0] >= 0 && a[2] <= size.width && a[1] >= 0 && a[3] <= size.height).toBe(true);
          for (const b of boxes.slice(i + 1))
            expect(a[0] < b[2] && a[2] > b[0] && a[1] < b[3] && a[3] > b[1]).toBe(false);
        }
      }),
    );
  });

  it('rings round distances', () => {
    expect(ringsFor({ x: 0, y: 0, kmPerPixel: 4 }, size)).toEqual([500, 1000]);
  });
});

it('a name stands clear of the paths where there is room beside its point', () => {
  const size = { width: 600, height: 400 };
  const [at, site] = [
    [200, 200],
    [400, 200],
  ] as const;
  const one = [{ index: 0, name: 'Elm', at }];
  const place = (lines: Parameters<typeof placeMapNames>[3]) => placeMapNames(one, size, () => 30, lines)[0];
  expect(place([])).toMatchObject({ anchor: 'start', y: 204 });
  expect(place([[at, site]])).toMatchObject({ anchor: 'end', y: 204 });
  // Lines on both sides of the point: above them.
  expect(
    place([
      [at, site],
      [at, [0, 200]],
    ]).y,
  ).toBe(193);
  // Lines everywhere: named all the same.
  const everywhere = Array.from(
    { length: 90 },
    (_, i) =>
      [
        [0, 150 + i],
        [600, 150 + i],
      ] as const,
  );
  expect(place(everywhere)).toMatchObject({ anchor: 'start', y: 204 });
});
