import { demandWithin, ImpossibleValues } from '../../facts/impossible-values.ts';
import type { Metres } from '../../units/quantities.ts';

/**
 * What every wound coil reduces to: turns as coaxial rings, in winding order from the start, so that a tap at any turn is
 * a place in the arrays. All lie on a lattice (a list of radii, equal steps along the axis), which is what keeps sums over
 * pairs of turns cheap.
 */
export interface Winding {
  /** May be fractional; the last ring then counts for the rest. */
  readonly turns: number;
  /** To the wire's centre, m, by turn. */
  readonly radius: Float64Array;
  /** Along the axis from the middle of the lowest turn, m, by turn. */
  readonly z: Float64Array;
  /** The lattice: radii in use, m, and which of them and which step along the axis each turn has. */
  readonly radii: Float64Array;
  readonly zStep: Metres;
  readonly layer: Int32Array;
  readonly column: Int32Array;
  readonly columns: number;
  /** Every place of the lattice holds a turn. */
  readonly full: boolean;
  /** How the nearest neighbours lie: side by side along the axis, or outward in a disc. */
  readonly rows: 'axial' | 'radial';
  /** Distance of neighbours in a row, m. */
  readonly pitch: Metres;
  /** Distance of rows, m; infinite when there is one. */
  readonly rowPitch: Metres;
  /** Bare wire, m; of a Litz bundle, the bundle. */
  readonly wireRadius: Metres;
  readonly weave?: Weave;
  /** Wire per turn over 2πr: above 1 where it weaves or climbs. */
  readonly lengthFactor: number;
}

/**
 * Neighbouring turns of a woven coil pass on opposite sides of vanes or pegs. Sampled at `steps` places round the coil;
 * each turn takes the pattern `shift` places further on than the one before.
 */
export interface Weave {
  readonly outward: Float64Array;
  readonly along: Float64Array;
  readonly shift: number;
}

/** Rings in use: the whole turns and one for a fraction. */
export const ringCount = (turns: number): number => Math.max(1, Math.ceil(turns - 1e-9));

export interface Lattice {
  readonly turns: number;
  readonly radii: ArrayLike<number>;
  readonly zStep: Metres;
  readonly place: (turn: number) => readonly [layer: number, column: number];
  readonly full: boolean;
  readonly rows: Winding['rows'];
  readonly pitch: Metres;
  readonly rowPitch: Metres;
  readonly wireRadius: Metres;
  readonly weave?: Weave;
  readonly lengthFactor?: number;
}

/** Set out the rings of a lattice. @throws RangeError for turns or sizes that cannot be wound. */
export function layOut(lattice: Lattice): Winding {
  const { turns, zStep, place, ...rest } = lattice;
  const disc = lattice.rows === 'radial' && lattice.radii.length > MOST_LAYERS;
  const most = disc || !lattice.full ? MOST_IRREGULAR : MOST_TURNS;
  demandWithin('coil.turns', turns, { above: 0, max: most });
  const radii = Float64Array.from(lattice.radii);
  for (const r of radii) {
    if (!(r > lattice.wireRadius)) throw new ImpossibleValues({ code: 'coil.radius', radius: r });
  }
  demandWithin('coil.pitch', lattice.pitch, { above: 0 });
  const n = ringCount(turns);
  const radius = new Float64Array(n);
  const z = new Float64Array(n);
  const layer = new Int32Array(n);
  const column = new Int32Array(n);
  let columns = 1;
  for (let i = 0; i < n; i++) {
    const [l, c] = place(i);
    layer[i] = l;
    column[i] = c;
    radius[i] = radii[l];
    z[i] = c * zStep;
    if (c + 1 > columns) columns = c + 1;
  }
  return { ...rest, turns, radii, zStep, radius, z, layer, column, columns, lengthFactor: lattice.lengthFactor ?? 1 };
}

/** Beyond these the sums would keep a person waiting; no coil by hand comes near. */
export const MOST_TURNS = 20_000;
/** Discs and bank windings, whose pairs of turns are nearly all different. */
export const MOST_IRREGULAR = 2048;
const MOST_LAYERS = 200;

/** The last ring of a fractional number of turns carries only its part. */
export const lastWeight = (w: Winding): number => w.turns - (w.radius.length - 1);

/** Length of wire from the start to a turn (all of it by default), m. */
export function wireLengthTo(w: Winding, turn = w.turns): Metres {
  let sum = 0;
  const whole = Math.min(w.radius.length, Math.floor(turn));
  for (let i = 0; i < whole; i++) sum += w.radius[i];
  if (turn > whole && whole < w.radius.length) sum += (turn - whole) * w.radius[whole];
  return 2 * Math.PI * sum * w.lengthFactor;
}
