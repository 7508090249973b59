/** What each calculation of `faintwave calc` answers. */
export const calculationWords = {
  coil: 'Inductance, wire and self-capacitance of a coil; with a frequency its resistance and Q. Shapes: solenoid, multilayer, bank-wound, spiral, spider, basket, core.',
  coupling:
    'Mutual inductance of two coils: offset is the distance of their centres along the first one’s axis, tilt the angle between their axes, shift the distance of the second one’s centre from that axis.',
  wire: 'Resistance of a straight round wire at a frequency, and its diameter over the covering.',
  turns: 'Turns for an inductance on a former with a wire; with "turns", how far those turns must be spread for it.',
  'best-wire': 'Wires that reach an inductance on a former, highest Q first, close-wound and spaced.',
  band: 'Trimmer and padder with which a capacitor and a coil cover a band, or the coil that would.',
  aerial:
    'Capacitance, effective height and impedance of an aerial over ground, a frame, a ferrite rod or a measured aerial.',
  earth: 'Resistance of an earth in its soil, with its range from wet to dry.',
  groundwave: 'Ground-wave field strength over one kind of ground, or several from the transmitter on.',
  skywave: 'Sky-wave field strength at night on long and medium wave: the yearly median.',
  noise:
    'Radio noise: man-made noise of the surroundings, and with "time" the atmospheric noise of the season and hour.',
  detector:
    'Direct voltage, input resistance and powers of a detector, fed directly or from the tap of a tuned circuit.',
  detection: 'Direct voltage, tones and distortion after the detector of a whole receiver, by waveforms or envelopes.',
  reception:
    'A whole description: every level on every station’s path, dial position, how it is heard and what interferes.',
  vary: 'The best combinations of values in a description, each received in full and retuned: no other is better in one aim and as good in all. Aims: loudest, clearest (wanted over unwanted audio of the worst neighbour, 40 dB where none is heard), most heard.',
  fit: 'Quantities with standard errors and 90 % ranges from readings: resonance, dial, detector, width, decay.',
} as const;

export type CalculationName = keyof typeof calculationWords;
