import { type Warning, warning } from '../../facts/warning.ts';

/** What lies between the plates. */
export interface Dielectric {
  /** Relative permittivity: lowest, usual, highest, 20 °C, audio to 1 MHz. */
  readonly permittivity: readonly [number, number, number];
  /** tan δ near 1 MHz: lowest, usual, highest. */
  readonly lossTangent: readonly [number, number, number];
  /** What a builder must know about it. */
  readonly caution?: 'capacitor.paper-damp' | 'capacitor.card-lossy' | 'capacitor.phenolic-lossy';
}

/**
 * Permittivities: NBS Circular 74, Kaye & Laby, von Hippel and a public web table, as listed with their provenance in
 * reference/capacitors.json. Loss tangents, and the permittivities of card and polythene, are from memory of von Hippel's
 * tables: right to a factor of two or three, which is what the spread says.
 */
export const DIELECTRICS = {
  air: { permittivity: [1.000585, 1.000585, 1.000585], lossTangent: [0, 0, 0] },
  paper: {
    permittivity: [2, 2.6, 3],
    lossTangent: [0.005, 0.02, 0.06],
    caution: 'capacitor.paper-damp',
  },
  'waxed paper': { permittivity: [2.5, 3.3, 4], lossTangent: [0.003, 0.008, 0.02] },
  wax: { permittivity: [2.1, 2.2, 2.5], lossTangent: [0.0001, 0.0003, 0.001] },
  mica: { permittivity: [5.4, 7, 8.7], lossTangent: [0.0001, 0.0003, 0.001] },
  polythene: { permittivity: [2.2, 2.26, 2.35], lossTangent: [0.0001, 0.0003, 0.001] },
  polypropylene: { permittivity: [2.2, 2.2, 2.25], lossTangent: [0.0001, 0.0003, 0.001] },
  polyester: { permittivity: [2.8, 3.2, 4.5], lossTangent: [0.005, 0.015, 0.02] },
  polystyrene: { permittivity: [2.4, 2.55, 2.6], lossTangent: [0.00005, 0.0002, 0.0005] },
  PTFE: { permittivity: [2, 2.05, 2.1], lossTangent: [0.0001, 0.0002, 0.0003] },
  glass: { permittivity: [6, 7, 8], lossTangent: [0.004, 0.01, 0.02] },
  'hard glass': { permittivity: [4.3, 4.7, 5], lossTangent: [0.002, 0.005, 0.008] },
  card: {
    permittivity: [2.5, 3.2, 5],
    lossTangent: [0.01, 0.04, 0.15],
    caution: 'capacitor.card-lossy',
  },
  phenolic: {
    permittivity: [3.5, 4.8, 5],
    lossTangent: [0.02, 0.04, 0.08],
    caution: 'capacitor.phenolic-lossy',
  },
  ebonite: { permittivity: [2.7, 2.8, 3], lossTangent: [0.004, 0.008, 0.015] },
} as const satisfies Record<string, Dielectric>;

export type DielectricName = keyof typeof DIELECTRICS;

/** tan δ from which a capacitor loses as much as a usual coil does: by itself it holds the Q of its circuit to 100. */
const LOSSY = 0.01;

/**
 * What a builder must know about a dielectric that tunes a circuit.
 * @param name of the table
 * @param lossTangent measured, where it is known; a sheet known to be better needs no warning
 * @returns its own caution, or that it is lossy; none for a good one.
 */
export function dielectricWarnings(name: DielectricName, lossTangent?: number): Warning[] {
  const { caution, lossTangent: table }: Dielectric = dielectric(name);
  if (caution) return [warning(caution)];
  return (lossTangent ?? table[1]) >= LOSSY ? [warning('capacitor.lossy-dielectric', { dielectric: name })] : [];
}

/** @throws RangeError for a name not in the table. */
export function dielectric(name: DielectricName): Dielectric {
  if (!Object.hasOwn(DIELECTRICS, name)) throw new RangeError(`no dielectric called "${name}"`);
  return DIELECTRICS[name];
}
