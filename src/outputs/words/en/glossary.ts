/** A technical term with what it means, for a practical builder. */
export interface GlossaryEntry {
  readonly term: string;
  /** Other names and signs of the same thing. */
  readonly also?: readonly string[];
  /** One or two plain sentences. */
  readonly text: string;
  readonly related?: readonly string[];
}

const entries = <Id extends string>(
  all: Record<Id, Omit<GlossaryEntry, 'related'> & { readonly related?: readonly NoInfer<Id>[] }>,
): Readonly<Record<Id, GlossaryEntry>> => all;

/** Every technical term that is shown, once. */
export const glossary = entries({
  aerialTap: {
    term: 'tap',
    also: ['aerial tap', 'detector tap'],
    text: 'A connection to a turn of a coil between its ends. The nearer to the earthed end, the less the aerial or detector loads the tuned circuit.',
    related: ['loadingLoss', 'turnsRatio'],
  },
  availablePower: {
    term: 'available power',
    text: 'The most power that a source, for instance an aerial, can deliver: it delivers it to a load that matches its own impedance.',
    related: ['emf', 'matching'],
  },
  bandwidth: {
    term: 'bandwidth',
    also: ['−3 dB bandwidth'],
    text: 'The span of frequencies around resonance within which the response is at most 3 dB below its maximum. It is the frequency divided by the loaded Q.',
    related: ['loadedQ', 'selectivity', 'trebleLoss'],
  },
  bypassCapacitor: {
    term: 'by-pass capacitor',
    text: 'A capacitor across the load that removes the carrier behind the detector and leaves the programme.',
    related: ['diagonalClipping', 'trebleLoss'],
  },
  carrier: {
    term: 'carrier',
    text: 'The steady wave of a station at its own frequency. Modulation varies its strength with the programme.',
    related: ['modulation', 'sideband'],
  },
  channel: {
    term: 'channel',
    also: ['raster'],
    text: 'One of the equally spaced frequencies on which stations are placed: 9 kHz apart in most of the world, 10 kHz apart in the Americas.',
    related: ['selectivity'],
  },
  characteristic: {
    term: 'characteristic',
    text: 'The curve of the current through a part against the voltage across it.',
    related: ['ideality', 'saturationCurrent', 'operatingPoint'],
  },
  counterpoise: {
    term: 'counterpoise',
    text: 'A wire or net above the ground, used in place of an earth.',
    related: ['radials'],
  },
  couplingCoefficient: {
    term: 'coupling coefficient',
    also: ['k'],
    text: 'How much of the magnetic field of one coil passes through another: 0 for none, 1 for all of it.',
    related: ['turnsRatio'],
  },
  crestFactor: {
    term: 'crest factor',
    text: 'How far the peaks of a programme lie above its mean level, in decibels. Speech has a higher crest factor than dense music.',
    related: ['decibel', 'modulationDepth'],
  },
  decibel: {
    term: 'decibel',
    also: ['dB'],
    text: 'A ratio of two levels: 20 dB is ten times the voltage and a hundred times the power, 6 dB about twice the voltage. A minus sign means weaker.',
    related: ['soundPressureLevel'],
  },
  detector: {
    term: 'detector',
    text: 'The part that turns the modulated carrier into the programme, because it conducts better in one direction than in the other.',
    related: ['squareLaw', 'linearDetection', 'characteristic'],
  },
  diagonalClipping: {
    term: 'diagonal clipping',
    text: 'Distortion that arises when the capacitor behind the detector discharges more slowly than the envelope falls.',
    related: ['bypassCapacitor', 'negativePeakClipping'],
  },
  directVoltage: {
    term: 'direct voltage',
    text: 'The steady voltage behind the detector, in proportion to the mean strength of the carrier. It is easily measured with a meter.',
    related: ['detector'],
  },
  distortion: {
    term: 'distortion',
    text: 'Tones in the sound that are not in the programme. They are given as a share of the programme.',
    related: ['squareLaw', 'negativePeakClipping', 'diagonalClipping'],
  },
  effectiveHeight: {
    term: 'effective height',
    text: 'The emf in the aerial divided by the field strength. It is always less than the height of the wire.',
    related: ['emf', 'fieldStrength'],
  },
  emf: {
    term: 'emf',
    also: ['electromotive force', 'open-circuit voltage'],
    text: 'The voltage that a source gives while nothing is connected to it. The aerial’s emf is the field strength times the effective height.',
    related: ['effectiveHeight', 'availablePower'],
  },
  envelope: {
    term: 'envelope',
    text: 'The line along the peaks of the carrier. It has the shape of the programme.',
    related: ['modulation', 'linearDetection'],
  },
  fading: {
    term: 'fading',
    text: 'Slow rise and fall of a station at night, where sky waves over different paths, or sky wave and ground wave, add and cancel.',
    related: ['skyWave', 'groundWave'],
  },
  fieldStrength: {
    term: 'field strength',
    text: 'How strong the wave of a station is at a place, in volts per metre: 1 mV/m is strong for a simple set.',
    related: ['effectiveHeight'],
  },
  fullyMeshed: {
    term: 'fully meshed, fully open',
    also: ['meshed', 'open'],
    text: 'The ends of the travel of a variable capacitor: greatest capacitance and lowest frequency fully meshed, least capacitance and highest frequency fully open.',
    related: ['strayCapacitance'],
  },
  groundWave: {
    term: 'ground wave',
    text: 'The wave that follows the ground from the transmitter. It is the same by day and by night and goes farthest over the sea.',
    related: ['skyWave', 'groundConductivity'],
  },
  groundConductivity: {
    term: 'conductivity of the ground',
    text: 'How well the ground conducts, in millisiemens per metre. Wet soil and sea conduct well and weaken the ground wave less.',
    related: ['groundWave'],
  },
  hearingThreshold: {
    term: 'hearing threshold',
    text: 'The level below which a person with normal hearing hears nothing, here with the noise of the room included.',
    related: ['soundPressureLevel', 'masking'],
  },
  ideality: {
    term: 'ideality',
    also: ['ideality factor', 'n'],
    text: 'How steeply the current of a junction rises with voltage. At 1, the ideal, a voltage half as large gives the same rise as at 2.',
    related: ['characteristic', 'saturationCurrent', 'zeroBiasResistance'],
  },
  impedance: {
    term: 'impedance',
    text: 'Opposition to alternating current, in ohms: resistance together with the effect of inductance and capacitance. It depends on the frequency.',
    related: ['inputResistance', 'matching'],
  },
  inputResistance: {
    term: 'input resistance',
    text: 'The resistance with which a detector loads the circuit before it. It depends on the carrier and on the load.',
    related: ['loadingLoss', 'zeroBiasResistance'],
  },
  interference: {
    term: 'interference',
    text: 'Another station, or a tone between two carriers, that is heard together with the wanted station.',
    related: ['selectivity', 'masking'],
  },
  linearDetection: {
    term: 'linear detection',
    text: 'Detection of a strong carrier: the output follows the envelope in proportion.',
    related: ['squareLaw', 'envelope'],
  },
  loadedQ: {
    term: 'loaded Q',
    text: 'Q of the tuned circuit with aerial and detector connected. It sets bandwidth and selectivity.',
    related: ['q', 'unloadedQ', 'bandwidth'],
  },
  loadingLoss: {
    term: 'loading loss',
    text: 'How far the voltage of the tuned circuit falls when a load, for instance the detector, is connected, in decibels.',
    related: ['inputResistance', 'aerialTap'],
  },
  lossTangent: {
    term: 'loss tangent',
    also: ['tan δ'],
    text: 'The losses of an insulating material: the share of the stored energy that it turns into heat. A capacitor alone has a Q of 1 / tan δ.',
    related: ['q'],
  },
  manMadeNoise: {
    term: 'man-made noise',
    text: 'Noise of electrical equipment in the neighbourhood, received by the aerial together with the stations.',
    related: ['hearingThreshold'],
  },
  masking: {
    term: 'masking',
    also: ['masked'],
    text: 'A sound makes a weaker one inaudible. A masked station would be heard if the stronger one were absent.',
    related: ['interference', 'hearingThreshold'],
  },
  matching: {
    term: 'matching',
    text: 'The choice of tap, coupling or transformer with which a load takes the most power from a source.',
    related: ['availablePower', 'turnsRatio'],
  },
  modulation: {
    term: 'amplitude modulation',
    also: ['AM', 'modulation'],
    text: 'The programme varies the strength of the carrier, and its frequency stays.',
    related: ['modulationDepth', 'sideband', 'envelope'],
  },
  modulationDepth: {
    term: 'depth of modulation',
    also: ['modulation depth'],
    text: 'How far the programme varies the strength of the carrier: at 100 % it falls to zero at the deepest points.',
    related: ['modulation', 'overModulation'],
  },
  negativePeakClipping: {
    term: 'negative-peak clipping',
    text: 'Distortion at the deepest points of the modulation, when the load draws more audio current than direct current.',
    related: ['diagonalClipping', 'modulationDepth'],
  },
  operatingPoint: {
    term: 'operating point',
    text: 'The mean voltage and current of a detector on its characteristic.',
    related: ['characteristic', 'bias'],
  },
  bias: {
    term: 'bias',
    text: 'A small direct voltage that moves the operating point of a detector to where it works better.',
    related: ['operatingPoint'],
  },
  overModulation: {
    term: 'over-modulation',
    text: 'A depth of modulation above 100 %: the envelope no longer has the shape of the programme.',
    related: ['modulationDepth'],
  },
  permeability: {
    term: 'permeability',
    also: ['relative permeability'],
    text: 'How many times a core raises the magnetic field of a coil, and with it the inductance. A rod reaches only a part of the permeability of its material.',
  },
  permittivity: {
    term: 'permittivity',
    also: ['relative permittivity'],
    text: 'How many times a material raises the capacitance between two plates, compared with air.',
    related: ['lossTangent'],
  },
  q: {
    term: 'Q',
    also: ['quality factor'],
    text: 'How small the losses of a coil or circuit are. The higher Q is, the stronger and the narrower the resonance.',
    related: ['loadedQ', 'unloadedQ', 'bandwidth'],
  },
  radials: {
    term: 'radials',
    text: 'Wires in or on the ground, spread like the spokes of a wheel, used as an earth.',
    related: ['counterpoise'],
  },
  radiationResistance: {
    term: 'radiation resistance',
    text: 'The resistance that stands for the power an aerial radiates. It is small for aerials much shorter than the wavelength.',
    related: ['effectiveHeight'],
  },
  range: {
    term: 'range (90 %)',
    text: 'The span within which the value lies for 9 of 10 such sets and places, given what is not known of them.',
    related: ['tolerance'],
  },
  resonance: {
    term: 'resonance',
    also: ['tuned circuit'],
    text: 'A coil and a capacitor together respond most at one frequency, where energy moves back and forth between them. Such a pair is a tuned circuit.',
    related: ['q', 'bandwidth'],
  },
  reverseVoltage: {
    term: 'reverse voltage',
    also: ['reverse-voltage rating'],
    text: 'Voltage in the direction in which a detector should not conduct. A part with a low rating conducts or fails above it.',
    related: ['characteristic'],
  },
  saturationCurrent: {
    term: 'saturation current',
    text: 'The small current that a junction conducts in reverse. The larger it is, the lower the resistance at zero volts.',
    related: ['ideality', 'zeroBiasResistance'],
  },
  selectivity: {
    term: 'selectivity',
    text: 'How well a set separates stations that are near in frequency.',
    related: ['bandwidth', 'loadedQ', 'interference'],
  },
  selfCapacitance: {
    term: 'self-capacitance',
    text: 'The capacitance between the turns of a coil. It adds to the tuning capacitor.',
    related: ['selfResonance', 'strayCapacitance'],
  },
  selfResonance: {
    term: 'self-resonance',
    text: 'The frequency at which a coil resonates with its own self-capacitance. The highest frequency to be tuned must lie well below it.',
    related: ['selfCapacitance', 'resonance'],
  },
  sideband: {
    term: 'sideband',
    text: 'The waves above and below the carrier that hold the programme, each as far from it as the tone’s frequency.',
    related: ['modulation', 'trebleLoss'],
  },
  skyWave: {
    term: 'sky wave',
    also: ['night-time sky wave'],
    text: 'The wave that the ionosphere reflects after dark: it brings distant stations, and fades.',
    related: ['groundWave', 'fading'],
  },
  soundPressureLevel: {
    term: 'sound pressure level',
    also: ['SPL', 'dB SPL'],
    text: 'The level of a sound at the ear in decibels above 20 µPa: 0 dB SPL is about the least that can be heard in silence, 60 dB SPL is speech nearby.',
    related: ['decibel', 'hearingThreshold'],
  },
  spectrum: {
    term: 'spectrum',
    text: 'The frequencies that a signal consists of, each with its strength.',
    related: ['sideband', 'carrier'],
  },
  squareLaw: {
    term: 'square law',
    also: ['square-law detection'],
    text: 'Detection of a weak carrier: the output is in proportion to the square of the carrier, so half the carrier gives a quarter of the sound.',
    related: ['linearDetection', 'zeroBiasResistance'],
  },
  strayCapacitance: {
    term: 'stray capacitance',
    text: 'Capacitance of wiring, terminals and hands, which nobody puts in on purpose. It shifts the tuning, most at the high end of the dial.',
    related: ['selfCapacitance', 'fullyMeshed'],
  },
  tolerance: {
    term: 'tolerance',
    text: 'How far a part or a set as built may differ from its nominal value.',
    related: ['range'],
  },
  trebleLoss: {
    term: 'treble loss',
    text: 'Weakening of high tones, by a narrow bandwidth or by a capacitor across the load.',
    related: ['bandwidth', 'sideband', 'bypassCapacitor'],
  },
  turnsRatio: {
    term: 'turns ratio',
    text: 'Turns of one winding divided by those of the other. Voltages are in this ratio, resistances in its square.',
    related: ['matching', 'couplingCoefficient'],
  },
  unloadedQ: {
    term: 'unloaded Q',
    text: 'Q of coil and tuning capacitor with nothing else connected. Aerial and detector lower it to the loaded Q.',
    related: ['q', 'loadedQ'],
  },
  waveTrap: {
    term: 'wave trap',
    also: ['trap'],
    text: 'A second tuned circuit in the aerial lead or across the set that weakens one strong station.',
    related: ['interference', 'resonance'],
  },
  zeroBiasResistance: {
    term: 'resistance at zero volts',
    also: ['zero-bias resistance'],
    text: 'Resistance of a detector to very small voltages. For weak stations the detector loads the tuned circuit with it.',
    related: ['inputResistance', 'saturationCurrent'],
  },
  zipCord: {
    term: 'zip cord',
    also: ['speaker cable', 'lamp cord'],
    text: 'Two stranded wires side by side in soft PVC that pull apart. Wound into a coil, the strands and the covering lose more than solid wire does.',
    related: ['q'],
  },
});

export type GlossaryId = keyof typeof glossary;

const COLLATOR = new Intl.Collator('en', { sensitivity: 'base' });

/** The entries by their terms. */
export const glossaryInOrder = (): readonly (readonly [GlossaryId, GlossaryEntry])[] =>
  (Object.entries(glossary) as [GlossaryId, GlossaryEntry][]).sort(([, a], [, b]) => COLLATOR.compare(a.term, b.term));

/** Of the window that shows it. */
export const glossaryWords = {
  title: 'Glossary',
  close: 'Close',
  explain: (term: string): string => `${term}: explain`,
  also: (names: readonly string[]): string => `Also: ${names.join(', ')}.`,
  related: 'See also',
  inGlossary: 'In the glossary',
} as const;
