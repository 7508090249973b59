/** Where a result about an earth leaves the range it can be trusted in: each code with its figures, SI. */
export interface EarthWarnings {
  readonly 'earth.counterpoise-dry-soil': Record<never, never>;
  /** Distance in metres; whether the resistance stated is that at radio frequency. */
  readonly 'earth.longer-than-skin-depth': { readonly reach: number; readonly isCounted: boolean };
  /** Soil in ohm metres, ground in siemens per metre: the soil lies outside nine of ten over such ground. */
  readonly 'earth.soil-and-ground': { readonly soil: number; readonly conductivity: number };
  readonly 'earth.rod-thick': Record<never, never>;
  readonly 'earth.water-pipe': Record<never, never>;
  readonly 'earth.rods-close': Record<never, never>;
}
