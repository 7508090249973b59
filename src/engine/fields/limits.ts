/**
 * Least and greatest sizes of a description, SI, by what they are of: wider than anything made by hand, and within what
 * the models hold for. Fields that need another give it themselves. The reader and the published schema take them alike.
 */
export const LIMITS = {
  /** Bare wire of a coil, or one strand of Litz: thinner than any gauge sold, thicker than 0 AWG. */
  coilWire: { min: 2e-5, max: 0.01 },
  /** Wire, rod or tube that hangs as an aerial. */
  aerialWire: { min: 5e-5, max: 0.05 },
  /** Centre to centre of neighbouring turns. */
  turnSpacing: { min: 2e-5, max: 0.1 },
  layerSpacing: { min: 2e-5, max: 0.02 },
  /** Formers, hubs and circles of pegs. */
  former: { min: 1e-3, max: 2 },
  /** Plates, leaves, tubes, sheets. */
  plate: { min: 1e-3, max: 2 },
  vaneRadius: { min: 1e-3, max: 0.3 },
  /** Between vanes, plates or tubes in air. */
  gap: { min: 1e-5, max: 0.02 },
  /** Dielectric film, paper, glass. */
  dielectric: { min: 1e-6, max: 0.02 },
  /** Left between foil and dielectric. */
  airLeft: { min: 1e-8, max: 0.01 },
  /** Rods, wires and plates of an earth, spans of an aerial. */
  span: { min: 0.05, max: 500 },
  height: { min: 0.05, max: 200 },
  effectiveHeight: { min: 1e-4, max: 200 },
  /** A length of which no more is known. */
  length: { min: 1e-5, max: 1e4 },
  capacitance: { min: 1e-15, max: 1e-3 },
  inductance: { min: 1e-9, max: 1e3 },
  resistance: { min: 1e-3, max: 1e10 },
  frequency: { min: 1e4, max: 3e7 },
  voltage: { min: -1000, max: 1000 },
  angle: { min: -360, max: 360 },
  ratio: { min: 0, max: 1000 },
  lossTangent: { min: 0, max: 1 },
  saturationCurrent: { min: 1e-18, max: 0.1 },
  /** Of the air at a detector. */
  temperature: { min: 200, max: 400 },
  resistivity: { min: 0.05, max: 1e6 },
  conductivity: { min: 1e-6, max: 10 },
  permittivity: { min: 1, max: 100 },
  fieldStrength: { min: 1e-9, max: 100 },
  power: { min: 1e-3, max: 5e6 },
  /** Station to set; half round the earth at most. */
  distance: { min: 1, max: 2.1e7 },
  modulation: { min: 1e-3, max: 1.5 },
} as const;
