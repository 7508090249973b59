import { formatQuantity } from '../../../engine/units/format.ts';
import { textWidth } from '../../scene/text-width.ts';
import { type MovingPicture, slowedText } from './facts.ts';

const CYCLE = 2.4;
/** Cycles of the carrier that run by before it begins again. */
const CYCLES = 8;

export const charge: MovingPicture = {
  id: 'charge',
  title: 'The charge on the load capacitor',
  about({ waves }) {
    const { load, carrier } = waves.spec;
    const cycle = 1 / carrier;
    return `At each crest the detector pours a gulp into ${formatQuantity(load.capacitance, 'capacitance', 3)}; between crests the load (${formatQuantity(load.resistance, 'resistance', 2)} for direct current) drains it. One cycle lasts ${formatQuantity(cycle, 'time', 3)}; by the resistance alone the capacitor would empty in about ${formatQuantity(load.resistance * load.capacitance, 'time', 2)}${load.inductance ? ', but the windings of the phones do not let their current change so fast: far less goes in a cycle' : ''}.`;
  },
  moves({ waves }) {
    const { carrier, atDetector } = waves.spec;
    const kept = { min: new Float64Array(1), max: new Float64Array(1) };
    waves.extent('phones', 0, 8 / carrier, 1, kept.min, kept.max);
    const volts = (v: number) => formatQuantity(v, 'voltage', 2);
    return `The carrier at the detector (${volts(atDetector)} while nobody speaks, more at the loudest) swings up and down, five cycles of it in sight, and over it lies a line, the voltage the capacitor keeps. Where a crest comes up to the line, the line steps up a little; between crests it sinks. Where the programme is loudest it lies between ${volts(kept.min[0])} and ${volts(kept.max[0])}. Beside it a vessel stands as full as the capacitor: an arrow at its top for each gulp, a stream from its foot all the time.`;
  },
  slowed: ({ waves }) => slowedText(CYCLE * waves.spec.carrier),
  seconds: () => CYCLE * CYCLES,
  still: () => 5.93 * CYCLE,
  paint(pen, { waves }, seconds, box, letters) {
    const { carrier, atDetector } = waves.spec;
    const period = 1 / carrier;
    const now = (seconds / CYCLE) * period;
    const span = 5 * period;
    const left = box.x + letters;
    const wide = box.w * 0.6 - letters;
    const roof = box.y + letters * 2;
    const floor = box.y + box.h - letters * 2.4;
    const low = Math.min(waves.scale('phones').low, -0.25 * atDetector);
    const high = Math.max(waves.scale('tuned').high * (atDetector / waves.spec.atTuned), waves.scale('phones').high);
    const y = (v: number) => floor - ((v - low) / (high - low)) * (floor - roof);
    const n = 300;
    const xs: number[] = [];
    const drive: number[] = [];
    const kept: number[] = [];
    const factor = atDetector / waves.spec.atTuned;
    for (let k = 0; k <= n; k++) {
      const t = now - span + (span * k) / n;
      xs.push(left + (wide * k) / n);
      drive.push(y(factor * waves.at('tuned', t)));
      kept.push(y(waves.at('phones', t)));
    }
    pen.line(left, y(0), left + wide, y(0), 'soft', 1);
    // What lies far below does nothing here.
    pen.clip(left, box.y, wide + 2, floor - box.y);
    pen.polyline(xs, drive, xs.length, 'copper', 1.6, 0.7);
    pen.unclip();
    pen.polyline(xs, kept, xs.length, 'accent', 3);
    const v = waves.at('phones', now);
    pen.circle(left + wide, y(v), letters * 0.45, { fill: 'accent' });
    pen.text(left, roof - letters * 0.6, 'carrier at the detector', letters, { role: 'copper' });
    const beside = left + textWidth('carrier at the detector', letters) + letters;
    pen.text(beside, roof - letters * 0.6, 'kept by the capacitor', letters, { role: 'accent' });
    pen.text(left + letters * 0.2, y(0) - letters * 0.3, '0', letters * 0.92, { role: 'soft', rim: true });
    pen.text(
      left,
      floor + letters * 1.6,
      `${formatQuantity(v, 'voltage', 2)} ${box.w > 40 * letters ? 'on the capacitor now' : 'now'}`,
      letters * 1.15,
      {
        bold: true,
      },
    );

    // The capacitor as a vessel, a gulp coming in while the carrier stands above it, a steady drain out.
    const cx = box.x + box.w * 0.8;
    const w = Math.min(box.w * 0.16, 130);
    const top = roof + letters;
    const bottom = floor - letters;
    const level = Math.max(0, Math.min(1, v / high));
    pen.rect(cx - w / 2, bottom - level * (bottom - top), w, level * (bottom - top), 'accent', 0.35);
    pen.line(cx - w / 2, top, cx - w / 2, bottom, 'ink', 4);
    pen.line(cx + w / 2, top, cx + w / 2, bottom, 'ink', 4);
    pen.line(cx - w / 2, bottom, cx + w / 2, bottom, 'ink', 2);
    const rising = waves.at('phones', now + period / 400) - waves.at('phones', now - period / 400);
    if (rising > 0) {
      pen.polygon([cx - 9, cx + 9, cx], [top - 16, top - 16, top], 3, 'copper');
      pen.line(cx, top - 34, cx, top - 12, 'copper', 5);
      pen.text(cx, top + letters * 1.5, 'a gulp', letters, { role: 'copper', anchor: 'middle', rim: true });
    }
    const drain = Math.max(0, v / high);
    pen.line(cx + w / 2, bottom - 8, cx + w / 2 + 14 + 40 * drain, bottom - 8, 'accent', 5);
    pen.polygon(
      [cx + w / 2 + 26 + 40 * drain, cx + w / 2 + 12 + 40 * drain, cx + w / 2 + 12 + 40 * drain],
      [bottom - 8, bottom - 16, bottom],
      3,
      'accent',
    );
    pen.text(cx, floor + letters * 1.6, 'drained all the time', letters, { role: 'soft', anchor: 'middle' });
  },
};
