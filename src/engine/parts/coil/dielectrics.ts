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
  'waxed card',
  'hardboard',
  'acrylic',
  'ABS',
  'PLA',
  'polycarbonate',
  'polyethylene',
  'polypropylene',
  'fibreglass',
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

/** What a coil is wound on. */
export interface FormerFigures extends Insulator {
  /** Usual wall of a tube of it, m: ×/÷ 1.6 is within what the loss's own spread holds. */
  readonly wall: number;
}

/**
 * Usual figures near 1 MHz, from memory of handbook tables (von Hippel, Dielectric Materials and Applications, 1954; Kaye &
 * Laby); natural materials differ from piece to piece and with the weather, which the spread says. Printed ABS and PLA
 * from makers' sheets and published resonator measurements, from memory: their filling and dye differ. Damp and waxed
 * card, hardboard and plywood: common practice, no source. Walls: common practice, no source; PVC tube by the sizes of
 * pressure and waste pipe, 1.8 to 3.2 mm.
 */
export const FORMER_FIGURES: Readonly<Record<Former, FormerFigures>> = {
  air: { permittivity: 1, loss: 0, spread: 1, wall: 1.5e-3 },
  card: { permittivity: 2.8, loss: 0.035, spread: 2, wall: 1.5e-3 },
  'damp card': { permittivity: 5, loss: 0.25, spread: 3, wall: 1.5e-3 },
  wood: { permittivity: 2.5, loss: 0.04, spread: 2, wall: 1.5e-3 },
  phenolic: { permittivity: 5, loss: 0.04, spread: 1.5, wall: 1.5e-3 },
  styrene: { permittivity: 2.55, loss: 3e-4, spread: 2, wall: 1.5e-3 },
  ebonite: { permittivity: 2.8, loss: 0.006, spread: 1.5, wall: 1.5e-3 },
  glass: { permittivity: 7, loss: 0.007, spread: 1.5, wall: 1.5e-3 },
  ceramic: { permittivity: 6, loss: 0.002, spread: 2, wall: 1.5e-3 },
  // Rigid tube 0.02 to 0.06 by its filling.
  PVC: { permittivity: 3.3, loss: 0.035, spread: 1.7, wall: 2.5e-3 },
  plywood: { permittivity: 2.8, loss: 0.05, spread: 2, wall: 4e-3 },
  'waxed card': { permittivity: 2.7, loss: 0.015, spread: 2, wall: 1.5e-3 },
  hardboard: { permittivity: 3.2, loss: 0.06, spread: 2, wall: 3e-3 },
  acrylic: { permittivity: 2.7, loss: 0.015, spread: 1.4, wall: 3e-3 },
  ABS: { permittivity: 2.8, loss: 0.008, spread: 1.7, wall: 2.5e-3 },
  PLA: { permittivity: 2.9, loss: 0.01, spread: 1.8, wall: 2e-3 },
  polycarbonate: { permittivity: 2.95, loss: 0.01, spread: 1.4, wall: 2e-3 },
  polyethylene: { permittivity: 2.3, loss: 3e-4, spread: 2, wall: 3e-3 },
  polypropylene: { permittivity: 2.25, loss: 4e-4, spread: 2, wall: 2e-3 },
  fibreglass: { permittivity: 4.6, loss: 0.02, spread: 1.5, wall: 1.5e-3 },
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
  // Soft PVC with plasticiser loses more than hard tube (von Hippel, from memory).
  PVC: { permittivity: 3.5, loss: 0.06, spread: 1.7 },
  'stranded PVC': { permittivity: 3.5, loss: 0.06, spread: 1.7 },
  'zip cord': { permittivity: 3.5, loss: 0.06, spread: 1.7 },
  PTFE: { permittivity: 2.1, loss: 2e-4, spread: 2 },
};
