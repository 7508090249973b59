import { describe, expect, test } from 'vitest';
import {
  banks,
  bareEnd,
  basketWeave,
  cheeksOn,
  endHoles,
  layers,
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
  windingOn,
  wiresInNotches,
} from '../../src/outputs/drawings/winding/index.ts';
import { itemBox, overlap, textBox } from '../../src/outputs/scene/boxes.ts';
import type { Scene } from '../../src/outputs/scene/scene.ts';

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
