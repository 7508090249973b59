import { pictureTexts } from '../../words/index.ts';
import type { Pen } from '../stage/pen.ts';
import type { MovingPicture, PictureBox, PictureFacts } from './facts.ts';

/** Seconds on the screen, driven and left alone together. */
const LENGTH = 16;

/** Swings drawn while driven: more in that time no eye follows. */
const MOST_DRAWN = 8;

/** Cycles of the carrier that one swing drawn stands for: a high Q builds up over more of them, in no more time here. */
const cyclesPerSwing = (q: number): number => Math.max(1, Math.ceil((0.8 * q) / MOST_DRAWN));

/** Cycles driven, then left alone: 0.8·Q, enough to reach 92 % whatever the Q; whole swings. */
const cyclesOf = (q: number): number => {
  const each = cyclesPerSwing(q);
  return each * Math.max(MOST_DRAWN - 2, Math.round((0.8 * q) / each));
};

/** Seconds on the screen for one cycle of the carrier. */
const cycleOf = (q: number): number => LENGTH / (2 * cyclesOf(q));

/**
 * Amplitude after n cycles: 1 − exp(−πn/Q) while driven on tune, exp(−πn/Q) left alone. Textbook: energy falls by 2π/Q
 * of itself in a cycle.
 */
export function swingAmplitude(q: number, cycles: number): number {
  const half = cyclesOf(q);
  const end = 1 - Math.exp((-Math.PI * half) / q);
  return cycles <= half ? 1 - Math.exp((-Math.PI * cycles) / q) : end * Math.exp((-Math.PI * (cycles - half)) / q);
}

const texts = () => pictureTexts.swing;

function factsOf({ waves: { spec } }: PictureFacts) {
  const cycles = cyclesOf(spec.loadedQ);
  return {
    carrier: spec.carrier,
    loadedQ: spec.loadedQ,
    cycles,
    reached: swingAmplitude(spec.loadedQ, cycles),
    cyclesPerSwing: cyclesPerSwing(spec.loadedQ),
  };
}

export const swingPicture: MovingPicture = {
  id: 'swing',
  title: () => texts().title,
  about: (facts) => texts().about(factsOf(facts)),
  description: (facts) => texts().description(factsOf(facts)),
  speed: ({ waves: { spec } }) => texts().speed(cycleOf(spec.loadedQ) * spec.carrier, cyclesPerSwing(spec.loadedQ)),
  seconds: () => LENGTH,
  still: ({ waves }) => {
    const q = waves.spec.loadedQ;
    const each = cyclesPerSwing(q);
    return (Math.round((cyclesOf(q) * 0.6) / each) + 0.13) * each * cycleOf(q);
  },
  paint(pen, facts, seconds, box, letters) {
    const q = facts.waves.spec.loadedQ;
    const half = cyclesOf(q);
    const n = (seconds / cycleOf(q)) % (2 * half);
    const size = swingAmplitude(q, n);
    const swings = n / cyclesPerSwing(q);
    const angle = 2 * Math.PI * swings;
    const charge = size * Math.cos(angle);
    const current = -size * Math.sin(angle);
    const top = { x: box.x, y: box.y, w: box.w, h: box.h * 0.66 };
    circuit(pen, { ...top, w: top.w * 0.58 }, charge, current, letters);
    pendulum(pen, { ...top, x: top.x + top.w * 0.6, w: top.w * 0.4 }, charge, n < half, swings, letters);
    history(pen, { x: box.x, y: box.y + box.h * 0.68, w: box.w, h: box.h * 0.32 }, facts, n, half, letters);
  },
};

/** Where things are in the drawing of the circuit; u is its unit of length. */
function placeIn(box: PictureBox) {
  const u = Math.min(box.w / 10, box.h / 7);
  const cx = box.x + box.w / 2;
  const cy = box.y + box.h / 2;
  return { u, cx, cy, left: cx - 3 * u, right: cx + 3 * u, high: cy - 2.3 * u, low: cy + 2.3 * u };
}
type Place = ReturnType<typeof placeIn>;

function circuit(pen: Pen, box: PictureBox, charge: number, current: number, letters: number): void {
  const place = placeIn(box);
  const { u, cy, left, right, high, low } = place;
  pen.polyline([left, left, right, right], [cy - 1.4 * u, high, high, cy - 0.3 * u], 4, 'ink', 2);
  pen.polyline([left, left, right, right], [cy + 1.4 * u, low, low, cy + 0.3 * u], 4, 'ink', 2);
  coil(pen, place, Math.abs(current));
  capacitor(pen, place, charge);
  currentArrows(pen, place, current);
  const roomy = box.w > 28 * letters;
  const under = low + 1.5 * letters;
  pen.text(left, under, roomy ? texts().magnetic : texts().coil, letters, { role: 'soft', anchor: 'middle' });
  pen.text(right, under, roomy ? texts().electric : texts().capacitor, letters, { role: 'soft', anchor: 'middle' });
  energyBar(pen, box, place, charge, current, letters);
}

/** At the left; its field grows with the current. */
function coil(pen: Pen, { u, cy, left }: Place, field: number): void {
  for (let k = 1; k <= 3; k++) {
    const xs: number[] = [];
    const ys: number[] = [];
    for (let j = 0; j <= 40; j++) {
      const a = (j / 40) * 2 * Math.PI;
      xs.push(left + (0.55 + 0.55 * k) * u * Math.cos(a) * 0.8);
      ys.push(cy + (1.2 + 0.45 * k) * u * Math.sin(a));
    }
    pen.polyline(xs, ys, xs.length, 'accent', 2, field * field * (1.1 - 0.2 * k));
  }
  const xs: number[] = [];
  const ys: number[] = [];
  for (let j = 0; j <= 120; j++) {
    const t = j / 120;
    xs.push(left + 0.45 * u * Math.sin(t * 2 * Math.PI * 6));
    ys.push(cy - 1.4 * u + 2.8 * u * t);
  }
  pen.polyline(xs, ys, xs.length, 'copper', 3);
}

/** At the right, its plates filling with charge of either sign. */
function capacitor(pen: Pen, { u, cy, right }: Place, charge: number): void {
  for (const side of [-1, 1]) {
    const y = cy + side * 0.3 * u;
    pen.line(right - 1.1 * u, y, right + 1.1 * u, y, 'ink', 4);
    const sign = charge * -side;
    for (let k = -3; k <= 3; k++) {
      const x = right + k * 0.32 * u;
      const yy = y + side * 0.32 * u;
      const look = { opacity: Math.abs(charge) };
      const r = 0.1 * u;
      pen.line(x - r, yy, x + r, yy, sign > 0 ? 'warning' : 'accent', 2, look.opacity);
      if (sign > 0) pen.line(x, yy - r, x, yy + r, 'warning', 2, look.opacity);
    }
  }
}

/** Along both wires. */
function currentArrows(pen: Pen, { u, cx, high, low }: Place, current: number): void {
  for (const [y, way] of [
    [high, 1],
    [low, -1],
  ] as const) {
    const length = 1.6 * u * current * way;
    if (Math.abs(length) < 3) continue;
    const d = Math.sign(length) * 0.22 * u;
    pen.line(cx - length / 2, y - 0.35 * u, cx + length / 2, y - 0.35 * u, 'copper', 3);
    pen.polygon(
      [cx + length / 2 + d, cx + length / 2, cx + length / 2],
      [y - 0.35 * u, y - 0.52 * u, y - 0.18 * u],
      3,
      'copper',
    );
  }
}

/** How much of the energy is in the coil, how much in the capacitor. */
function energyBar(
  pen: Pen,
  box: PictureBox,
  { u, cx, high }: Place,
  charge: number,
  current: number,
  letters: number,
): void {
  const share = charge * charge + current * current;
  const bar = 4 * u;
  const y = high - 1.0 * u;
  if (y - 1.4 * letters > box.y) {
    pen.rect(cx - bar / 2, y, bar, 8, 'faint', 1, 4);
    pen.rect(cx - bar / 2, y, bar * current * current, 8, 'accent', 1, 4);
    pen.rect(cx - bar / 2 + bar * (share - charge * charge), y, bar * charge * charge, 8, 'copper', 1, 4);
    pen.text(cx, y - letters * 0.5, texts().energy, letters * 0.92, { role: 'soft', anchor: 'middle' });
  }
}

function pendulum(pen: Pen, box: PictureBox, charge: number, driven: boolean, n: number, letters: number): void {
  const px = box.x + box.w / 2;
  const py = box.y + box.h * 0.1;
  const length = Math.min(box.h * 0.66, box.w * 0.8);
  const a = charge * 0.55;
  const bx = px + length * Math.sin(a);
  const by = py + length * Math.cos(a);
  pen.line(px - 30, py, px + 30, py, 'ink', 3);
  pen.line(px, py, bx, by, 'ink', 2);
  pen.circle(bx, by, Math.max(8, length * 0.08), { fill: 'copper' });
  pen.text(px, py + length + letters * 2.6, driven ? texts().driven : texts().free, letters, {
    role: 'soft',
    anchor: 'middle',
  });
  // A push once a cycle while driven.
  const phase = n - Math.floor(n);
  if (driven && phase > 0.55 && phase < 0.75)
    pen.polygon([bx - 34, bx - 34, bx - 16], [by - 7, by + 7, by], 3, 'accent');
}

function history(pen: Pen, box: PictureBox, facts: PictureFacts, n: number, half: number, letters: number): void {
  const { loadedQ: q, carrier } = facts.waves.spec;
  const left = box.x + letters;
  const wide = box.w - 2 * letters;
  const mid = box.y + box.h * 0.45;
  const high = box.h * 0.36;
  const count = 240;
  const xs: number[] = [];
  const up: number[] = [];
  const down: number[] = [];
  for (let k = 0; k <= count; k++) {
    const at = (k / count) * 2 * half;
    const s = swingAmplitude(q, at) * high;
    xs.push(left + (wide * k) / count);
    up.push(mid - s);
    down.push(mid + s);
  }
  pen.polygon([...xs, ...xs.toReversed()], [...up, ...down.toReversed()], 2 * xs.length, 'copper', 0.35);
  pen.polyline(xs, up, xs.length, 'copper', 1.5);
  pen.polyline(xs, down, xs.length, 'copper', 1.5);
  const x = left + (wide * n) / (2 * half);
  pen.line(x, mid - high, x, mid + high, 'ink', 1.5);
  pen.line(left + wide / 2, mid - high, left + wide / 2, mid + high, 'soft', 1, 0.6);
  const y = box.y + box.h - letters * 0.4;
  const roomy = wide > 42 * letters;
  pen.text(left, y, roomy ? texts().stripDrivenLong : texts().stripDriven, letters, { role: 'soft' });
  pen.text(left + wide, y, roomy ? texts().stripFreeLong : texts().stripFree, letters, { role: 'soft', anchor: 'end' });
  pen.text(left + wide / 2, y, texts().cycle(Math.floor(n) + 1, n / carrier), letters, {
    role: 'ink',
    anchor: 'middle',
    bold: true,
  });
}
