/** Steps between two solutions of the distant stations. */
export const EVERY = 4;
/** Most stations that can be distant at once. */
export const MOST_DISTANT = 64;

/**
 * Stations far from the frame, each by its own level. They meet the others only in the detector, where the mean of
 * carriers in no fixed relation is a product: mean of exp(Σ xₖ·cos θₖ) = Π I0(xₖ).
 */
export interface Distant {
  /** How many are followed. */
  count: number;
  /** Open-circuit voltage at the junction over s, at the tick, station by station. */
  readonly open: Float64Array;
  /** Impedance the junction looks into at each station's frequency. */
  readonly kr: Float64Array;
  readonly ki: Float64Array;
  /** x of each: the solution, kept from tick to tick. */
  readonly x: Float64Array;
  /** Those too strong to be counted by the square law at this tick, and their number. */
  readonly strong: Int32Array;
  strongCount: number;
  /** Of each strong one's own equation: what is left over, and its slope by u, both over its slope by x. */
  readonly left: Float64Array;
  readonly slope: Float64Array;
}

export const distantStations = (): Distant => {
  const array = () => new Float64Array(MOST_DISTANT);
  return {
    count: 0,
    open: array(),
    kr: array(),
    ki: array(),
    x: array(),
    strong: new Int32Array(MOST_DISTANT),
    strongCount: 0,
    left: array(),
    slope: array(),
  };
};

/** One block's worth of inputs and results, made once. */
export interface EnvelopeBlock {
  /** Source at every step, V, in the frame. */
  readonly sourceRe: Float64Array;
  readonly sourceIm: Float64Array;
  /** Open-circuit voltages of the distant stations over s, step by step in steps of `EVERY`: tick × station. */
  readonly distantOpen: Float64Array;
  /** Audio outputs, step by step. */
  readonly audio: readonly Float64Array[];
  /** Radio outputs (complex) and the carrier's current, if they are to be written down. */
  readonly radio?: readonly { readonly re: Float64Array; readonly im: Float64Array }[];
  readonly current?: { readonly re: Float64Array; readonly im: Float64Array };
}

export interface EnvelopeState {
  /** Last source, carrier's current and mean current; the mean current of the step before. */
  sr: number;
  si: number;
  ir: number;
  ii: number;
  i0: number;
  i0Before: number;
  /** Carrier and mean voltage that would stand across the junction without this step's currents, V. */
  openRe: number;
  openIm: number;
  openMean: number;
  /** The junction: peak carrier/s; ln of the mean current/Is + off; and its exponential, kept up by factors. */
  x: number;
  u: number;
  w: number;
  /** Conductance of the junction to the carrier, S. */
  gr: number;
  gi: number;
  /** Carrier across the junction, V. */
  vr: number;
  vi: number;
  /** ln of the distant stations' part in the detector: Σ ln I0; and the faint ones' share of it. */
  distant: number;
  faint: number;
  /** Mean voltage across the junction at the last step. */
  v: number;
  iterations: number;
  steps: number;
}

export const envelopeState = (): EnvelopeState => ({
  sr: 0,
  si: 0,
  ir: 0,
  ii: 0,
  i0: 0,
  i0Before: 0,
  openRe: 0,
  openIm: 0,
  openMean: 0,
  x: 0,
  u: 0,
  w: 1,
  gr: 0,
  gi: 0,
  vr: 0,
  vi: 0,
  distant: 0,
  faint: 0,
  v: 0,
  iterations: 0,
  steps: 0,
});
