import type { Kelvins, OhmMetres } from '../../units/quantities.ts';

/** Metals of wire. */
export const METALS = ['copper', 'aluminium'] as const;
export type Metal = (typeof METALS)[number];

/** Room temperature, at which tables of resistance are given: 20 °C. */
export const ROOM: Kelvins = 293.15;

interface MetalFigures {
  /** Resistivity at 20 °C, Ω·m. */
  readonly resistivity: OhmMetres;
  /** Relative rise per kelvin at 20 °C. */
  readonly rise: number;
  /** kg/m³. */
  readonly density: number;
}

/**
 * Copper: IEC 60028 (0.017241 Ω·mm²/m; 0.00393 per K; 8890 kg/m³). Aluminium: IEC 60889 hard-drawn conductor
 * (28.264 nΩ·m; 0.00403 per K; 2703 kg/m³), from memory.
 */
export const METAL_FIGURES: Readonly<Record<Metal, MetalFigures>> = {
  copper: { resistivity: 1.7241e-8, rise: 0.00393, density: 8890 },
  aluminium: { resistivity: 2.8264e-8, rise: 0.00403, density: 2703 },
};

/**
 * Resistivity at a temperature, linear about 20 °C.
 * @throws RangeError where the line is no longer the metal: outside 200–500 K.
 */
export function resistivity(metal: Metal = 'copper', temperature: Kelvins = ROOM): OhmMetres {
  if (!(temperature >= 200 && temperature <= 500)) {
    throw new RangeError(`temperature ${temperature} K is outside 200 to 500 K`);
  }
  const { resistivity: rho, rise } = METAL_FIGURES[metal];
  return rho * (1 + rise * (temperature - ROOM));
}
