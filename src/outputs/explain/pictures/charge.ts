import { textWidth } from '../../scene/text-width.ts';
import { pictureTexts } from '../../words/index.ts';
import type { Waves } from '../model/waves.ts';
import type { Pen } from '../stage/pen.ts';
import type { MovingPicture, PictureBox, PictureFacts } from './facts.ts';

const CYCLE = 2.4;
/** Cycles of the carrier that run by before it begins again. */
const CYCLES = 8;
const texts = () => pictureTexts.charge;

function factsOf({ waves }: PictureFacts) {
  const { load, carrier, atDetector } = waves.spec;
  const min = new Float64Array(1);
  const max = new Float64Array(1);
  waves.extent('phones', 0, CYCLES / carrier, 1, min, max);
  return {
    capacitance: load.capacitance,
    resistance: load.resistance,
    inductive: (load.inductance ?? 0) > 0,
    cycle: 1 / carrier,
    detectorVoltage: atDetector,
    least: min[0],
    greatest: max[0],
  };
}

export const chargePicture: MovingPicture = {
  id: 'charge',
  title: () => texts().title,
  about: (facts) => texts().about(factsOf(facts)),
  description: (facts) => texts().description(factsOf(facts)),
  speed: ({ waves }) => pictureTexts.slowMotion(CYCLE * waves.spec.carrier),
  seconds: () => CYCLE * CYCLES,
  still: () => 5.93 * CYCLE,
  paint(pen, { waves }, seconds, box, letters) {
    const now = seconds / CYCLE / waves.spec.carrier;
    const scale = scaleIn(waves, box, letters);
    carrierAndKept(pen, waves, now, box, scale, letters);
    vessel(pen, waves, now, box, scale, letters);
  },
};

/** Heights of the picture, and the range of voltage between them. */
function scaleIn(waves: Waves, box: PictureBox, letters: number) {
  const { atDetector, atTuned } = waves.spec;
  const kept = waves.scale('phones');
  return {
    roof: box.y + letters * 2,
    floor: box.y + box.h - letters * 2.4,
    low: Math.min(kept.low, -0.25 * atDetector),
    high: Math.max(waves.scale('tuned').high * (atDetector / atTuned), kept.high),
  };
}
type Scale = ReturnType<typeof scaleIn>;

/** The carrier at the detector, and over it the voltage of the capacitor, up to now. */
function carrierAndKept(pen: Pen, waves: Waves, now: number, box: PictureBox, scale: Scale, letters: number): void {
  const { carrier, atDetector } = waves.spec;
  const span = 5 / carrier;
  const left = box.x + letters;
  const wide = box.w * 0.6 - letters;
  const { roof, floor, low, high } = scale;
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
  pen.text(left, roof - letters * 0.6, texts().carrier, letters, { role: 'copper' });
  const beside = left + textWidth(texts().carrier, letters) + letters;
  pen.text(beside, roof - letters * 0.6, texts().kept, letters, { role: 'accent' });
  pen.text(left + letters * 0.2, y(0) - letters * 0.3, '0', letters * 0.92, { role: 'soft', rim: true });
  pen.text(
    left,
    floor + letters * 1.6,
    box.w > 40 * letters ? texts().nowOnCapacitor(v) : texts().now(v),
    letters * 1.15,
    {
      bold: true,
    },
  );
}

/** The capacitor as a vessel: filled while the carrier stands above it, emptied all the time. */
function vessel(
  pen: Pen,
  waves: Waves,
  now: number,
  box: PictureBox,
  { roof, floor, high }: Scale,
  letters: number,
): void {
  const period = 1 / waves.spec.carrier;
  const v = waves.at('phones', now);
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
    pen.text(cx, top + letters * 1.5, texts().charging, letters, { role: 'copper', anchor: 'middle', rim: true });
  }
  const drain = Math.max(0, v / high);
  pen.line(cx + w / 2, bottom - 8, cx + w / 2 + 14 + 40 * drain, bottom - 8, 'accent', 5);
  pen.polygon(
    [cx + w / 2 + 26 + 40 * drain, cx + w / 2 + 12 + 40 * drain, cx + w / 2 + 12 + 40 * drain],
    [bottom - 8, bottom - 16, bottom],
    3,
    'accent',
  );
  pen.text(cx, floor + letters * 1.6, texts().discharging, letters, { role: 'soft', anchor: 'middle' });
}
