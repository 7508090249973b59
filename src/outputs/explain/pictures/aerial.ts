import { formatQuantity } from '../../../engine/units/format.ts';
import { type MovingPicture, slowedText, timesASecond } from './facts.ts';

const CYCLE = 3;

export const aerial: MovingPicture = {
  id: 'aerial',
  title: 'The aerial is one plate of a capacitor, the ground the other',
  about({ aerial: a, loop, waves, stations }) {
    const { carrier, atAerial } = waves.spec;
    const name = stations.find((s) => Math.abs(s.frequency - carrier) < 100)?.name;
    const volts = formatQuantity(atAerial, 'voltage', 2);
    if (loop)
      return `A wire aerial, for comparison. This set’s ${loop} is a coil: ${name ? `${name}’s` : 'the'} magnetic field through its turns pushes with ${volts}.`;
    if (!a)
      return `The wave’s field pushes charge up and down the wire ${timesASecond(carrier)}; here it amounts to ${volts}.`;
    return `The wire and the ground below it make ${formatQuantity(a.capacitance, 'capacitance', 3)}. It acts as if it were ${formatQuantity(a.effectiveHeight, 'length', 2)} high; ${name ? `${name}’s` : 'the'} field over that height pushes with ${volts}, and charge flows through the set to and fro.`;
  },
  moves({ loop, waves }) {
    const wire = loop ? 'A wire aerial, as other sets have,' : 'The wire';
    return `${wire} is stretched over the ground, with the set between them. Signs of plus and minus gather on wire and ground and change places ${timesASecond(waves.spec.carrier)}: while the wire is plus the ground is minus, and lines of the field run between them. An arrow in the lead-in shows the charge going up and down through the set, fastest at the moment when wire and ground hold none.`;
  },
  slowed: ({ waves }) => slowedText(CYCLE * waves.spec.carrier),
  seconds: () => 4 * CYCLE,
  still: () => 0.2 * CYCLE,
  paint(pen, { loop }, seconds, box, letters) {
    const phase = (2 * Math.PI * seconds) / CYCLE;
    const charge = Math.sin(phase);
    const current = Math.cos(phase);
    const ground = box.y + box.h * 0.82;
    const high = box.y + box.h * 0.16;
    const left = box.x + box.w * 0.14;
    const right = box.x + box.w * 0.86;
    pen.rect(box.x, ground, box.w, box.y + box.h - ground, 'soil');
    pen.line(box.x, ground, box.x + box.w, ground, 'ink', 2);
    pen.line(left, high, right, high, 'copper', 4);
    pen.line(left, ground, left, high - 10, 'soft', 3);
    pen.line(right, ground, right, high - 10, 'soft', 3);
    const lead = left + (right - left) * 0.08;
    const set = ground - box.h * 0.12;
    pen.line(lead, high, lead, set, 'copper', 3);
    pen.rect(lead - 22, set, 44, box.h * 0.07, 'card', 1, 4);
    pen.polyline(
      [lead - 22, lead + 22, lead + 22, lead - 22, lead - 22],
      [set, set, set + box.h * 0.07, set + box.h * 0.07, set],
      5,
      'ink',
      2,
    );
    pen.text(lead, set + box.h * 0.045, 'set', letters, { anchor: 'middle' });
    pen.line(lead, set + box.h * 0.07, lead, ground + 20, 'copper', 3);
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
    const length = current * box.h * 0.16;
    if (Math.abs(length) > 3) {
      const y = (high + set) / 2;
      pen.line(lead + 14, y + length / 2, lead + 14, y - length / 2, 'copper', 4);
      const d = Math.sign(length) * 10;
      pen.polygon([lead + 14, lead + 7, lead + 21], [y - length / 2 - d, y - length / 2, y - length / 2], 3, 'copper');
    }
    pen.text(right, ground + letters * 2.2, 'ground: the other plate', letters, { role: 'ink', anchor: 'end' });
    pen.text(
      (left + right) / 2,
      high - letters * 2,
      loop ? 'a wire aerial, as other sets have' : 'wire: one plate',
      letters,
      { role: 'soft', anchor: 'middle' },
    );
  },
};
