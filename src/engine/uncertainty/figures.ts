import type { TunedStation } from '../reception/path/receive-station.ts';

/** Figures of a station on its way through the set that have ranges. */
export const FIGURES = {
  emf: (s) => s.emf,
  aerialPower: (s) => s.aerialPower,
  tunedCircuitVoltage: (s) => s.tunedVoltage,
  gain: (s) => (s.emf > 0 ? s.tunedVoltage / s.emf : 0),
  loadedQ: (s) => s.loadedQ,
  unloadedQ: (s) => s.unloadedQ(),
  detectorVoltage: (s) => s.steady.junctionVoltage,
  detectorPower: (s) => s.steady.inputPower,
  detectorInputResistance: (s) => s.steady.inputResistance,
  directVoltage: (s) => s.steady.directVoltage,
  audioVoltage: (s) => s.audioVoltage,
  distortion: (s) => s.distortion,
  phonesPower: (s) => s.phonesPower,
  soundPressureLevel: (s) => s.heard.spl,
} satisfies Record<string, (s: TunedStation) => number>;
export type FigureId = keyof typeof FIGURES;
export const FIGURE_IDS = Object.keys(FIGURES) as FigureId[];

/** Levels in decibels, which add; all others are worked with as logarithms while they are above 0. */
export const IN_DECIBELS: ReadonlySet<FigureId> = new Set(['soundPressureLevel']);
