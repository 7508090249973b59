import { monotoneCurve } from '../../../engine/numerics/monotone.ts';
import { LIGHT_SPEED } from '../../../engine/units/quantities.ts';

export interface DialData {
  /** What is tuned at scale readings, rising scale; degrees and Hz. Measured readings do as well as computed ones. */
  readonly points: readonly { readonly scale: number; readonly frequency: number }[];
  /** Whole turn of the scale, degrees; default 180. */
  readonly swing?: number;
  /** A station whose own reading is known keeps it; otherwise it is taken from the points. */
  readonly stations?: readonly { readonly name: string; readonly frequency: number; readonly scale?: number }[];
}

export interface DialMark {
  readonly kind: 'degrees' | 'kHz' | 'metres' | 'station';
  /** Reading on the scale, degrees from its open end: the angle of the mark on a round dial. */
  readonly scale: number;
  /** Written at the mark; nothing at a small one. */
  readonly text: string;
  /** 0 small, 1 middling, 2 large. */
  readonly size: 0 | 1 | 2;
}

export interface DialScale {
  readonly swing: number;
  frequencyAt(scale: number): number;
  /** Undefined beyond the ends. */
  scaleAt(frequency: number): number | undefined;
  readonly lowest: number;
  readonly highest: number;
}

/** Between readings 1/f², which goes as the capacitance, is smooth and never turns back. @throws RangeError for fewer than two. */
export function dialScale(data: DialData): DialScale {
  const points = data.points.filter((p, i, all) => i === 0 || p.scale > all[i - 1].scale);
  const curve = monotoneCurve(
    points.map((p) => p.scale),
    points.map((p) => 1 / (p.frequency / 1e6) ** 2),
  );
  const frequencies = points.map((p) => p.frequency);
  return {
    swing: data.swing ?? 180,
    frequencyAt: (scale) => 1e6 / Math.sqrt(curve.at(scale)),
    scaleAt: (f) => curve.inverse(1 / (f / 1e6) ** 2),
    lowest: Math.min(...frequencies),
    highest: Math.max(...frequencies),
  };
}

/** Every mark of a dial; which of the written ones have room is the drawing's affair. */
export function dialMarks(
  data: DialData,
  kinds: readonly DialMark['kind'][] = ['degrees', 'kHz', 'station'],
): DialMark[] {
  const scale = dialScale(data);
  const marks: DialMark[] = [];
  if (kinds.includes('degrees'))
    for (let d = 0; d <= scale.swing + 1e-9; d += 2)
      marks.push({
        kind: 'degrees',
        scale: d,
        text: d % (scale.swing > 200 ? 30 : 20) === 0 ? `${d}` : '',
        size: d % 10 === 0 ? (d % 20 === 0 ? 2 : 1) : 0,
      });
  if (kinds.includes('kHz'))
    marks.push(
      ...ruled(
        scale,
        'kHz',
        (f) => f / 1e3,
        (k) => k * 1e3,
      ),
    );
  if (kinds.includes('metres'))
    marks.push(
      ...ruled(
        scale,
        'metres',
        (f) => LIGHT_SPEED / f,
        (m) => LIGHT_SPEED / m,
      ),
    );
  if (kinds.includes('station'))
    for (const s of data.stations ?? []) {
      const at = s.scale ?? scale.scaleAt(s.frequency);
      if (at !== undefined && at >= 0 && at <= scale.swing)
        marks.push({ kind: 'station', scale: at, text: s.name, size: 2 });
    }
  return marks;
}

/** Marks at round values, as close as their place on the scale allows: crowded ends get fewer. */
function ruled(
  scale: DialScale,
  kind: 'kHz' | 'metres',
  toUnit: (f: number) => number,
  toFrequency: (value: number) => number,
): DialMark[] {
  const [a, b] = [toUnit(scale.lowest), toUnit(scale.highest)];
  const [low, high] = [Math.min(a, b), Math.max(a, b)];
  const step = low < 320 && kind === 'kHz' ? 5 : 10;
  const marks: DialMark[] = [];
  const taken: { scale: number; size: number }[] = [];
  // Large ones first; a smaller one is set only where it stands clear of those there are.
  for (const [size, every, gap] of [
    [2, 10 * step, 2.6],
    [1, 5 * step, 1.8],
    [0, 2 * step, 1.1],
    [0, step, 1.1],
  ] as const)
    for (let value = Math.ceil(low / every) * every; value <= high + 1e-9; value += every) {
      const at = scale.scaleAt(toFrequency(value));
      if (at === undefined || taken.some((t) => Math.abs(t.scale - at) < gap - 1e-9)) continue;
      taken.push({ scale: at, size });
      marks.push({ kind, scale: at, text: size > 0 ? `${value}` : '', size });
    }
  return marks.sort((p, q) => p.scale - q.scale);
}
