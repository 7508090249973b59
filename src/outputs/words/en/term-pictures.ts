/** Of the small pictures beside the terms: what they show, in words, and their letters. */
export const termPictureWords = {
  decibel: {
    title: 'Levels in decibels',
    text: 'Four bars of voltage: 0 dB is the whole, −6 dB half of it, −12 dB a quarter, −20 dB a tenth.',
    bar: (decibels: number): string => `${decibels === 0 ? '' : '−'}${Math.abs(decibels)} dB`,
  },
  q: {
    title: 'Resonance at high and low Q',
    text: 'Two resonance curves on one axis of frequency: that of Q 120 is three times as high and a third as wide as that of Q 40.',
    high: 'Q 120',
    low: 'Q 40',
  },
  bandwidth: {
    title: 'Bandwidth of a resonance curve',
    text: 'A resonance curve with its bandwidth between the two frequencies at which it is 3 dB below its maximum.',
    below: '−3 dB',
    width: 'bandwidth',
  },
  lossTangent: {
    title: 'Loss tangent as an angle',
    text: 'The current of a capacitor leads the voltage by almost a quarter of a turn. The angle that is missing is δ: tan δ is the current in phase with the voltage divided by the rest.',
    angle: 'δ',
    voltage: 'voltage',
    current: 'current',
  },
  ideality: {
    title: 'Characteristics of ideality 1 and 2',
    text: 'Current against voltage of two junctions: at ideality 2 the curve needs twice the voltage for the same current.',
    one: 'n = 1',
    two: 'n = 2',
  },
  zeroBiasResistance: {
    title: 'Resistance at zero volts',
    text: 'The characteristic of a detector with the straight line that touches it at zero volts: one over its slope is the resistance.',
    slope: '1 / R',
    at: '0 V',
  },
  effectiveHeight: {
    title: 'Effective height of an aerial',
    text: 'An upright wire of 10 m: its current falls from the foot to nothing at the top, so its effective height is 5 m.',
    wire: '10 m',
    effective: '5 m',
    current: 'current',
  },
  selfCapacitance: {
    title: 'Self-capacitance of a coil',
    text: 'A coil with a capacitor drawn beside it that stands for the capacitance between its turns.',
  },
} as const;
