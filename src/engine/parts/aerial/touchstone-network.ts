import { add, type Complex, complex, divide, multiply, ONE, scale, subtract } from '../../numerics/complex.ts';
import type { Ohms } from '../../units/quantities.ts';

/** In which order a row of two ports has its off-diagonal values. */
export type PortOrder = '21_12' | '12_21';
/** What of the matrix a row has. */
export type PortShape = 'full' | 'upper' | 'lower';

/** A file as it is written, before its parameters are converted. */
export interface RawNetwork {
  readonly ports: 1 | 2;
  readonly parameter: string;
  readonly order: PortOrder;
  readonly shape: PortShape;
  readonly version: '1' | '2.0' | '2.1';
  readonly references: readonly Ohms[];
  readonly rows: readonly {
    /** Hz. */
    readonly frequency: number;
    readonly line: number;
    readonly values: readonly Complex[];
  }[];
}

/** The matrix row by row, whatever its order and shape. */
function wholeMatrix(values: readonly Complex[], order: PortOrder, shape: PortShape): readonly Complex[] {
  if (values.length === 1) return values;
  if (values.length === 3) return [values[0], values[1], values[1], values[2]];
  const [a, b, c, d] = values;
  return shape === 'full' && order === '21_12' ? [a, c, b, d] : [a, b, c, d];
}

/** (M − 1)(M + 1)⁻¹ of one or two ports. */
function reflected(m: readonly Complex[]): readonly Complex[] {
  if (m.length === 1) return [divide(subtract(m[0], ONE), add(m[0], ONE))];
  const [a, b, c, d] = m;
  const [p, q] = [add(a, ONE), add(d, ONE)];
  const determinant = subtract(multiply(p, q), multiply(b, c));
  const by = (x: Complex) => divide(x, determinant);
  return [
    by(subtract(multiply(subtract(a, ONE), q), multiply(b, c))),
    by(scale(b, 2)),
    by(scale(c, 2)),
    by(subtract(multiply(subtract(d, ONE), p), multiply(b, c))),
  ];
}

/**
 * Scattering parameters of what a row has, row by row of the matrix; infinite or NaN where there are none.
 * @param values as written. Kurokawa, Power waves and the scattering matrix, IEEE Trans. MTT 13 (1965), for equal
 * real references.
 */
export function scatteringOf(
  values: readonly Complex[],
  { parameter, order, shape, version, references: [R] }: RawNetwork,
): readonly Complex[] {
  const matrix = wholeMatrix(values, order, shape);
  if (parameter === 'S') return matrix;
  if (parameter === 'Z') return reflected(version === '1' ? matrix : matrix.map((z) => scale(z, 1 / R)));
  // By duality an admittance reflects as an impedance does, with the opposite sign.
  const y = version === '1' ? matrix : matrix.map((one) => scale(one, R));
  return reflected(y).map((s) => multiply(complex(-1), s));
}
