import { emptyRange, type Range, type Trace } from './range.ts';

const TURN = 2 * Math.PI;

/**
 * e(t)·cos(wt + phase) for an envelope e that changes little in a cycle. Its crests lie where the cosine is ±1 (to
 * second order in the envelope's change per cycle), so the extremes over any stretch are the ends' values and the
 * envelope's extremes between the first and the last crest: as quick for ten thousand cycles as for one.
 */
export function modulated(envelope: Trace, w: number, phase = 0): Trace {
  const inner = emptyRange();
  const cosine = (t: number): number => {
    const p = (w * t + phase) / TURN;
    return Math.cos(TURN * (p - Math.floor(p)));
  };
  const at = (t: number): number => envelope.at(t) * cosine(t);
  return {
    at,
    extent(a, b, out: Range) {
      const va = at(a);
      const vb = at(b);
      let min = Math.min(va, vb);
      let max = Math.max(va, vb);
      const p0 = (w * a + phase) / TURN;
      const p1 = (w * b + phase) / TURN;
      const firstCrest = Math.ceil(p0);
      const lastCrest = Math.floor(p1);
      if (firstCrest <= lastCrest) {
        envelope.extent((firstCrest * TURN - phase) / w, (lastCrest * TURN - phase) / w, inner);
        if (inner.max > max) max = inner.max;
        if (inner.min < min) min = inner.min;
      }
      const firstTrough = Math.ceil(p0 - 0.5) + 0.5;
      const lastTrough = Math.floor(p1 - 0.5) + 0.5;
      if (firstTrough <= lastTrough) {
        envelope.extent((firstTrough * TURN - phase) / w, (lastTrough * TURN - phase) / w, inner);
        if (-inner.min > max) max = -inner.min;
        if (-inner.max < min) min = -inner.max;
      }
      out.min = min;
      out.max = max;
    },
  };
}

/** |e| of a trace, times a factor. */
export function magnitudeOf(envelope: Trace, factor = 1): Trace {
  return {
    at: (t) => factor * Math.abs(envelope.at(t)),
    extent(a, b, out) {
      envelope.extent(a, b, out);
      const { min, max } = out;
      out.max = factor * Math.max(Math.abs(min), Math.abs(max));
      out.min = min <= 0 && max >= 0 ? 0 : factor * Math.min(Math.abs(min), Math.abs(max));
    },
  };
}

/** A trace times a factor, plus an offset. */
export function scaled(trace: Trace, factor: number, offset = 0): Trace {
  return {
    at: (t) => offset + factor * trace.at(t),
    extent(a, b, out) {
      trace.extent(a, b, out);
      const { min, max } = out;
      out.min = offset + factor * (factor >= 0 ? min : max);
      out.max = offset + factor * (factor >= 0 ? max : min);
    },
  };
}

/** A never falling function of a trace. */
export function mapped(trace: Trace, map: (v: number) => number): Trace {
  return {
    at: (t) => map(trace.at(t)),
    extent(a, b, out) {
      trace.extent(a, b, out);
      out.min = map(out.min);
      out.max = map(out.max);
    },
  };
}

/** A function of a trace that falls to 0 and rises from there alike: two detectors, one for each half. */
export function mappedBothWays(trace: Trace, map: (v: number) => number): Trace {
  return {
    at: (t) => map(trace.at(t)),
    extent(a, b, out) {
      trace.extent(a, b, out);
      const low = map(out.min);
      const high = map(out.max);
      const across = out.min <= 0 && out.max >= 0;
      out.min = across ? map(0) : Math.min(low, high);
      out.max = Math.max(low, high);
    },
  };
}
