import type { MeasurementKind } from '../../../../engine/measure/measurements.ts';

/** How a measurement is made, for the person at the bench. */
export interface BenchCard {
  /** One sentence: what it gives. */
  readonly about: string;
  /** Short, in order. */
  readonly steps: readonly string[];
  readonly writeDown: string;
  /** What makes the result wrong without being noticed. */
  readonly trap: string;
}

const AERIAL_OFF = 'Disconnect the aerial, or let a metre of wire take its place.';
const LOOSE = 'Couple the generator loosely: one turn of wire near the coil, or a capacitor below 1 pF.';
const PEAK = 'Set the frequency to the highest voltage.';
const TEMPERATURE = 'Note the temperature of the room.';

const ANALYSER = [
  'Calibrate the analyser with open, short and load at the end of the lead.',
  'Connect the part with leads as short as possible.',
  'Sweep from below to above the frequencies that matter, with at least 101 points.',
  'Save the sweep as a Touchstone file and drop it here.',
] as const;
const NOT_CALIBRATED =
  'A calibration error of 0.3 % makes the Q of a good coil useless: then only a lower bound of Q is given. Measure the width instead.';

const CARDS: Readonly<Record<MeasurementKind | 'value', BenchCard>> = {
  value: {
    about: 'One figure read off an instrument, or known from a data sheet or another bench.',
    steps: ['Disconnect the part from the set.', 'Zero the instrument with its leads.', 'Connect the part and read.'],
    writeDown: 'the reading with its unit, and its standard error where you know it',
    trap: 'A part that is still connected is measured together with what hangs on it.',
  },
  resonance: {
    about: 'Inductance and self-capacitance of the coil from its resonance with several known capacitors.',
    steps: [
      'Take the coil out of the set.',
      'Connect a known capacitor across the coil, with short leads.',
      LOOSE,
      PEAK,
      'Repeat with at least three capacitors whose values differ widely, such as 47, 150 and 470 pF.',
    ],
    writeDown: 'for each capacitor its value and the frequency of the highest voltage',
    trap: 'The voltmeter’s probe adds its own capacitance to the coil’s. Use a ×10 probe or couple it by 1 pF.',
  },
  dial: {
    about: 'Inductance of the coil and strays from where known stations stand on the dial.',
    steps: [
      AERIAL_OFF,
      'Tune in a station whose frequency you know, to the loudest.',
      'Read the pointer: 0 fully open, 1 fully meshed.',
      'Repeat with at least three stations, two of them near the ends of the dial. Five or more show a misread one.',
    ],
    writeDown: 'for each station its position and its announced frequency, and the capacitor’s two ends',
    trap: 'With the aerial connected the strays include the aerial.',
  },
  detector: {
    about: 'Saturation current, ideality and series resistance of the detector from its curve.',
    steps: [
      'Disconnect the detector from the set at one end.',
      'Connect battery, resistor, ammeter and detector in series; the voltmeter across the detector alone.',
      'Start with a large resistor and go down, from some nanoamperes to about a milliampere.',
      'Take at least four points; eight, a factor of three apart in current, are better.',
      TEMPERATURE,
    ],
    writeDown: 'for each point volts across the detector and amperes through it',
    trap: 'An ammeter inside the voltmeter’s loop adds its burden of 0.1 to 0.3 V: it belongs outside.',
  },
  width: {
    about: 'Q of the coil from the width of its resonance.',
    steps: [
      'Leave coil and capacitor connected; disconnect aerial, detector and phones.',
      LOOSE,
      'Find the highest voltage.',
      'Step the frequency through the resonance: at least two points on each side, down to about half the peak.',
    ],
    writeDown: 'for each point the frequency and the voltage',
    trap: 'Coupling that is too close widens the resonance. Halve the coupling: Q must stay.',
  },
  decay: {
    about: 'Q of the tuned circuit from samples of its ringing.',
    steps: [
      'Feed a square wave of some kilohertz through a capacitor below 1 pF to the tuned circuit.',
      'Watch the ringing after an edge with a ×10 probe.',
      'Save the samples from just after the edge, at least 16 of them.',
    ],
    writeDown: 'the sample rate and the samples',
    trap: 'A ×1 probe adds 100 pF and 1 MΩ: the ringing is then that of the probe as well.',
  },
  'decay-record': {
    about: 'Q of the tuned circuit from an oscilloscope’s recording of its ringing.',
    steps: [
      'Feed a square wave of some kilohertz through a capacitor below 1 pF to the tuned circuit.',
      'Trigger on the edge and let the ringing fill the screen.',
      'Save the trace as a table of time and volts and drop it here.',
    ],
    writeDown: 'nothing: the file holds it',
    trap: 'At least ten samples an oscillation are needed, or the frequency is not what it seems.',
  },
  'equal-levels': {
    about: 'Q of the coil from two frequencies of equal level.',
    steps: [
      LOOSE,
      'Note the highest voltage.',
      'Go below the resonance until the voltage has fallen to 0.707 of it, then above.',
    ],
    writeDown: 'the two frequencies',
    trap: 'The generator’s own level must not change between them.',
  },
  'capacitance-width': {
    about: 'Q of the coil from how far the capacitor is turned between two equal levels.',
    steps: [
      LOOSE,
      'Leave the generator at one frequency and tune to the highest voltage.',
      'Turn the calibrated capacitor until the voltage has fallen to 0.707 of it, below and above.',
    ],
    writeDown: 'the frequency, both settings of the capacitor, and the strays across it',
    trap: 'The strays count as much as the capacitor: estimate them, do not leave them at zero.',
  },
  'detector-leakage': {
    about: 'The detector’s curve with its leakage, from both directions.',
    steps: [
      'Take the forward curve: battery, resistor, ammeter, detector, the voltmeter across the detector.',
      'Turn the detector round and take at least two points at up to −1 V.',
      'Do not exceed the detector’s reverse-voltage rating.',
      TEMPERATURE,
    ],
    writeDown: 'volts and amperes with their signs: at least four points forward, two reverse',
    trap: 'Light on a glass diode adds a current of its own: cover it.',
  },
  'detector-voltmeter': {
    about: 'The detector’s curve with one voltmeter and known resistors.',
    steps: [
      'Measure the battery.',
      'Connect battery, a known resistor and the detector in series; the voltmeter across the detector.',
      'Repeat with at least four resistors, such as 10 kΩ to 10 MΩ.',
      TEMPERATURE,
    ],
    writeDown: 'the battery’s voltage, and for each resistor the volts across the detector',
    trap: 'The voltmeter’s own 10 MΩ carries most of the current through a large resistor: give its resistance.',
  },
  'detector-bridge': {
    about: 'The detector’s curve by a bridge that is balanced by ear or meter.',
    steps: [
      'Connect detector and a known resistor as one arm, two known resistors as the other.',
      'Change one resistor until the meter between the arms reads zero.',
      'Repeat at four or more voltages.',
      TEMPERATURE,
    ],
    writeDown: 'for each balance the source and the three resistors',
    trap: 'Warm fingers on the detector shift the balance: wait until it stands still.',
  },
  'mutual-inductance': {
    about: 'Mutual inductance of two coils from their inductance in series, aiding and opposing.',
    steps: [
      'Connect both coils in series, where they are mounted, and read the inductance.',
      'Interchange the two ends of one coil and read again.',
      'Read each coil alone too if you can.',
    ],
    writeDown: 'both readings; the larger one is aiding',
    trap: 'Below a coupling of 0.02 the two readings differ by less than the meter’s error.',
  },
  'double-hump': {
    about: 'Coupling of two tuned circuits from the two frequencies of highest voltage.',
    steps: [
      'Tune each circuit to the same frequency with the other one open.',
      'Connect both, and couple the generator loosely to the first.',
      'Find the two highest voltages at the second.',
    ],
    writeDown: 'both frequencies, and the Q of the circuits where you know it',
    trap: 'Humps of unequal height mean circuits that are not tuned alike.',
  },
  'aerial-substitution': {
    about: 'Capacitance of the aerial from how far it shifts stations along the dial.',
    steps: [
      'Tune in a station with the aerial disconnected and read the pointer.',
      'Connect the aerial through its usual series capacitor, tune in again and read.',
      'Repeat at three or four frequencies.',
    ],
    writeDown: 'for each station its frequency and both positions, and the series capacitor',
    trap: 'A series capacitor that is small against the aerial hides it: take a larger one.',
  },
  'aerial-replacement': {
    about: 'Capacitance of the aerial by putting a known capacitor in its place.',
    steps: [
      'Tune in a station with the aerial connected and mark the pointer.',
      'Put a known capacitor from the aerial terminal to the earth terminal in the aerial’s place.',
      'Change the capacitor until the same station is tuned in at the same mark.',
      'Repeat at three or four frequencies.',
    ],
    writeDown: 'for each frequency the capacitor, and the series capacitor if there is one',
    trap: 'Long leads to the capacitor add about 1 pF a centimetre of pair.',
  },
  'aerial-resistance': {
    about: 'Resistance of aerial and earth from how known resistors in the lead lower the level.',
    steps: [
      'Couple the aerial loosely and tune in a steady station by day.',
      'Read the direct voltage across the load.',
      'Put 22, 47 and 100 Ω in the aerial’s lead one after the other, tuning again each time.',
    ],
    writeDown: 'for each resistor, none included, the level',
    trap: 'Without tuning again the fall is that of detuning, not of resistance.',
  },
  'earth-electrodes': {
    about: 'Resistance of the earth with two auxiliary earths.',
    steps: [
      'Disconnect the set, and drive in two auxiliary rods at the corners of a triangle, 5 m or more apart.',
      'Feed 12 V alternating at most, from an isolating transformer or a battery buzzer, between two of the three.',
      'Read volts and amperes and divide.',
      'Do the same for the other two pairs.',
    ],
    writeDown: 'the three resistances, and the sizes and distances of the rods',
    trap: 'Direct current polarises the rods and reads too high; rods closer than their length read too low.',
  },
  'earth-comparison': {
    about: 'The earth against another one, by the level of a station.',
    steps: [
      'Tune in a steady station by day and read the level.',
      'Change to the other earth or counterpoise, tune again, and read.',
    ],
    writeDown: 'both levels, and the resistance of the whole aerial circuit with the first earth',
    trap: 'A station that fades between the readings looks like a better earth.',
  },
  'phones-resistance': {
    about: 'Direct resistance of the phones.',
    steps: [
      'Take the phones off your ears and disconnect them.',
      'Read the resistance of the leads, tips together.',
      'Read the phones.',
    ],
    writeDown: 'both readings',
    trap: 'Fingers on both tips put some 100 kΩ across the reading.',
  },
  'phones-impedance': {
    about: 'Impedance of the phones at one frequency, compared with a resistor.',
    steps: [
      'Connect a resistor near the expected impedance in series with the phones.',
      'Feed 1 kHz from the generator, as quiet as the meter still reads.',
      'Read the voltage across the resistor and across the phones, and across both for the phase.',
    ],
    writeDown: 'the frequency, the resistor, and the two or three voltages',
    trap: 'Many hand meters are wrong on alternating volts above 400 Hz: check with two resistors first.',
  },
  'phones-sound-card': {
    about: 'Impedance and phase of the phones with a sound card and a known resistor.',
    steps: [
      'Connect the output through about 10 kΩ to input B; input A to the output itself.',
      'Measure B over A at 1 kHz with nothing across B, with the known resistor, and with the phones.',
      'Switch off automatic gain and noise reduction.',
    ],
    writeDown: 'level ratio and phase for open, known resistor and phones',
    trap: 'A microphone input feeds a direct voltage into the phones: use a line input.',
  },
  audibility: {
    about: 'How far a station is above the threshold of hearing, by shunting the phones until it is just audible.',
    steps: [
      'Tune in a steady station in a quiet room.',
      'Put a resistor across the phones, smaller and smaller, until speech is just audible.',
      'Repeat four times, from above and from below.',
    ],
    writeDown: 'the resistor of each trial, and the impedance of the phones with its phase',
    trap: 'The direct resistance in place of the impedance understates the level by up to 14 dB.',
  },
  'field-strength': {
    about: 'Field strength of a station from the direct current of the calibrated set.',
    steps: [
      'In place of aerial and earth connect the generator through a dummy aerial: unmodulated, at the station’s frequency.',
      'Note the detector’s direct current for several emfs.',
      'Connect aerial and earth and note the current from the station, at noon.',
    ],
    writeDown: 'the calibration, the current, and the effective height with its error',
    trap: 'A reading without aerial that is not zero is the meter’s offset: subtract it.',
  },
  'analyser-coil': {
    about: 'Inductance, self-capacitance and Q of the coil from a sweep.',
    steps: ANALYSER,
    writeDown: 'nothing: the file holds it',
    trap: NOT_CALIBRATED,
  },
  'analyser-capacitor': {
    about: 'Capacitance of the variable capacitor and inductance of its leads from a sweep.',
    steps: [...ANALYSER, 'Do it fully open and fully meshed, one measurement each.'],
    writeDown: 'where the pointer stood',
    trap: 'The frame of the capacitor belongs on the outer conductor, or your hand is measured too.',
  },
  'analyser-aerial': {
    about: 'Capacitance, inductance and resistance of aerial and earth from a sweep.',
    steps: ANALYSER,
    writeDown: 'weather and soil: dry or wet',
    trap: 'Strong stations reach the analyser through the aerial and show as spikes: leave them out by a finer sweep.',
  },
  'analyser-earpiece': {
    about: 'Capacitance and resonance of the crystal earpiece from a sweep.',
    steps: ANALYSER,
    writeDown: 'nothing: the file holds it',
    trap: 'Hold the earpiece as the ear does: an open and a closed one have other resonances.',
  },
  'analyser-transformer': {
    about: 'Inductance of the primary and leakage of the transformer from two sweeps.',
    steps: [
      'Calibrate the analyser with open, short and load at the end of the lead.',
      'Sweep the primary with the secondary open and save the file.',
      'Sweep it again with the secondary shorted and save the file.',
    ],
    writeDown: 'nothing: the two files hold it',
    trap: 'Most analysers begin above the audio range: iron is measured there, not at 1 kHz.',
  },
  'analyser-peak': {
    about: 'Q of the tuned circuit between two loosely coupled ports.',
    steps: [
      'Couple one turn from each port loosely to the coil, on opposite sides.',
      'Sweep through the resonance, at least 20 points across its width.',
      'Save the sweep as a two-port Touchstone file and drop it here.',
    ],
    writeDown: 'nothing: the file holds it',
    trap: 'The peak must stay below −30 dB, or the ports load the circuit.',
  },
};

/**
 * How a measurement is made.
 * @param kind id of the kind, or a figure read off an instrument
 * @returns what it gives, steps, what to write down, and the trap
 */
export const benchCard = (kind: MeasurementKind | 'value'): BenchCard => CARDS[kind];

/** Headings of a bench card, on the page and the command line. */
export const benchCardWords = {
  connect: 'How to connect',
  takes: (equipment: readonly string[]): string => `You need ${equipment.join(', ')}.`,
  steps: 'What to do',
  writeDown: (what: string): string => `Write down ${what}.`,
  trap: (what: string): string => `Trap: ${what}`,
  cautions: 'Cautions',
} as const;
