/** Curves of a set tuned to a station: titles of their columns, each with its unit. */
export const curveColumns = {
  resonance: ['frequency (Hz)', 'level at the detector for 1 V/m (dB re 1 V)'],
  band: ['frequency (Hz)', 'level at the detector for 1 V/m (dB re 1 V)'],
  /** @param coils their names */
  q: (coils: readonly string[]): readonly string[] => [
    'frequency (Hz)',
    ...coils.flatMap((coil) => [
      `Q of ${coil} (ratio)`,
      `lowest Q of ${coil}, 90 % range (ratio)`,
      `highest Q of ${coil}, 90 % range (ratio)`,
    ]),
  ],
  detector: ['voltage (V)', 'current (A)'],
} as const;

/** `faintwave curves`. */
export const curvesAnswer = {
  names: {
    resonance: 'resonance curve',
    band: 'response across the tuning range',
    q: 'Q against frequency',
    detector: 'detector characteristic',
  },
  written: (title: string, curve: string, file: string): string => `${title}: ${curve} written to ${file}`,
} as const;
