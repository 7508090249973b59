import type { CoilModel } from '../../parts/coil/model.ts';
import type { Hertz, Ratio } from '../../units/quantities.ts';
import type { MeasuredWinding } from './measured-schema.ts';
import { amountRange, shareRange, standardErrorOf, USUAL_ERROR, USUAL_FREQUENCY } from './usual-errors.ts';

/** How far off the calculated course of Q may be per neper of frequency from where it was measured. Common practice, no source. */
const Q_COURSE = 0.1;

/** Factors that bring a winding from its calculated figures to its measured ones. */
interface WindingFactors {
  readonly inductance: Ratio;
  /** At radio frequency. */
  readonly resistance: Ratio;
}

/**
 * Factors from calculated to measured figures of a winding. A measured inductance alone leaves Q as calculated.
 * @param calculated inductance (H) and resistance (Ω) by frequency
 * @param measured what was measured
 * @returns factors on inductance and resistance
 */
export function windingFactors(
  calculated: { readonly inductanceAt: (f: Hertz) => number; readonly resistanceAt: (f: Hertz) => number },
  { inductance, q }: MeasuredWinding,
): WindingFactors {
  const L = inductance ? inductance.value / calculated.inductanceAt(inductance.at ?? 0) : 1;
  if (!q) return { inductance: L, resistance: L };
  const f = q.at ?? USUAL_FREQUENCY;
  const calculatedQ = (2 * Math.PI * f * calculated.inductanceAt(f)) / calculated.resistanceAt(f);
  return { inductance: L, resistance: (L * calculatedQ) / q.value };
}

/**
 * A coil whose measured figures win over the calculated ones; how they run with frequency and along its turns stays.
 * @param model as calculated from its sizes
 * @param measured what was measured
 * @returns a model of the same coil
 */
export function coilAsMeasured(model: CoilModel, measured: MeasuredWinding | undefined): CoilModel {
  const { inductance, q, selfCapacitance } = measured ?? {};
  if (!inductance && !q && !selfCapacitance) return model;
  let factors: WindingFactors | undefined;
  const by = (): WindingFactors =>
    (factors ??= windingFactors(
      {
        inductanceAt: (f) => (f > 0 ? model.inductanceAt(f) : model.inductance),
        resistanceAt: (f) => model.resistanceAt(f),
      },
      measured!,
    ));
  const scaled = ([low, high]: readonly [number, number], factor: number): readonly [number, number] => [
    low * factor,
    high * factor,
  ];
  const qAt = (f: Hertz): number => (model.qAt(f) * by().inductance) / by().resistance;
  // Only what is measured is read now: the rest is costly, and worked out when asked for.
  return Object.create(model, {
    inductance: { enumerable: true, get: () => by().inductance * model.inductance },
    selfCapacitance: { enumerable: true, get: () => selfCapacitance?.value ?? model.selfCapacitance },
    selfCapacitanceMethod: {
      enumerable: true,
      get: () => (selfCapacitance ? 'given' : model.selfCapacitanceMethod),
    },
    selfResonance: {
      enumerable: true,
      get(this: CoilModel) {
        return 1 / (2 * Math.PI * Math.sqrt(this.inductance * this.selfCapacitance));
      },
    },
    inductanceAt: { value: (f: Hertz) => by().inductance * model.inductanceAt(f) },
    wireResistanceAt: { value: (f: Hertz) => by().resistance * model.wireResistanceAt(f) },
    dielectricResistanceAt: { value: (f: Hertz) => by().resistance * model.dielectricResistanceAt(f) },
    resistanceAt: { value: (f: Hertz) => by().resistance * model.resistanceAt(f) },
    qAt: { value: qAt },
    inductanceRange: {
      enumerable: true,
      get: () => {
        if (!inductance) return model.inductanceRange;
        const [low, high] = shareRange(inductance, USUAL_ERROR.inductance);
        return scaled([low / inductance.value, high / inductance.value], by().inductance * model.inductance);
      },
    },
    selfCapacitanceRange: {
      enumerable: true,
      get: () =>
        selfCapacitance ? amountRange(selfCapacitance, USUAL_ERROR.selfCapacitance) : model.selfCapacitanceRange,
    },
    qRangeAt: {
      value: (f: Hertz): readonly [Ratio, Ratio] => {
        if (!q) return scaled(model.qRangeAt(f), by().inductance / by().resistance);
        const away = Q_COURSE * Math.log(f / (q.at ?? USUAL_FREQUENCY));
        const error = Math.hypot(standardErrorOf(q, USUAL_ERROR.q), away);
        return shareRange({ value: qAt(f), error }, USUAL_ERROR.q);
      },
    },
    partial: { value: (from: number, to: number) => by().inductance * model.partial(from, to) },
    mutual: {
      value: (...[first, second]: Parameters<CoilModel['mutual']>) => by().inductance * model.mutual(first, second),
    },
  });
}
