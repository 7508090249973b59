import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { variableCapacitor } from '../../src/engine/parts/capacitor/index.ts';
import { dialMarks, dialScale, drawDial, paperAngle } from '../../src/outputs/drawings/index.ts';
import type { Item, Scene } from '../../src/outputs/scene/index.ts';
import { sceneToSvg } from '../../src/outputs/scene/index.ts';
import { expectPicture } from '../support/picture.ts';
import { expectTidy } from '../support/tidy.ts';

const L = 180e-6;
const capacitor = variableCapacitor({ kind: 'variable', maximum: 500e-12, minimum: 15e-12, stray: 20e-12 });
const frequencyAt = (C: number) => 1 / (2 * Math.PI * Math.sqrt(L * C));
const points = Array.from({ length: 61 }, (_, i) => ({
  scale: capacitor.angleAt(i / 60),
  frequency: frequencyAt(capacitor.capacitanceAt(i / 60)),
}));
const stations = [
  ['Fellside Voice', 603],
  ['Radio Corvale', 693],
  ['The Lantern Service', 909],
  ['Tollgate Community', 999],
  ['Northmoor Calling', 1053],
  ['Harbour Light', 1089],
  ['Ferryman’s Hour', 1251],
  ['Quayside', 1458],
].map(([name, k]) => ({ name: name as string, frequency: (k as number) * 1e3 }));
const data = { points, stations };

const faces: Record<string, () => Scene> = {
  round: () => drawDial({ ...data, chosen: 2, pointer: 52 }),
  'round-metres': () => drawDial({ ...data, metres: true, drill: true, width: 180 }),
  blank: () => drawDial({ ...data, blank: true, drill: true }),
  'wide-swing': () =>
    drawDial({
      points: points.map((p) => ({ ...p, scale: p.scale * 1.5 })),
      swing: 270,
      stations,
      turns: 'anticlockwise',
    }),
  straight: () => drawDial({ ...data, shape: 'straight', chosen: 2, pointer: 52, metres: true }),
};

test.each(Object.keys(faces))('dial: %s', async (name) => {
  const scene = faces[name]();
  await expectPicture(sceneToSvg(scene, { colours: 'day' }), `drawings/dial-${name}`);
  expectTidy(scene);
});

/** Angle of a line's far end about the spindle, clockwise from the right, degrees. */
const angleOf = (item: Item, centre: readonly [number, number]) =>
  item.kind === 'line' ? (Math.atan2(item.to[1] - centre[1], item.to[0] - centre[0]) * 180) / Math.PI : Number.NaN;

describe('a mark stands where the engine says', () => {
  test('stations’ marks on the round dial are at the capacitor’s own angles within 0.01°', () => {
    const scene = drawDial(data);
    const spindle = scene.items.find((i) => i.kind === 'circle');
    if (spindle?.kind !== 'circle') throw new Error('no spindle');
    for (const s of stations) {
      const C = 1 / (L * (2 * Math.PI * s.frequency) ** 2);
      const angle = capacitor.angleAt(capacitor.positionFor(C)!);
      const mark = scene.items.find((i) => i.kind === 'line' && i.title?.startsWith(s.name));
      const drawn = angleOf(mark!, spindle.centre);
      const wanted = paperAngle(angle, 180);
      expect(((((drawn - wanted) % 360) + 540) % 360) - 180).toBeCloseTo(0, 2);
    }
  });

  test('between measured readings a kHz mark is within 0.1° of the law, with a reading every 20°', () => {
    const few = { points: points.filter((_, i) => i % 6.6667 < 1 || i === 60) };
    for (const mark of dialMarks(few, ['kHz'])) {
      if (!mark.text) continue;
      const C = 1 / (L * (2 * Math.PI * Number(mark.text) * 1e3) ** 2);
      expect(Math.abs(mark.scale - capacitor.angleAt(capacitor.positionFor(C)!)), mark.text).toBeLessThan(0.1);
    }
  });

  test('there and back', () => {
    const scale = dialScale(data);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 180, noNaN: true }), (s) => {
        expect(scale.scaleAt(scale.frequencyAt(s))).toBeCloseTo(s, 6);
      }),
    );
  });
});
