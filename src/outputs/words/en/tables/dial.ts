/** The scale every so many degrees. */
export const dialTableWords = {
  scale: 'scale',
  frequency: 'kHz',
  wavelength: 'metres',
  capacitance: 'capacitance',
  loadedQ: 'loaded Q',
  bandwidth: 'bandwidth',
} as const;

/** The stations in the order of the scale. */
export const dialStationsTableWords = {
  scale: 'scale',
  range: 'range (90 %)',
  frequency: 'kHz',
  station: 'station',
  loadedQ: 'loaded Q',
  bandwidth: 'bandwidth',
  verdict: 'heard',
} as const;
