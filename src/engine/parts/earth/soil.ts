import { demandWithin, ImpossibleValues } from '../../facts/impossible-values.ts';
import type { OhmMetres, SiemensPerMetre } from '../../units/quantities.ts';

export interface Soil {
  readonly resistivity: OhmMetres;
  /** Lowest and highest that such soil is found to have, wet to dry. */
  readonly range: readonly [OhmMetres, OhmMetres];
  readonly source: string;
}

const TP108 = 'Bureau of Standards Technologic Paper 108 (O. S. Peters, 1918), mean, lowest and highest';
const FIELD = 'published earth resistances and ends of the published tables; the tables’ 10–100 Ω·m is for moist clay';
const about = (resistivity: OhmMetres, factor: number): Soil => ({
  resistivity,
  range: [resistivity / factor, resistivity * factor],
  source: FIELD,
});

/**
 * Soils by kind, in the top metre and whatever the season, 90 %. Published tables (reference/earths.json, entry
 * soil_resistivity: BS 7430 has loam at 5–50, clay at 10–100 Ω·m) are for soil that stays moist at depth: the resistances
 * of earths as built in clay want 29 to 330 Ω·m.
 */
export const SOILS = {
  'garden loam': about(80, 5),
  clay: about(80, 5),
  chalk: about(120, 4),
  'clay, sand and gravel': about(150, 4),
  'dry sand': about(1500, 5),
  'ashes and cinders': { resistivity: 23.7, range: [5.9, 70], source: TP108 },
  'clay, shale and loam': { resistivity: 40.6, range: [3.4, 163], source: TP108 },
  'loam with sand and gravel': { resistivity: 158, range: [10.2, 1350], source: TP108 },
  // Another copy of the table gives 2585 Ω·m, the mid-point of the same extremes, as its mean.
  'gravel, sand and stones': { resistivity: 940, range: [590, 4580], source: TP108 },
} as const satisfies Record<string, Soil>;
export type SoilName = keyof typeof SOILS;
/** Soils with figures of their own. */
export const SOIL_NAMES = Object.keys(SOILS) as SoilName[];

/** Soil of the top metre where nothing is known of it, over ground of 3 mS/m. Ends as for any soil in any season. */
const UNKNOWN: Soil = about(150, 5);
/** Conductivity that the usual soil goes with, and what land has, S/m. */
const USUAL_GROUND = 3e-3;
const LAND: readonly [SiemensPerMetre, SiemensPerMetre] = [1e-4, 3e-2];

/**
 * Soil of the top metre from the ground that waves travel over, which is the mean of the uppermost 10 to 100 m: the one goes
 * as the square root of the other, ×/÷ 5. Fitted to published earth resistances; the exponent is common practice.
 * @param conductivity of the ground, S/m, above 0; taken between 0.1 and 30 mS/m, since nobody's earth lies in the sea
 * @returns resistivity and range, Ω·m; 150 over average ground
 */
export function soilOverGround(conductivity: SiemensPerMetre = USUAL_GROUND): Soil {
  demandWithin('earth.ground-conductivity', conductivity, { above: 0, below: 1e3 });
  const by = Math.sqrt(USUAL_GROUND / Math.min(LAND[1], Math.max(LAND[0], conductivity)));
  return {
    ...UNKNOWN,
    resistivity: UNKNOWN.resistivity * by,
    range: [UNKNOWN.range[0] * by, UNKNOWN.range[1] * by],
  };
}

/**
 * Whether soil and ground disagree: the soil lies outside nine of ten that are found over such ground.
 * @param resistivity of the soil, Ω·m
 * @param conductivity of the ground, S/m
 * @returns true where one of the two should be looked at again
 */
export function soilDisagrees(resistivity: OhmMetres, conductivity: SiemensPerMetre): boolean {
  const [low, high] = soilOverGround(conductivity).range;
  return !(resistivity >= low && resistivity <= high);
}

/** The ground an earth lies in: a kind of soil, or a resistivity, measured or guessed. */
export interface SoilSpec {
  readonly soil?: SoilName;
  /** Ω·m, above 0 to 10⁶; wins over `soil`. */
  readonly soilResistivity?: OhmMetres;
  /** Wet to dry; default half to twice the figure, as it swings over the year (common practice, no source). */
  readonly soilResistivityRange?: readonly [OhmMetres, OhmMetres];
}

/** @throws RangeError when neither is given or a figure is not above 0. */
export function soilOf({ soil, soilResistivity, soilResistivityRange }: SoilSpec): Soil {
  const named = soil === undefined ? undefined : (SOILS as Record<string, Soil>)[soil];
  if (soil !== undefined && !named) throw new ImpossibleValues({ code: 'earth.soil', soils: SOIL_NAMES, soil });
  if (soilResistivity === undefined && !named) throw new ImpossibleValues({ code: 'earth.no-soil' });
  const resistivity = soilResistivity ?? named?.resistivity ?? Number.NaN;
  demandWithin('earth.soil-resistivity', resistivity, { above: 0, max: 1e6 });
  const own = soilResistivity === undefined ? named?.range : undefined;
  const [low, high] = soilResistivityRange ?? own ?? [resistivity / 2, resistivity * 2];
  if (!(low > 0 && low <= resistivity && resistivity <= high && high < Number.POSITIVE_INFINITY)) {
    throw new ImpossibleValues({ code: 'earth.range', value: resistivity, low, high });
  }
  return { resistivity, range: [low, high], source: named && own ? named.source : 'as given' };
}
