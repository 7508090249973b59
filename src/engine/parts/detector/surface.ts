import { type Warning, warning } from '../../facts/warning.ts';
import type { Metres } from '../../units/quantities.ts';
import type { Detector } from './detector.ts';
import { exponentialDetector } from './exponential.ts';

/** What touches the crystal. A finer, springier wire presses the spot less; a harder one stands more pressure. */
export const WHISKERS = ['phosphor bronze', 'brass', 'copper', 'steel', 'silver', 'gold'] as const;
/** What the whisker is made of. */
export type Whisker = (typeof WHISKERS)[number];

/** The lump that comes with every set with a crystal; another seed is another lump. */
export const USUAL_CRYSTAL = 7;

export type SpotQuality = 'dead' | 'poor' | 'fair' | 'good' | 'very good';

export interface Spot {
  readonly quality: SpotQuality;
  /** 0 (nothing) to 1 (the best there is): what a needle on the whisker would show. */
  readonly merit: number;
  /** Middle of the grain touched. */
  readonly x: Metres;
  readonly y: Metres;
}

export interface Touch {
  readonly detector: Detector;
  readonly spot: Spot;
  /** How the whisker stands on it. */
  readonly contact: 'loose' | 'light' | 'crushed';
  readonly warnings: readonly Warning[];
}

/** Where and how the whisker stands. */
export interface WhiskerPosition {
  readonly x: Metres;
  readonly y: Metres;
  /** 0 just touching, 1 as hard as the spring goes; galena likes about 0.2. */
  readonly pressure: number;
  readonly material: Whisker;
}

/** The face of a crystal: which it is, its sizes (m), and what the whisker finds where it touches. */
export interface CrystalSurface {
  readonly seed: number;
  readonly width: Metres;
  readonly height: Metres;
  /** Mean distance between grains. */
  readonly grain: Metres;
  /** @throws RangeError outside the crystal or outside pressure 0 to 1. */
  readonly probe: (x: Metres, y: Metres, pressure?: number, material?: Whisker) => Touch;
  /** The grain under a place, whatever the whisker: for drawing the map. */
  readonly spotAt: (x: Metres, y: Metres) => Spot;
  /** Every grain, for a map or to find the best. */
  readonly spots: () => readonly Spot[];
  /** Where the whisker stands after a knock of `strength` (0 to 1). The same knock number moves it the same way. */
  readonly knock: (position: WhiskerPosition, strength: number, number: number) => WhiskerPosition;
}

export interface SurfaceOptions {
  readonly width?: Metres;
  readonly height?: Metres;
  readonly grain?: Metres;
}

/** A number from 0 to 1 out of a seed and three whole numbers: always the same for the same ones. */
function chance(seed: number, i: number, j: number, k: number): number {
  let h = (seed ^ Math.imul(i, 0x9e3779b1) ^ Math.imul(j, 0x85ebca77) ^ Math.imul(k, 0xc2b2ae3d)) | 0;
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d);
  h = Math.imul(h ^ (h >>> 15), 0x846ca68b);
  return ((h ^ (h >>> 16)) >>> 0) / 4294967296;
}

// Of a hundred grains: sixty-two dead, twenty poor, twelve fair, five good, one very good. Common practice, no source.
const SHARES: readonly (readonly [SpotQuality, number, number, number])[] = [
  ['dead', 0.62, 0, 0],
  ['poor', 0.82, 0.1, 0.35],
  ['fair', 0.94, 0.35, 0.65],
  ['good', 0.99, 0.65, 0.85],
  ['very good', 1, 0.85, 1],
];

/** Shares of a crystal's grains by quality, which a crystal large enough has. */
export const SPOT_SHARES: readonly { readonly quality: SpotQuality; readonly share: number }[] = SHARES.map(
  ([quality, upTo], i) => ({ quality, share: upTo - (SHARES[i - 1]?.[1] ?? 0) }),
);

// Rs factor, share of the pressure that reaches the spot. Common practice, no source.
const MATERIALS: Readonly<Record<Whisker, { readonly resistance: number; readonly firmness: number }>> = {
  'phosphor bronze': { resistance: 1, firmness: 1 },
  brass: { resistance: 1.1, firmness: 1.15 },
  copper: { resistance: 1, firmness: 0.75 },
  steel: { resistance: 1.4, firmness: 1.6 },
  silver: { resistance: 0.8, firmness: 0.85 },
  gold: { resistance: 0.7, firmness: 0.7 },
};

const between = (low: number, high: number, t: number) => low + (high - low) * t;
const betweenLog = (low: number, high: number, t: number) => low * (high / low) ** t;

/**
 * A galena crystal as a surface of grains, each with its own saturation current, ideality, leakage and series
 * resistance. The whole map follows from the seed; nothing is remembered between probes.
 * @param seed whole number; the same seed is the same crystal, always.
 * @param options size of crystal and grains, m
 * @returns what a whisker finds at any place of it
 * @throws RangeError when the crystal is not larger than a grain.
 */
export function crystalSurface(seed: number, options: SurfaceOptions = {}): CrystalSurface {
  const { width = 9e-3, height = 6e-3, grain = 3e-4 } = options;
  if (!(grain > 0 && width >= grain && height >= grain && width / grain < 1000 && height / grain < 1000)) {
    throw new RangeError(`a crystal of ${width} m by ${height} m does not suit grains of ${grain} m`);
  }
  if (!Number.isFinite(seed)) throw new RangeError(`seed must be a number, got ${seed}`);
  const s = Math.trunc(seed) | 0;
  const columns = Math.max(1, Math.round(width / grain));
  const rows = Math.max(1, Math.round(height / grain));

  const centre = (i: number, j: number) => ({
    x: ((i + chance(s, i, j, 1)) / columns) * width,
    y: ((j + chance(s, i, j, 2)) / rows) * height,
  });
  const spot = (i: number, j: number): Spot => {
    const draw = chance(s, i, j, 3);
    let below = 0;
    for (const [quality, upTo, low, high] of SHARES) {
      if (draw < upTo) return { quality, merit: between(low, high, (draw - below) / (upTo - below)), ...centre(i, j) };
      below = upTo;
    }
    throw new RangeError('a grain fell outside the shares');
  };
  /** The grain whose middle is nearest: one jittered middle in each cell of a grid, so the neighbours suffice. */
  const grainAt = (x: number, y: number): readonly [number, number] => {
    if (!(x >= 0 && x <= width && y >= 0 && y <= height)) {
      throw new RangeError(`the crystal is ${width} m by ${height} m; ${x}, ${y} is beside it`);
    }
    const ci = Math.min(columns - 1, Math.floor((x / width) * columns));
    const cj = Math.min(rows - 1, Math.floor((y / height) * rows));
    let best: readonly [number, number] = [ci, cj];
    let least = Number.POSITIVE_INFINITY;
    for (let i = Math.max(0, ci - 2); i <= Math.min(columns - 1, ci + 2); i++) {
      for (let j = Math.max(0, cj - 2); j <= Math.min(rows - 1, cj + 2); j++) {
        const c = centre(i, j);
        const d = (c.x - x) ** 2 + (c.y - y) ** 2;
        if (d < least) {
          least = d;
          best = [i, j];
        }
      }
    }
    return best;
  };

  return {
    seed: s,
    width,
    height,
    grain,
    spotAt: (x, y) => spot(...grainAt(x, y)),
    spots: () => Array.from({ length: rows * columns }, (_, k) => spot(k % columns, Math.floor(k / columns))),
    probe(x, y, pressure = 0.2, material = 'phosphor bronze') {
      if (!(pressure >= 0 && pressure <= 1)) throw new RangeError(`pressure must be from 0 to 1, got ${pressure}`);
      const [i, j] = grainAt(x, y);
      return touch(spot(i, j), (k) => chance(s, i, j, k), pressure, material);
    },
    knock(position, strength, number) {
      if (!(strength >= 0 && strength <= 1)) throw new RangeError(`strength must be from 0 to 1, got ${strength}`);
      // A firmer whisker holds its place better; a light one jumps by some grains.
      const reach = grain * strength * (0.5 + 4 * (1 - position.pressure) ** 2);
      const far = reach * (0.3 + 0.7 * chance(s, number, 11, 4));
      const angle = 2 * Math.PI * chance(s, number, 12, 5);
      const inside = (at: number, size: number) => Math.min(Math.max(at, 0), size);
      return {
        ...position,
        x: inside(position.x + far * Math.cos(angle), width),
        y: inside(position.y + far * Math.sin(angle), height),
      };
    },
  };
}

/** The device under the whisker. Ranges of the junctions as in the library, from memory; pressure by common practice. */
function touch(spot: Spot, draw: (k: number) => number, pressure: number, material: Whisker): Touch {
  const { resistance, firmness } = MATERIALS[material];
  const effective = Math.min(1, pressure * firmness);
  // Best at a light touch: less, and the contact is poor; more, and the junction is crushed into a plain contact.
  const slack = Math.max(0, 0.15 - effective) / 0.15;
  const crushed = Math.max(0, effective - 0.35) / 0.65;
  const dead = spot.quality === 'dead';
  const merit = dead ? 0 : spot.merit * (1 - 0.75 * crushed);
  // Dead grains conduct alike both ways; each in its own measure.
  const leak = dead ? betweenLog(40, 1500, draw(6)) : betweenLog(6e3, 800e3, merit * 0.85 + 0.15 * draw(6));
  const detector = exponentialDetector({
    saturationCurrent: betweenLog(1e-5, 3e-7, merit * 0.7 + 0.3 * draw(7)) * (1 + 3 * crushed),
    ideality: dead ? between(3, 6, draw(8)) : between(2.5, 1.3, merit * 0.85 + 0.15 * draw(8)),
    seriesResistance: betweenLog(1500, 40, merit * 0.7 + 0.3 * draw(9)) * resistance * (1 + 30 * slack ** 2),
    leakage: (1 + 25 * crushed ** 2) / leak,
    junctionCapacitance: 3e-12 * (1 + effective),
  });
  const contact = slack > 0.3 ? 'loose' : crushed > 0.25 ? 'crushed' : 'light';
  const warnings: Warning[] = [];
  if (slack > 0.6) warnings.push(warning('detector.whisker-loose'));
  if (crushed > 0.5) warnings.push(warning('detector.whisker-crushing'));
  return { detector, spot, contact, warnings };
}
