import { expect, test } from 'vitest';
import { limitedRange, limitedRangeSize } from './limited-range.ts';

/** Two by two pixels of these colours. */
function converted(...colours: readonly (readonly [number, number, number])[]): number[] {
  const rgba = Uint8ClampedArray.from(colours.flatMap((colour) => [...colour, 255]));
  const into = new Uint8Array(limitedRangeSize(2, 2));
  limitedRange(rgba, 2, 2, into);
  return [...into];
}
const all = (colour: readonly [number, number, number]) => converted(colour, colour, colour, colour);

test('colours of the bars of high-definition video come out as their stated levels', () => {
  // ITU-R BT.709 in eight bits, colours at 100 %.
  expect(all([255, 255, 255])).toEqual([235, 235, 235, 235, 128, 128]);
  expect(all([0, 0, 0])).toEqual([16, 16, 16, 16, 128, 128]);
  expect(all([255, 0, 0])).toEqual([63, 63, 63, 63, 102, 240]);
  expect(all([0, 255, 0])).toEqual([173, 173, 173, 173, 42, 26]);
  expect(all([0, 0, 255])).toEqual([32, 32, 32, 32, 240, 118]);
});

test('brightness is each pixel’s own, colour that of four together', () => {
  expect(converted([255, 255, 255], [0, 0, 0], [0, 0, 0], [255, 255, 255])).toEqual([235, 16, 16, 235, 128, 128]);
});
