import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import type { Pen } from '../pen.ts';
import { resonance } from '../settings.ts';
import type { Box, MovingPicture, PictureFacts } from './facts.ts';

/** Seconds for the pointer's way there and back. */
const TURN = 16;

/** Where the hand has turned the vanes to: slow at both ends. */
const positionAt = (seconds: number): number => 0.5 - 0.5 * Math.cos((2 * Math.PI * seconds) / TURN);

const at = ({ dial }: PictureFacts, position: number) => {
  const i = Math.max(1, dial.findIndex((d) => d.position >= position) || 1);
  const a = dial[i - 1];
  const b = dial[Math.min(i, dial.length - 1)];
  const t = b.position > a.position ? Math.min(1, Math.max(0, (position - a.position) / (b.position - a.position))) : 0;
  const mix = (x: number, y: number) => x + (y - x) * t;
  return {
    frequency: mix(a.frequency, b.frequency),
    loadedQ: mix(a.loadedQ, b.loadedQ),
    capacitance:
      a.capacitance === undefined || b.capacitance === undefined ? undefined : mix(a.capacitance, b.capacitance),
  };
};

export const vanes: MovingPicture = {
  id: 'vanes',
  title: 'The vanes mesh, the resonance slides along the band',
  about(facts) {
    const { dial, stations } = facts;
    const [a, b] = [dial[0], dial[dial.length - 1]];
    const low = Math.min(a.frequency, b.frequency);
    const high = Math.max(a.frequency, b.frequency);
    return `The more the vanes mesh, the more capacitance and the lower the frequency: from ${formatQuantity(high, 'frequency', 4)} down to ${formatQuantity(low, 'frequency', 4)}, past ${stations.length} station${stations.length === 1 ? '' : 's'}.`;
  },
  slowed: () => 'as fast as a hand turns',
  seconds: () => TURN,
  still(facts) {
    // On the station, on the way in.
    const { carrier } = facts.waves.spec;
    const miss = (t: number) => Math.abs(at(facts, positionAt(t)).frequency - carrier);
    const moments = Array.from({ length: 800 }, (_, k) => (k / 1600) * TURN);
    return moments.reduce((best, t) => (miss(t) < miss(best) ? t : best), 0);
  },
  paint(pen, facts, seconds, box, letters) {
    const position = positionAt(seconds);
    const now = at(facts, position);
    const wide = box.w > 1.3 * box.h;
    const left: Box = wide ? { ...box, w: box.w * 0.36 } : { ...box, h: box.h * 0.45 };
    const right: Box = wide
      ? { ...box, x: box.x + box.w * 0.38, w: box.w * 0.62 }
      : { ...box, y: box.y + box.h * 0.47, h: box.h * 0.53 };
    meshing(pen, left, position, facts.swing, now.capacitance, letters);
    band(pen, right, facts, now, letters);
  },
};

function meshing(pen: Pen, box: Box, position: number, swing: number, C: number | undefined, letters: number): void {
  const r = Math.min(box.w * 0.44, box.h * 0.4);
  const cx = box.x + box.w / 2;
  const cy = box.y + box.h * 0.46;
  const half = (turn: number): [number[], number[]] => {
    const xs: number[] = [];
    const ys: number[] = [];
    for (let k = 0; k <= 40; k++) {
      const a = turn + (k / 40) * Math.PI;
      xs.push(cx + r * Math.cos(a));
      ys.push(cy + r * Math.sin(a));
    }
    return [xs, ys];
  };
  // Fixed vanes below the spindle; the rotor comes down over them.
  const [fx, fy] = half(0);
  pen.polygon(fx, fy, fx.length, 'metal', 0.75);
  const turn = Math.PI * (1 - position);
  const [mx, my] = half(-turn);
  pen.polygon(mx, my, mx.length, 'copper', 0.6);
  pen.polyline([...mx, mx[0]], [...my, my[0]], mx.length + 1, 'copper', 2);
  pen.circle(cx, cy, r * 0.08, { fill: 'ink' });
  pen.line(cx, cy, cx + r * 1.08 * Math.cos(-turn), cy + r * 1.08 * Math.sin(-turn), 'ink', 2);
  const words = `${formatNumber(position * swing, 3)}°${C === undefined ? '' : `, ${formatQuantity(C, 'capacitance', 3)}`}`;
  pen.text(cx, box.y + box.h - letters * 0.6, words, letters * 1.15, { anchor: 'middle', bold: true });
}

function band(
  pen: Pen,
  box: Box,
  { dial, stations }: PictureFacts,
  now: { frequency: number; loadedQ: number },
  letters: number,
): void {
  const ends = [dial[0].frequency, dial[dial.length - 1].frequency];
  const from = Math.min(...ends) * 0.93;
  const to = Math.max(...ends) * 1.07;
  const left = box.x + letters;
  const right = box.x + box.w - letters;
  const floor = box.y + box.h - letters * 2.6;
  const roof = box.y + letters * 3.6;
  const x = (f: number) => left + ((f - from) / (to - from)) * (right - left);
  const y = (share: number) => floor - share * (floor - roof);
  pen.line(left, floor, right, floor, 'soft', 1);
  const strongest = Math.max(...stations.map((s) => s.emf), 1e-12);
  for (const s of stations) {
    const passed = resonance(now.loadedQ, now.frequency, s.frequency);
    if (x(s.frequency) < left || x(s.frequency) > right) continue;
    const tall = Math.sqrt(s.emf / strongest);
    pen.line(x(s.frequency), floor, x(s.frequency), y(tall), 'faint', 5);
    pen.line(x(s.frequency), floor, x(s.frequency), y(tall * passed), 'accent', 5);
    if (passed > 0.6)
      pen.text(x(s.frequency), y(Math.max(tall, 0.3)) - letters * 0.5, s.name, letters * 1.05, {
        anchor:
          x(s.frequency) > left + (right - left) * 0.72
            ? 'end'
            : x(s.frequency) < left + (right - left) * 0.28
              ? 'start'
              : 'middle',
        bold: true,
        rim: true,
      });
  }
  const n = 260;
  const xs: number[] = [];
  const ys: number[] = [];
  for (let k = 0; k <= n; k++) {
    const f = from + ((to - from) * k) / n;
    xs.push(x(f));
    ys.push(y(resonance(now.loadedQ, now.frequency, f)));
  }
  // The top itself, which may fall between two points of a sharp curve.
  const top = xs.findIndex((px) => px > x(now.frequency));
  if (top > 0) {
    xs.splice(top, 0, x(now.frequency));
    ys.splice(top, 0, y(1));
  }
  pen.polyline(xs, ys, xs.length, 'copper', 2.5);
  pen.text(
    (left + right) / 2,
    box.y + letters * 1.3,
    `${formatQuantity(now.frequency, 'frequency', 4)}, ${formatQuantity(now.frequency / now.loadedQ, 'frequency', 2)} broad`,
    letters * 1.15,
    { anchor: 'middle', bold: true },
  );
  for (const f of [from * 1.08, (from + to) / 2, to * 0.94])
    pen.text(x(f), floor + letters * 1.5, formatQuantity(Math.round(f / 1e4) * 1e4, 'frequency', 3), letters * 0.92, {
      role: 'soft',
      anchor: 'middle',
    });
}
