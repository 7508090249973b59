import { ImpossibleValues } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import type { Complex } from '../../numerics/complex.ts';
import { firstWhole } from '../../numerics/roots.ts';
import type { Hertz, Ohms } from '../../units/quantities.ts';

/** Impedance of an aerial as measured at one frequency, its earth not counted unless it was measured with it. */
export interface ImpedancePoint {
  readonly frequency: Hertz;
  readonly resistance: Ohms;
  readonly reactance: Ohms;
}

export interface MeasuredImpedance {
  readonly impedanceAt: (frequency: Hertz) => Complex;
  /** From the lowest to the highest frequency measured. */
  readonly range: readonly [Hertz, Hertz];
  readonly warnings: readonly Warning[];
  readonly warningsAt: (frequency: Hertz) => readonly Warning[];
}

/**
 * A table of impedance, read between its points: the resistance straight, the reactance as reactance × frequency straight,
 * which a capacitance follows exactly and a short aerial nearly. Beyond the ends a capacitive end goes on as its
 * capacitance and an inductive one as its inductance, and a warning says so.
 * @param points in any order, at least one, no two at the same frequency.
 * @returns impedance (Ω) at any frequency, and its warnings
 * @throws RangeError for no points, or two at one frequency.
 */
export function measuredImpedance(points: readonly ImpedancePoint[]): MeasuredImpedance {
  const table = [...points].sort((a, b) => a.frequency - b.frequency);
  if (!(table.length >= 1)) throw new ImpossibleValues({ code: 'impedance.no-points' });
  table.forEach((p, i) => {
    if (
      !(
        p.frequency > 0 &&
        Number.isFinite(p.frequency) &&
        Number.isFinite(p.resistance) &&
        Number.isFinite(p.reactance)
      )
    ) {
      throw new ImpossibleValues({ code: 'impedance.not-finite' });
    }
    if (i > 0 && !(p.frequency > table[i - 1].frequency))
      throw new ImpossibleValues({ code: 'impedance.same-frequency', frequency: p.frequency });
  });
  const first = table[0];
  const last = table[table.length - 1];
  const warnings: Warning[] = table.some((p) => p.resistance < 0)
    ? [warning('aerial.measured-negative-resistance')]
    : [];
  const beyond = (p: ImpedancePoint, f: Hertz): Complex => ({
    re: p.resistance,
    im: p.reactance < 0 ? (p.reactance * p.frequency) / f : (p.reactance * f) / p.frequency,
  });
  return {
    range: [first.frequency, last.frequency],
    warnings,
    warningsAt: (f) =>
      f >= 0.99 * first.frequency && f <= 1.01 * last.frequency
        ? warnings
        : [...warnings, warning('aerial.outside-measured-range')],
    impedanceAt(f) {
      if (!(f > 0 && Number.isFinite(f))) throw new RangeError(`the frequency must be above 0, not ${f}`);
      if (f <= first.frequency) return beyond(first, f);
      if (f >= last.frequency) return beyond(last, f);
      const next = firstWhole((i) => table[i].frequency > f, 0, table.length - 1);
      const [a, b] = [table[next - 1], table[next]];
      const t = (f - a.frequency) / (b.frequency - a.frequency);
      const scaled = a.reactance * a.frequency * (1 - t) + b.reactance * b.frequency * t;
      return { re: a.resistance * (1 - t) + b.resistance * t, im: scaled / f };
    },
  };
}
