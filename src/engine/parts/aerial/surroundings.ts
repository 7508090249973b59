import { type Decibels, fromDecibels, type Ratio } from '../../units/quantities.ts';

/** Where an aerial hangs or stands. */
export const SURROUNDINGS = ['nothing', 'open field', 'garden', 'between houses', 'under the roof', 'indoors'] as const;
/** One of the places in `SURROUNDINGS`. */
export type Surroundings = (typeof SURROUNDINGS)[number];

/** What things around an aerial do to it. */
export interface SurroundingsEffect {
  /** dB on the effective height over that of the aerial by itself: 5th percentile, median and 95th. */
  readonly height: readonly [low: Decibels, usual: Decibels, high: Decibels];
  /** tan δ of the aerial's capacitance to them, ×/÷ 3. */
  readonly lossTangent: Ratio;
  readonly source: string;
}

const GARDENS =
  'effective heights from published field strengths of six aerials at 73 to 504 kHz, and the standard home aerial of 1938';
const COMMON = 'common practice, no source';

/**
 * Of wire aerials. Trees, walls and roofs take charge to themselves and so lower the effective height, and lose power in
 * it: measured over calculated height is +1.5 dB in an open field and −3 to −6 dB in gardens (2 dB more at 136 than at
 * 504 kHz at one site). For houses, roofs and rooms no figures were found.
 */
const OF_WIRES: Readonly<Record<Surroundings, SurroundingsEffect>> = {
  nothing: { height: [-2, 0, 2], lossTangent: 0, source: GARDENS },
  'open field': { height: [-2, 0, 2], lossTangent: 0.003, source: GARDENS },
  garden: { height: [-8, -4, 0], lossTangent: 0.015, source: GARDENS },
  'between houses': { height: [-11, -6, -1], lossTangent: 0.02, source: COMMON },
  'under the roof': { height: [-14, -8, -2], lossTangent: 0.025, source: COMMON },
  indoors: { height: [-20, -12, -4], lossTangent: 0.03, source: COMMON },
};

/** Of frames and rods, which take the magnetic field: trees do nothing to it, brick little, reinforced concrete much. */
const OF_LOOPS: Readonly<Record<Surroundings, SurroundingsEffect>> = {
  nothing: { height: [-1.5, 0, 1.5], lossTangent: 0, source: COMMON },
  'open field': { height: [-1.5, 0, 1.5], lossTangent: 0, source: COMMON },
  garden: { height: [-2, 0, 2], lossTangent: 0, source: COMMON },
  'between houses': { height: [-4, -1, 2], lossTangent: 0, source: COMMON },
  'under the roof': { height: [-5, -2, 1], lossTangent: 0, source: COMMON },
  indoors: { height: [-7, -3, 1], lossTangent: 0, source: COMMON },
};

/** Where nothing is said: a wire hangs in a garden, a frame or rod stands in a room. */
export const usualSurroundings = (loop: boolean): Surroundings => (loop ? 'indoors' : 'garden');

/**
 * What things around an aerial do to its effective height and losses.
 * @param loop true of a frame or rod, false of a wire aerial.
 * @param surroundings where it is; default garden for a wire, indoors for a frame or rod.
 * @returns the effect on its height in dB (5th percentile, median, 95th), tan δ (0 for a frame or rod), and the source.
 */
export const surroundingsEffect = (loop: boolean, surroundings = usualSurroundings(loop)): SurroundingsEffect =>
  (loop ? OF_LOOPS : OF_WIRES)[surroundings];

/**
 * 90 % range of an effective height calculated for an aerial by itself.
 * @param height m.
 * @param options what is around it, as `surroundingsEffect` has it.
 * @returns the 5th percentile and the 95th, m.
 */
export function heightRange(height: number, { height: [low, , high] }: SurroundingsEffect): [number, number] {
  return [height * fromDecibels(low), height * fromDecibels(high)];
}

/** What tan δ of an aerial's surroundings may be off by, ×/÷, 90 %: published series resistances of three aerials at long wave. */
export const SURROUNDINGS_LOSS_FACTOR = 3;

/** Three published aerials against their calculated capacitance, sag and lead-in not measured: ×/÷, 90 %. */
export const CAPACITANCE_FACTOR = 1.13;
