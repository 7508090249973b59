/** A scene in words; names in braces are filled in with the set’s figures. */
export interface SceneTexts {
  readonly title: string;
  /** Short, legible on a small screen. */
  readonly caption: string;
  /** For the speaker. */
  readonly note: string;
  /** Headings of its rows, where they are not the points’ own. */
  readonly rows: readonly string[];
}

/** Scenes that come with the tool. */
export type StoryId =
  | 'carrier'
  | 'programme'
  | 'modulation'
  | 'sidebands'
  | 'aerial'
  | 'all stations'
  | 'tuning'
  | 'resonance'
  | 'before the detector'
  | 'one half'
  | 'detector curve'
  | 'after the detector'
  | 'smoothing'
  | 'charging'
  | 'load capacitor'
  | 'detectors'
  | 'valve'
  | 'bands'
  | 'old coil';

export const storyTexts: Readonly<Record<StoryId | 'whole path', SceneTexts>> = {
  'whole path': { title: 'The whole path', caption: 'From the programme to the phones.', note: '', rows: [] },
  carrier: {
    title: 'The carrier is too fast to see',
    caption: 'The carrier: {carrier}, one cycle every {cycle}. Over 20 ms it looks like a solid band.',
    note: 'This is what {station} sends while nobody is speaking. Over 20 ms it looks like a solid band. Zoom in until the window shows a few microseconds only, and the band separates into single cycles. One cycle of a {tone} tone lasts as long as {cyclesPerTone} cycles of the carrier.',
    rows: [],
  },
  programme: {
    title: 'The programme is too slow to transmit',
    caption:
      'The programme: {tone}, one cycle every {toneCycle}. A quarter-wave aerial for it would be {toneQuarterWave} high.',
    note: 'One steady tone stands for the programme. The ear hears frequencies from about 30 Hz to 15 or 18 kHz. A transmitting aerial is efficient when it is about a quarter of a wavelength high: {toneQuarterWave} for this tone, {quarterWave} for the carrier.',
    rows: [],
  },
  modulation: {
    title: 'Amplitude modulation',
    caption: 'The frequency of the carrier stays the same; the programme changes its amplitude.',
    note: 'The programme controls the amplitude of the carrier: it rises when the programme is positive and falls when the programme is negative. The line along the top is the envelope; it has the shape of the programme. The envelope along the bottom is the same shape upside down. Remember the lower one: it matters at the detector.',
    rows: [],
  },
  sidebands: {
    title: 'Carrier and sidebands',
    caption: 'The carrier and two sidebands, each {sideband} of its amplitude, {tone} above and below it.',
    note: 'The modulated carrier is the sum of three steady waves: the carrier and one sideband on each side of it. The greater the depth of modulation, the stronger the sidebands: half of {depth} is {sideband}. The sum holds nothing at the frequency of the programme. A tuned circuit with too small a bandwidth weakens the sidebands of the high tones, which is heard as treble loss.',
    rows: [],
  },
  aerial: {
    title: 'The aerial',
    caption: '{aerialNote} The emf from {station} is {aerialVoltage}.',
    note: 'A wire in the garden and the ground below it form a capacitor. The field of the passing wave drives charge up and down the wire, and this current flows through the set to earth. {loopNote}',
    rows: [],
  },
  'all stations': {
    title: 'All stations at once',
    caption: 'Received at the same time: {stations}. Without tuning, everything is heard together.',
    note: 'The signals of all stations within range arrive at the same time. Without tuning, all of them would be heard together and none could be understood. Zoom in to see how they go in and out of phase. The picture is drawn for a tuned circuit with a loaded Q of 1.2 only: its voltage is small, but it passes every station.',
    rows: ['All stations together'],
  },
  tuning: {
    title: 'Tuning to one station',
    caption: '{tuningNote} On {station} its bandwidth is {bandwidth} (−3 dB) at a loaded Q of {q}.',
    note: 'Coil and capacitor resonate at one frequency. More inductance or more capacitance lowers it, less raises it. Tuned to {station}, the circuit passes this station and attenuates the others. The pale bars are the stations as received; the dark part of each bar is what the tuned circuit passes.',
    rows: [],
  },
  resonance: {
    title: 'Resonance',
    caption:
      'Energy moves between coil and capacitor. The voltage reaches {voltageGain} times the emf; 63 % of that takes about {riseTime}.',
    note: 'Why at one frequency? The energy moves back and forth between the electric field of the capacitor and the magnetic field of the coil. Small pushes at the right moment build up a large oscillation, as on a swing. A pendulum of the same Q is drawn beside it: it builds up in the same number of cycles, slowly enough to watch.',
    rows: [],
  },
  'before the detector': {
    title: 'Before the detector: silence',
    caption: 'The average is zero: the half cycles cancel. Phones cannot follow {carrier}; they follow the average.',
    note: 'This is {station} alone: {tunedVoltage} of carrier, up to {tunedPeak} at the peaks of modulation. Connect phones across it: nothing is heard. The diaphragm is far too heavy to move at this frequency and follows the average only, the dark line. Each positive half cycle cancels the negative one after it.',
    rows: [],
  },
  'one half': {
    title: 'One half only',
    caption: 'With the lower half covered, the average follows the programme.',
    note: 'Cover the lower half with a hand and look at the dark line, the average: it now has the shape of the programme. The set needs a part that does to the current what the hand does to the picture: a part that conducts in one direction only.',
    rows: [],
  },
  'detector curve': {
    title: 'The detector conducts in one direction',
    caption: '{detector}: {detectorVoltage} of carrier drives it up and down its current–voltage curve.',
    note: 'A crystal with a cat’s whisker, a germanium diode and a valve each conduct well in one direction and hardly at all in the other. The dot is the operating point: it moves along the detector’s curve with the carrier. To the right of the bend a large current flows, to the left almost none. {tapNote}',
    rows: [],
  },
  'after the detector': {
    title: 'After the detector',
    caption: '{detectorVoltage} of carrier reaches the detector. {rectifierNote}',
    note: 'This is the output of the detector into the load resistance alone, without a capacitor. At the peaks of modulation {detectorPeak} reaches the detector and {detectorOutput} comes out; the rest is lost across the detector. The output consists of separate pulses; one cycle of the carrier lasts {cycle}. Nearly all pulses have the same direction, so their average, the dark line, follows the programme.',
    rows: [],
  },
  smoothing: {
    title: 'The capacitor removes the carrier',
    caption:
      '{capacitor} holds the voltage between pulses. {dischargeNote} Output: {directVoltage}, with {audioVoltage} peak of audio on it.',
    note: 'A small capacitor after the detector stores the charge of each pulse and supplies the load until the next one. The pulses become a line that falls little between them, so the average is higher than that of the pulses alone. What is left of the carrier flows through the capacitor to earth, and the programme of {station} is heard. {dipNote}',
    rows: [],
  },
  charging: {
    title: 'Charging and discharging',
    caption: 'A pulse of charge at each crest of the carrier, a steady discharge in between.',
    note: 'The same in slow motion. Each time the carrier exceeds the voltage of the capacitor, a pulse of current charges it. For the rest of the cycle the capacitor discharges. {dischargeNote} Load resistance and capacitance give a time constant of {timeConstant}.',
    rows: [],
  },
  'load capacitor': {
    title: 'Choosing the load capacitor',
    caption: 'Strong station, germanium diode, 10 kΩ. Too small: the carrier remains. Too large: diagonal clipping.',
    note: 'If the capacitor is far too small, it is discharged before the next pulse and the carrier remains. If it is far too large, it is still charged when the envelope has fallen: the output cannot follow the falling envelope, and fast parts of the programme are lost. This is called diagonal clipping.',
    rows: ['Far too small: 30 pF', 'About right: 4.7 nF', 'Far too large: 300 nF'],
  },
  detectors: {
    title: 'Detectors compared',
    caption: 'The same station through four detectors into 10 kΩ, drawn to one scale: {rowVoltages}.',
    note: 'Detectors differ in the voltage they need. Galena and germanium already conduct at small voltages. A silicon diode needs about half a volt before it conducts noticeably: the bottom row shows what it gives for this station.',
    rows: ['Galena, good spot', 'Germanium', 'Valve', 'Silicon'],
  },
  valve: {
    title: 'A valve as detector',
    caption:
      'Only the hot cathode emits electrons. The current rises while the heater warms it and fades after the heater is off.',
    note: 'A valve conducts in one direction because only the cathode is hot enough to emit electrons. Switch the heater on: nothing at first, then the current rises. Switch it off: the cathode cools slowly, and the current fades. At full temperature the cathode could emit far more current than the small signal of this set takes.',
    rows: [],
  },
  bands: {
    title: 'From long wave to medium wave',
    caption: 'Five times the carrier frequency: five times as many pulses, and at the same Q five times the bandwidth.',
    note: 'What changes on another band? The programme and the detection stay the same; only the frequency of the carrier is higher. The pulses follow one another faster, so that a smaller capacitor is enough; the coil needs fewer turns; and at the same Q the tuned circuit passes more neighbouring stations.',
    rows: ['Long wave, 200 kHz', 'Medium wave, 1000 kHz'],
  },
  'old coil': {
    title: 'If the old coil stays',
    caption: 'The coil is unchanged. {oldCoilNote}',
    note: 'The same set on the other band, once with a coil for that band and once with the coil it has. Both rows are drawn to one scale, and the lower one is heard as loud as it is against the upper one. {oldCoilCause} A set that is moved to another band is given another coil, more taps or a band switch.',
    rows: ['With a coil for this band', 'With the coil unchanged'],
  },
};
