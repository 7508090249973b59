/** The scale every so many degrees. */
export const dialTableWords = {
  scale: 'scale',
  frequency: 'kHz',
  wavelength: 'metres',
  capacitance: 'capacitance',
  loadedQ: 'loaded Q',
  bandwidth: 'bandwidth',
  note: 'Loaded Q and bandwidth of this table are those for weak signals; a strong station loads the tuned circuit more.',
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
