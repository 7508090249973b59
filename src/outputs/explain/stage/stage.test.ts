import { expect, test } from 'vitest';
import { createWaves } from '../model/waves.ts';
import { Columns } from './pixel-columns.ts';
import { scenePen } from './scene-pen.ts';
import { paintStage, paintStagePlayhead, type StageContents } from './stage.ts';

const waves = createWaves({
  carrier: 1e6,
  depth: 0.5,
  programme: { kind: 'tones', tones: [{ frequency: 400, share: 1 }] },
  atAerial: 0.05,
  atTuned: 2,
  atDetector: 1,
  loadedQ: 40,
  neighbours: [],
  detector: 'perfect',
  detectorId: 'perfect',
  load: { resistance: 20e3, capacitance: 1e-9 },
});
const stage: StageContents = {
  width: 800,
  height: 400,
  rows: [{ waves, point: 'programme' }],
  view: { from: 0, span: 1 },
  show: {},
  title: 'What is heard',
  letters: 12,
  density: 1,
};

test('a mark drawn over the stage stands where the whole drawing has it', () => {
  const whole = scenePen();
  paintStage(whole.pen, { ...stage, playhead: 0.25 }, new Columns());
  const over = scenePen();
  paintStage(over.pen, stage, new Columns());
  const without = over.items().length;
  paintStagePlayhead(over.pen, { ...stage, playhead: 0.25 });
  expect(over.items()).toEqual(whole.items());
  expect(over.items().length).toBe(without + 1);
  // A quarter of the way through the view.
  expect(JSON.stringify(over.items().at(-1))).toContain('200');
  paintStagePlayhead(over.pen, { ...stage, playhead: 1.5 });
  expect(over.items().length).toBe(without + 1);
});

test('a row may be higher than the others; together they fill what the usual ones fill', () => {
  const heightsWith = (heights: readonly (number | undefined)[]): number[] => {
    const scene = scenePen();
    const rows = heights.map((height) => ({ waves, point: 'programme' as const, height }));
    paintStage(scene.pen, { ...stage, rows }, new Columns());
    return scene.items().flatMap((item) => ('clip' in item && item.clip ? [item.clip.h] : []));
  };
  const usual = heightsWith([undefined, 1, undefined]);
  expect(usual).toHaveLength(3);
  const [high, low] = heightsWith([2, undefined]);
  expect(high / low).toBeCloseTo(2, 9);
  expect(high + low).toBeCloseTo(3 * usual[0], 9);
});
