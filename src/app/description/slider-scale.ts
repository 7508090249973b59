import { gaugeDiameter, type QuantityKind } from '../../engine/index.ts';
import { factorOf, gaugeNumbers, gaugeOf } from './quantity-text.ts';

/** A slider's steps, 0 to `steps`, and the values they stand for. */
export interface SliderScale {
  readonly steps: number;
  readonly valueAt: (step: number) => number;
  readonly stepOf: (value: number) => number;
}

/** Wider than this from end to end and equal steps are equal ratios. */
const LOG_SPAN = 30;
const LOG_STEPS = 240;

/**
 * @param range usual range, SI.
 * @param options `whole`: whole numbers only; `factor`: size of the unit as typed, so that steps are round in it.
 */
export function sliderScale(
  [low, high]: readonly [number, number],
  options: { readonly whole?: boolean; readonly factor?: number } = {},
): SliderScale {
  if (low > 0 && high / low > LOG_SPAN) {
    const ratio = Math.log(high / low);
    const round = (value: number): number => (options.whole ? Math.round(value) : Number(value.toPrecision(3)));
    const values = Array.from({ length: LOG_STEPS + 1 }, (_, n) => round(low * Math.exp((n / LOG_STEPS) * ratio)));
    return scaleOf(values);
  }
  const factor = options.factor ?? 1;
  const step = options.whole
    ? Math.max(1, niceStep((high - low) / 250))
    : niceStep((high - low) / factor / 200) * factor;
  const first = Math.ceil(low / step - 1e-9);
  const steps = Math.max(1, Math.floor(high / step + 1e-9) - first);
  return {
    steps,
    valueAt: (at) => Number(((first + at) * step).toPrecision(12)),
    stepOf: (value) => clamp(Math.round(value / step) - first, 0, steps),
  };
}

/**
 * A step for each value. Where rounding makes neighbours alike they are one step: a slider would stick between them.
 * @param ascending values, SI.
 */
export function scaleOf(ascending: readonly number[]): SliderScale {
  const values = ascending.filter((value, n) => n === 0 || value > ascending[n - 1]);
  return {
    steps: values.length - 1,
    valueAt: (step) => values[step],
    stepOf: (value) =>
      values.reduce((best, one, n) => (Math.abs(one - value) < Math.abs(values[best] - value) ? n : best), 0),
  };
}

/** The scale for a quantity as it is written now; a wire size given by gauge steps through the gauge. */
export function quantityScale(written: unknown, kind: QuantityKind, range: readonly [number, number]): SliderScale {
  const gauge = gaugeOf(written);
  const numbers = gauge ? gaugeNumbers(gauge, range) : [];
  if (gauge && numbers.length > 1) {
    const sizes = numbers.map((n) => gaugeDiameter(gauge, n)!).reverse();
    return scaleOf(sizes);
  }
  // Temperatures are read in degrees above freezing, so kelvins step by one.
  return sliderScale(range, { factor: kind === 'temperature' ? 1 : (factorOf(written, kind) ?? naturalFactor(range)) });
}

/** A thousand-step unit in which the range reads well. */
const naturalFactor = ([, high]: readonly [number, number]): number => 10 ** (3 * Math.floor(Math.log10(high) / 3));

/** 1, 2 or 5 times a power of ten, not below x. */
function niceStep(x: number): number {
  const power = 10 ** Math.floor(Math.log10(x));
  const lead = x / power;
  return (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10) * power;
}

const clamp = (x: number, low: number, high: number): number => Math.min(high, Math.max(low, x));
