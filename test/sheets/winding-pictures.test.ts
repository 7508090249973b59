import { describe, expect, test } from 'vitest';
import type { TuningDescription } from '../../src/engine/kinds/tunings/tuning-schema.ts';
import {
  blockDrilled,
  bookFromSide,
  cardPushedIn,
  crystalDetector,
  crystalInCup,
  foilLayers,
  foilOnBase,
  heaterLeads,
  holderFromBelow,
  innerTubeWrapped,
  jointOnPin,
  leadsBent,
  leavesOpened,
  pliersOnLead,
  sheetOnBoard,
  tabClamped,
  terminalMounted,
  tubeLayers,
  tubesInCradle,
  vaneMidway,
  vanesStacked,
  whiskerWound,
  wireUnderScrew,
} from '../../src/outputs/drawings/making/index.ts';
import {
  banks,
  bareEnd,
  basketWeave,
  cheeksOn,
  endHoles,
  lathsCrossed,
  layers,
  oneTurnClamped,
  pileEnd,
  pileStart,
  pileTap,
  ringWound,
  rodInPlace,
  rodStart,
  sleeveOnRod,
  spiderWeave,
  spiralOutward,
  startHoles,
  tapMade,
  turnsOnHoop,
  windingOn,
  wiresInNotches,
} from '../../src/outputs/drawings/winding/index.ts';
import { itemBox, overlap, textBox } from '../../src/outputs/scene/boxes.ts';
import type { Scene } from '../../src/outputs/scene/scene.ts';

type Tuning<K extends TuningDescription['kind']> = Extract<TuningDescription, { kind: K }>;
const foil = (more: Partial<Tuning<'foil'>>): Tuning<'foil'> =>
  ({ kind: 'foil', length: 0.09, width: 0.04, sheets: 2, dielectric: 'paper', ...more }) as Tuning<'foil'>;
const tubes = (more: Partial<Tuning<'tubes'>>): Tuning<'tubes'> =>
  ({ kind: 'tubes', length: 0.16, innerDiameter: 0.022, gap: 2e-4, dielectric: 'paper', ...more }) as Tuning<'tubes'>;
const book = (more: Partial<Tuning<'book'>>): Tuning<'book'> =>
  ({ kind: 'book', length: 0.12, width: 0.1, dielectric: 'paper', ...more }) as Tuning<'book'>;
const FOIL = { joint: 0.025, edge: 0.005, guide: 0.012, tab: 0.014, handle: 0.03 };
const LEAF = { hinge: 0.003, edge: 0.005, tab: 0.014 };

const HOLES = { apart: 0.003, fromEnd: 0.004 };
const PICTURES: Readonly<Record<string, Scene>> = {
  start: startHoles({ ...HOLES, begins: 0.008 }),
  'wound close': windingOn(),
  'with a thread': windingOn(0.0003),
  'one tap': tapMade([30]),
  'many taps': tapMade([5, 10, 15, 20, 25, 30]),
  end: endHoles(HOLES),
  'bare end': bareEnd(0.01),
  'two banks': banks(2),
  'four banks': banks(4),
  cheeks: cheeksOn({ length: 0.0197, fromEnd: 0.006 }),
  'start of a pile': pileStart(HOLES),
  'layers with paper': layers(4, true),
  'one layer': layers(1, false),
  'tap of a pile': pileTap([45], 'start'),
  'tap of a pile to the other cheek': pileTap([145], 'other'),
  'end at the start': pileEnd(true),
  'end at the other cheek': pileEnd(false),
  'close spiral': spiralOutward(true),
  'open spiral': spiralOutward(false),
  spider: spiderWeave(1),
  'spider, two by two': spiderWeave(2),
  basket: basketWeave(2),
  ring: ringWound(),
  'sleeve on a rod': sleeveOnRod(),
  'start on a rod': rodStart(0.12),
  'start on a rod, with a thread': rodStart(0.12, 0.0003),
  'in the middle of a rod': rodInPlace(0.1, true),
  'towards the end of a rod': rodInPlace(0.05, false),
  'notches of a frame’s comb': wiresInNotches('comb'),
  'notches of a frame’s lath': wiresInNotches('lath'),
  'laths of a square': lathsCrossed(false),
  'laths in a hoop': lathsCrossed(true),
  'two turns on a hoop': turnsOnHoop(2, 0.006),
  'many turns on a hoop': turnsOnHoop(20, 0.012),
  'a single turn': oneTurnClamped(),
  'a foil on its base': foilOnBase(foil({}), FOIL),
  'a small foil in air on its base': foilOnBase(foil({ length: 0.02, width: 0.02, dielectric: 'air' }), FOIL),
  'a long foil on its base': foilOnBase(foil({ length: 0.5, width: 0.05 }), FOIL),
  'a wide foil on its base': foilOnBase(foil({ length: 0.05, width: 0.4 }), FOIL),
  'a card pushed in': cardPushedIn(foil({}), FOIL),
  'a small card pushed in': cardPushedIn(foil({ length: 0.02, width: 0.02 }), FOIL),
  'a long card pushed in': cardPushedIn(foil({ length: 0.5, width: 0.05 }), FOIL),
  'two foils': foilLayers(foil({})),
  'a pile of foils': foilLayers(foil({ sheets: 7 })),
  'a pile of plates': foilLayers(foil({ sheets: 3, dielectric: 'air' })),
  'a tab clamped': tabClamped(),
  'an inner tube': innerTubeWrapped(tubes({}), { edge: 0.005, hand: 0.08 }),
  'a short wide inner tube': innerTubeWrapped(tubes({ length: 0.05, innerDiameter: 0.06 }), {
    edge: 0.005,
    hand: 0.08,
  }),
  'an inner tube in air': innerTubeWrapped(tubes({ dielectric: 'air' }), { edge: 0.005, hand: 0.08 }),
  'layers of tubes': tubeLayers(tubes({})),
  'layers of tubes in air': tubeLayers(tubes({ dielectric: 'air' })),
  'tubes in their cradle': tubesInCradle(0.16),
  'leaves opened': leavesOpened(book({}), LEAF),
  'small leaves in air': leavesOpened(book({ length: 0.04, width: 0.03, dielectric: 'air' }), LEAF),
  'wide leaves': leavesOpened(book({ length: 0.1, width: 0.4 }), LEAF),
  'a book from the side': bookFromSide(),
  'vanes stacked': vanesStacked(),
  'a vane midway': vaneMidway(0.0006),
  'a block drilled': blockDrilled({ length: 0.058, width: 0.026, apart: 0.044, hole: 0.0032 }),
  'a crystal in its cup': crystalInCup(),
  'a whisker': whiskerWound(),
  'a detector with a whisker': crystalDetector(false),
  'a detector of two crystals': crystalDetector(true),
  'leads bent': leadsBent(0.028, 0.005),
  'pliers on a lead': pliersOnLead(),
  'a holder from below': holderFromBelow(),
  'heater leads': heaterLeads(),
  'a sheet on its board': sheetOnBoard(),
  'a terminal': terminalMounted(),
  'a wire under a screw': wireUnderScrew(),
  'joints on pins': jointOnPin(),
};

describe.each(Object.entries(PICTURES))(
  'the picture of a step: %s',
  (_, { items, width, height, title, description }) => {
    const words = items.filter((item) => item.kind === 'text');

    test('lies within its box', () => {
      for (const item of items) {
        const { x, y, w, h } = itemBox(item);
        expect([x >= -0.1, y >= -0.1, x + w <= width + 0.1, y + h <= height + 0.1], JSON.stringify(item)).toEqual([
          true,
          true,
          true,
          true,
        ]);
      }
    });

    test('has words that can be read on paper and do not run into one another', () => {
      for (const [i, item] of words.entries()) {
        expect(item.size).toBeGreaterThanOrEqual(3);
        for (const other of words.slice(i + 1)) expect(overlap(textBox(item), textBox(other)), other.text).toBe(false);
      }
    });

    test('is told in words for who cannot see it', () => {
      expect(title).not.toBe('');
      for (const { text } of words) expect(description).toContain(text);
    });
  },
);

test('turns of banks are numbered in the order of winding, each once, on turns that lie already', () => {
  const turns = banks(3).items.flatMap((item) =>
    item.kind === 'text' && /^\d+$/.test(item.text) ? [{ number: Number(item.text), at: item.at }] : [],
  );
  expect(turns.map(({ number }) => number)).toEqual(turns.map((_, i) => i + 1));
  const floor = Math.max(...turns.map(({ at }) => at[1]));
  for (const { at, number } of turns) {
    if (at[1] > floor - 0.1) continue;
    const below = turns.filter((one) => one.number < number && one.at[1] > at[1] && Math.abs(one.at[0] - at[0]) < 2.5);
    expect(below.length, `turn ${number}`).toBeGreaterThanOrEqual(1);
  }
});

test('pictures to scale say at which, and their sizes follow it', () => {
  const picture = foilOnBase(foil({ length: 0.1, width: 0.05 }), FOIL);
  const widths = picture.items.flatMap((item) => (item.kind === 'rect' ? [item.w] : []));
  expect(picture.drawnAt).toBeDefined();
  // The base: twice the foil, the joint and 10 mm.
  expect(Math.max(...widths) / picture.drawnAt!).toBeCloseTo(235, 6);
  expect(widths.some((w) => Math.abs(w / picture.drawnAt! - 100) < 1e-6)).toBe(true);
});
