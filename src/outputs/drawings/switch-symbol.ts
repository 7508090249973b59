import type { BandContacts } from '../../engine/built/band-contacts.ts';
import { circle, line, text } from '../scene/build.ts';
import type { Item, Scene } from '../scene/scene.ts';
import { textWidth } from '../scene/text-width.ts';
import { bandSwitchSheetWords as texts } from '../words/index.ts';

const SIZE = 12;
/** Between ways and between poles, px. */
const WAY = 20;
const GAP = 14;
const ARM = 46;

/**
 * The band switch as a diagram has it: for each pole a moving contact and a fixed one for each band, a dashed line through
 * arms that move together.
 * @param contacts from `bandContacts`
 * @returns a drawing in px; undefined where the bands differ in nothing
 */
export function drawBandSwitch({ bands, standing, poles }: BandContacts): Scene | undefined {
  if (poles.length === 0) return undefined;
  const ways = poles.map((pole) => bands.map((band, i) => texts.wayOnBand(band, pole, i)));
  const widest = (of: readonly string[]): number => Math.max(...of.map((one) => textWidth(one, SIZE)));
  const left = 12 + widest(poles.map((pole) => texts.leads(pole))) + 8;
  const height = bands.length * WAY;
  const items: Item[] = [];
  poles.forEach((pole, k) => {
    const top = 12 + k * (height + GAP);
    const middle = top + height / 2;
    const wayAt = (i: number): number => top + WAY * (i + 0.5);
    items.push(
      text([left - 8, middle + 4], texts.leads(pole), SIZE, { anchor: 'end' }),
      line([left, middle], [left + 14, middle]),
      circle([left + 17, middle], 3),
      line([left + 20, middle], [left + 17 + ARM, wayAt(standing)], { stroke: 'ink', width: 2 }),
    );
    bands.forEach((_, i) => {
      items.push(
        circle([left + 20 + ARM, wayAt(i)], 3),
        line([left + 23 + ARM, wayAt(i)], [left + 40 + ARM, wayAt(i)]),
        text([left + 46 + ARM, wayAt(i) + 4], ways[k][i], SIZE, { bold: i === standing }),
      );
    });
  });
  const last = poles.length - 1;
  const linkAt = (k: number): number => 12 + k * (height + GAP) + (height / 2 + WAY * (standing + 0.5)) / 2;
  if (last > 0)
    items.unshift(
      line([left + 18 + ARM / 2, linkAt(0)], [left + 18 + ARM / 2, linkAt(last)], { stroke: 'ink', dash: [4, 3] }),
    );
  return {
    unit: 'px',
    width: left + 58 + ARM + 1.06 * widest(ways.flat()),
    height: 24 + poles.length * (height + GAP) - GAP,
    title: texts.title,
    description: texts.description(bands, poles.length),
    items,
  };
}
