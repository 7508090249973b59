import type { Covering } from '../wire/wire.ts';

/** Materials a coil is wound on. */
export const FORMERS = [
  'air',
  'card',
  'damp card',
  'wood',
  'phenolic',
  'styrene',
  'ebonite',
  'glass',
  'ceramic',
  'PVC',
  'plywood',
] as const;
export type Former = (typeof FORMERS)[number];

export interface Insulator {
  /** Relative permittivity. */
  readonly permittivity: number;
  /** Loss tangent at broadcast frequencies. */
  readonly loss: number;
  /** The loss tangent may be this many times more or less. */
  readonly spread: number;
}

/**
 * Usual figures near 1 MHz, from memory of handbook tables (von Hippel; Kaye & Laby); natural materials differ from piece
 * to piece and with the weather, which the spread says. Damp card: common practice, no source.
 */
export const FORMER_FIGURES: Readonly<Record<Former, Insulator>> = {
  air: { permittivity: 1, loss: 0, spread: 1 },
  card: { permittivity: 2.8, loss: 0.035, spread: 2 },
  'damp card': { permittivity: 5, loss: 0.25, spread: 3 },
  wood: { permittivity: 2.5, loss: 0.04, spread: 2 },
  phenolic: { permittivity: 5, loss: 0.04, spread: 1.5 },
  styrene: { permittivity: 2.55, loss: 3e-4, spread: 2 },
  ebonite: { permittivity: 2.8, loss: 0.006, spread: 1.5 },
  glass: { permittivity: 7, loss: 0.007, spread: 1.5 },
  ceramic: { permittivity: 6, loss: 0.002, spread: 2 },
  // Rigid tube 0.02 to 0.06 by its filling.
  PVC: { permittivity: 3.3, loss: 0.035, spread: 1.7 },
  plywood: { permittivity: 2.8, loss: 0.05, spread: 2 },
};

const thread = (loss: number): Insulator => ({ permittivity: 2, loss, spread: 2.5 });
export const COVERING_FIGURES: Readonly<Record<Covering, Insulator>> = {
  bare: { permittivity: 1, loss: 0, spread: 1 },
  enamel: { permittivity: 3.6, loss: 0.02, spread: 1.5 },
  'single cotton': thread(0.05),
  'double cotton': thread(0.05),
  'single silk': thread(0.03),
  'double silk': thread(0.03),
  'enamel and cotton': thread(0.045),
  'enamel and silk': thread(0.03),
};
