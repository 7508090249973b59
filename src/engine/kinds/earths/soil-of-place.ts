import { soilDisagrees, soilOverGround } from '../../parts/earth/soil.ts';
import { type Ground, groundConstants } from '../../place/ground.ts';
import { resistivityOf } from '../models.ts';
import type { EarthDescription } from './earth-schema.ts';

/**
 * An earth with the soil of its place where none is said: one ground under the waves and around the metal.
 * @param earth as described
 * @param ground of the place
 * @returns the same earth where its soil is said; otherwise with the usual resistivity over that ground, Ω·m
 */
export function withSoilOfPlace(earth: EarthDescription, ground: Ground): EarthDescription {
  if (earth.kind === 'measured') return earth;
  const isSaid =
    earth.soil === 'as its resistivity' ? earth.soilResistivity !== undefined : earth.soil !== 'as the place';
  if (isSaid) return earth;
  const { resistivity } = soilOverGround(groundConstants(ground).conductivity);
  return { ...earth, soil: 'as the place', soilResistivity: resistivity };
}

/**
 * Soil and ground of a set where they are unlikely together.
 * @param earth as described
 * @param ground of the place
 * @returns resistivity of the soil (Ω·m) and conductivity of the ground (S/m); undefined where they agree
 */
export function soilAgainstGround(
  earth: EarthDescription,
  ground: Ground,
): { readonly soil: number; readonly conductivity: number } | undefined {
  if (earth.kind === 'measured') return undefined;
  const soil = resistivityOf(earth);
  const { conductivity } = groundConstants(ground);
  return soilDisagrees(soil, conductivity) ? { soil, conductivity } : undefined;
}
