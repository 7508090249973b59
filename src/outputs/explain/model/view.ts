import { formatQuantity } from '../../../engine/units/format.ts';
import type { Seconds } from '../../../engine/units/quantities.ts';

/** The stretch of time that is looked at. */
export interface View {
  readonly from: Seconds;
  readonly span: Seconds;
}

/** From a minute to tens of nanoseconds across the whole window. */
export const LONGEST: Seconds = 60;
export const SHORTEST: Seconds = 50e-9;
/** The clock of the picture runs from 0 to here. */
const LAST: Seconds = 60;

export function limited({ from, span }: View): View {
  const within = Math.min(LONGEST, Math.max(SHORTEST, span));
  return { span: within, from: Math.min(LAST - within, Math.max(-within / 2, from)) };
}

/** Show `factor` times as long a stretch; the moment at `share` of the width (0 left … 1 right) stays where it is. */
export const zoomed = ({ from, span }: View, factor: number, share: number): View => {
  const next = Math.min(LONGEST, Math.max(SHORTEST, span * factor));
  return limited({ from: from + share * (span - next), span: next });
};

export const moved = ({ from, span }: View, share: number): View => limited({ from: from + share * span, span });

/**
 * Between two views, u from 0 to 1: each moment the same number of times closer, about the one point that both views
 * leave in its place.
 */
export function viewBetween(a: View, b: View, u: number): View {
  const k = Math.min(1, Math.max(0, u));
  const span = a.span ** (1 - k) * b.span ** k;
  if (Math.abs(b.span - a.span) < 1e-9 * a.span) return { span, from: a.from + (b.from - a.from) * k };
  return { span, from: a.from + ((span - a.span) * (b.from - a.from)) / (b.span - a.span) };
}

/** Slow at both ends. */
export const eased = (u: number): number => {
  const k = Math.min(1, Math.max(0, u));
  return k * k * (3 - 2 * k);
};

export interface Tick {
  /** 0 left … 1 right. */
  readonly share: number;
  readonly label: string;
}

export interface TimeScale {
  readonly ticks: readonly Tick[];
  /** The moment from which the ticks count, where that is not zero. */
  readonly base?: string;
  readonly step: Seconds;
}

/** Ticks at 1, 2 or 5 times a power of ten. @param room how many there is room for. */
export function timeScale({ from, span }: View, room: number): TimeScale {
  const rough = span / Math.max(room, 1);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((k) => k * power).find((s) => s >= rough * 0.999)!;
  // Far from zero and close up the ticks count from a round moment at the left.
  const far = Math.abs(from) > 200 * span;
  const round = step * 10;
  const base = far ? Math.floor(from / round + 1e-9) * round : 0;
  const first = Math.ceil((from - base) / step - 1e-6);
  const last = Math.floor((from + span - base) / step + 1e-6);
  const ticks: Tick[] = [];
  const text = inOneUnit(Math.max(Math.abs(first), Math.abs(last)) * step, step);
  for (let k = first; k <= last; k++)
    ticks.push({
      share: (base + k * step - from) / span,
      label: `${far && k > 0 ? '+' : ''}${text(k * step)}`,
    });
  return { ticks, step, base: far ? momentText(base, step) : undefined };
}

const UNITS = [
  [1, 's'],
  [1e-3, 'ms'],
  [1e-6, 'µs'],
  [1e-9, 'ns'],
] as const;

/** Moments up to the largest, all in one unit and with the decimals that the step needs. */
function inOneUnit(largest: Seconds, step: Seconds): (t: Seconds) => string {
  const [size, unit] = UNITS.find(([s]) => largest >= s * 0.999) ?? UNITS[3];
  const decimals = Math.max(0, -Math.floor(Math.log10(step / size) + 1e-9));
  return (t) => (t === 0 ? '0' : `${(t / size).toFixed(decimals).replace('-', '−')} ${unit}`);
}

/** A moment with as many digits as the step needs. */
function momentText(t: Seconds, step: Seconds): string {
  if (t === 0) return '0';
  const digits = Math.min(12, Math.max(3, Math.ceil(Math.log10(Math.abs(t) / step)) + 1));
  return formatQuantity(t, 'time', digits);
}
