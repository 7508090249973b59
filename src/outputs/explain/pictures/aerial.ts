import { pictureTexts } from '../../words/index.ts';
import type { Pen } from '../stage/pen.ts';
import { type MovingPicture, type PictureBox, type PictureFacts, stationName } from './facts.ts';

const CYCLE = 3;
const texts = () => pictureTexts.aerial;

const factsOf = (facts: PictureFacts) => ({
  loop: facts.loop,
  station: stationName(facts),
  carrier: facts.waves.spec.carrier,
  emf: facts.waves.spec.atAerial,
  aerial: facts.aerial,
});

export const aerialPicture: MovingPicture = {
  id: 'aerial',
  title: () => texts().title,
  about: (facts) => texts().about(factsOf(facts)),
  description: (facts) => texts().description(factsOf(facts)),
  speed: ({ waves }) => pictureTexts.slowMotion(CYCLE * waves.spec.carrier),
  seconds: () => 4 * CYCLE,
  still: () => 0.2 * CYCLE,
  paint(pen, { loop }, seconds, box, letters) {
    const phase = (2 * Math.PI * seconds) / CYCLE;
    const place = placeIn(box);
    wireAndSet(pen, box, place, letters);
    chargesAndField(pen, place, Math.sin(phase));
    currentInLead(pen, box, place, Math.cos(phase));
    const { left, right, high, ground } = place;
    pen.text(right, ground + letters * 2.2, texts().ground, letters, { role: 'ink', anchor: 'end' });
    pen.text((left + right) / 2, high - letters * 2, loop ? texts().comparison : texts().wire, letters, {
      role: 'soft',
      anchor: 'middle',
    });
  },
};

/** Where things are in the picture. */
function placeIn(box: PictureBox) {
  const ground = box.y + box.h * 0.82;
  const left = box.x + box.w * 0.14;
  const right = box.x + box.w * 0.86;
  return {
    ground,
    high: box.y + box.h * 0.16,
    left,
    right,
    lead: left + (right - left) * 0.08,
    set: ground - box.h * 0.12,
  };
}
type Place = ReturnType<typeof placeIn>;

function wireAndSet(pen: Pen, box: PictureBox, { ground, high, left, right, lead, set }: Place, letters: number): void {
  pen.rect(box.x, ground, box.w, box.y + box.h - ground, 'soil');
  pen.line(box.x, ground, box.x + box.w, ground, 'ink', 2);
  pen.line(left, high, right, high, 'copper', 4);
  pen.line(left, ground, left, high - 10, 'soft', 3);
  pen.line(right, ground, right, high - 10, 'soft', 3);
  pen.line(lead, high, lead, set, 'copper', 3);
  pen.rect(lead - 22, set, 44, box.h * 0.07, 'card', 1, 4);
  pen.polyline(
    [lead - 22, lead + 22, lead + 22, lead - 22, lead - 22],
    [set, set, set + box.h * 0.07, set + box.h * 0.07, set],
    5,
    'ink',
    2,
  );
  pen.text(lead, set + box.h * 0.045, texts().set, letters, { anchor: 'middle' });
  pen.line(lead, set + box.h * 0.07, lead, ground + 20, 'copper', 3);
}

function chargesAndField(pen: Pen, { ground, high, left, right }: Place, charge: number): void {
  const n = 13;
  for (let k = 0; k < n; k++) {
    const x = left + (right - left) * (0.16 + (0.8 * k) / (n - 1));
    const sign = charge > 0;
    const r = 5;
    for (const [y, plus] of [
      [high - 12, sign],
      [ground + 12, !sign],
    ] as const) {
      pen.line(x - r, y, x + r, y, plus ? 'warning' : 'accent', 2, Math.abs(charge));
      if (plus) pen.line(x, y - r, x, y + r, 'warning', 2, Math.abs(charge));
    }
    // A line of the field between wire and ground.
    if (k % 2 === 0) {
      pen.line(x, high + 6, x, ground - 4, 'accent', 1.5, Math.abs(charge) * 0.6);
      const tip = charge > 0 ? ground - 6 : high + 8;
      const d = charge > 0 ? -9 : 9;
      pen.polygon([x, x - 5, x + 5], [tip, tip + d, tip + d], 3, 'accent', Math.abs(charge) * 0.6);
    }
  }
}

function currentInLead(pen: Pen, box: PictureBox, { high, lead, set }: Place, current: number): void {
  const length = current * box.h * 0.16;
  if (Math.abs(length) > 3) {
    const y = (high + set) / 2;
    pen.line(lead + 14, y + length / 2, lead + 14, y - length / 2, 'copper', 4);
    const d = Math.sign(length) * 10;
    pen.polygon([lead + 14, lead + 7, lead + 21], [y - length / 2 - d, y - length / 2, y - length / 2], 3, 'copper');
  }
}
