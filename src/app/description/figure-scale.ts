import { type Field, metadataOf, type Path, parseQuantity } from '../../engine/index.ts';
import { gaugeOf, rewrite } from './quantity-text.ts';
import { quantityScale, type SliderScale, sliderScale } from './slider-scale.ts';
import { usualRange } from './usual-range.ts';

/** What a figure's slider needs to know. */
export interface FigureScale {
  /** SI value now. */
  readonly value: number;
  /** A value outside the usual range widens the scale. */
  readonly scaleFor: (value: number) => SliderScale;
  /** What an SI value is written as. */
  readonly write: (value: number) => unknown;
}

/**
 * @param shown the value as written, or the default that stands in for it.
 * @returns undefined where there is no usual range, or the value is no figure.
 */
export function figureScale(written: unknown, field: Field, path: Path, shown: unknown): FigureScale | undefined {
  const typical = rangeOf(written, field, path);
  if (!typical) return undefined;
  const range = (now: number): readonly [number, number] => [Math.min(typical[0], now), Math.max(typical[1], now)];
  const kind = field.metadata.quantity;
  if (!kind) {
    if (typeof shown !== 'number') return undefined;
    const whole = field.metadata.whole || isTurns(field);
    return { value: shown, scaleFor: (now) => sliderScale(range(now), { whole }), write: (to) => to };
  }
  const parsed = parseQuantity(shown, kind);
  if (!parsed.ok) return undefined;
  return {
    value: parsed.value,
    scaleFor: (now) => quantityScale(shown, kind, gaugeOf(shown) ? typical : range(now)),
    write: (to) => rewrite(shown, to, kind),
  };
}

const isTurns = (field: Field): boolean => /turns|tap|fewest/i.test(field.key);

/** Where its slider runs as a rule; undefined where it has none. */
export const rangeOf = (written: unknown, field: Field, path: Path) =>
  usualRange(written, path, metadataOf(field.schema).bounds?.typical);
