import type { LoadDescription } from '../../../../engine/kinds/loads/load-schema.ts';
import type { Verdict } from '../../../../engine/reception/path/types.ts';
import { formatNumber } from '../../../../engine/units/format.ts';
import { bandSpan, wholeKHz } from '../../figures.ts';
import { plural } from '../grammar.ts';
import { kilohertz, percent, volts } from './format.ts';

/** What moves when a set is tuned. */
export type TunerId = 'vanes' | 'foil' | 'tubes' | 'book' | 'slider' | 'variometer';
export type LoopId = 'frame' | 'rod';

/** Every name a caption may use in braces, with what it stands for. */
export const figureMeanings = {
  set: 'name of the set',
  place: 'name of the place',
  station: 'name of the station',
  carrier: 'carrier frequency',
  cycle: 'duration of one cycle of the carrier',
  wavelength: 'wavelength of the carrier',
  quarterWave: 'a quarter of that wavelength',
  cyclesPerTone: 'cycles of the carrier in one cycle of the tone',
  tone: 'frequency of the tone that stands for the programme',
  toneCycle: 'duration of one cycle of the tone',
  toneQuarterWave: 'a quarter of the wavelength that the tone would have in the air',
  depth: 'depth of modulation',
  sideband: 'amplitude of each sideband, as a share of the carrier',
  aerialNote: 'sentence: what the aerial is',
  loopNote: 'sentence: how a frame or rod aerial works; empty with a wire aerial',
  aerialVoltage: 'emf of the aerial, peak',
  tunedVoltage: 'carrier on the tuned circuit, peak',
  tunedPeak: 'the same at the peaks of modulation',
  tuningNote: 'sentence: how the set is tuned',
  voltageGain: 'voltage on the tuned circuit over the emf of the aerial',
  q: 'loaded Q of the tuned circuit',
  bandwidth: 'bandwidth of the tuned circuit, −3 dB',
  riseTime: 'time in which the tuned circuit reaches 63 % of its voltage',
  detectorVoltage: 'carrier at the detector, peak',
  rowVoltages: 'carrier at the detector in each row, least to greatest, and why they differ',
  tapNote: 'sentence: why that is less than on the tuned circuit; empty where it is not',
  detectorPeak: 'carrier at the detector at the peaks of modulation',
  detectorOutput: 'output of the detector then, without a capacitor',
  detector: 'name of the detector',
  rectifierNote: 'sentence: which half cycles the detector passes',
  directVoltage: 'direct voltage after the detector, of the carrier without programme',
  audioVoltage: 'audio after the detector, peak',
  capacitor: 'capacitance of the load capacitor',
  timeConstant: 'load resistance times load capacitance',
  dischargeNote: 'sentence: what discharges the load capacitor',
  dipNote: 'sentence: why the output falls below zero; empty where it does not',
  stations: 'number of stations received',
  heard: 'how the station is heard',
  oldCoilNote:
    'sentences: what the set receives on the other band with its coil unchanged; empty where no row keeps it',
  oldCoilCause: 'sentence: why that is so; empty where no row keeps the coil',
} as const;
export type FigureName = keyof typeof figureMeanings;

const TUNING: Readonly<Record<TunerId, string>> = {
  vanes: 'Turning the vanes moves the resonance along the band.',
  foil: 'Sliding the foils over each other moves the resonance along the band.',
  tubes: 'Sliding one tube into the other moves the resonance along the band.',
  book: 'Closing the hinged plates moves the resonance along the band.',
  slider: 'Moving the slider along the coil moves the resonance along the band.',
  variometer: 'Turning the inner coil moves the resonance along the band.',
};

const DISCHARGE: Readonly<Record<LoadDescription['kind'] | 'nothing', string>> = {
  phones: 'The phones discharge it.',
  'moving-coil phones': 'The phones discharge it.',
  'crystal earpiece': 'The resistor across the earpiece discharges it.',
  amplifier: 'The input resistance of the amplifier discharges it.',
  nothing: 'Almost nothing discharges it.',
};

const HEARD: Readonly<Record<Verdict, string>> = {
  loud: 'loud',
  comfortable: 'comfortable',
  quiet: 'quiet',
  faint: 'faint',
  'not heard': 'not heard',
  masked: 'masked by another station',
  'out of range': 'out of range of the dial',
};

const LOOP_AERIAL: Readonly<Record<LoopId, string>> = {
  frame:
    'A wire aerial and the ground form a capacitor; this set has a frame aerial, which responds to the magnetic field.',
  rod: 'A wire aerial and the ground form a capacitor; this set has a ferrite rod, which responds to the magnetic field.',
};
const LOOP_NOTE: Readonly<Record<LoopId, string>> = {
  frame: 'This set has no such wire: the magnetic field through the turns of its frame aerial induces the emf.',
  rod: 'This set has no such wire: the magnetic field through the turns on its ferrite rod induces the emf.',
};

/** A set on another carrier with its own coil, and with a coil for the carrier's band. */
interface OldCoilFacts {
  /** Hz. */
  readonly carrier: number;
  /** Range the set tunes with its own coil, Hz, and whether the carrier is within. */
  readonly lowest: number;
  readonly highest: number;
  readonly within: boolean;
  /** Carrier at the detector, peak V, and loaded Q: with its own coil and with the other. */
  readonly kept: number;
  readonly changed: number;
  readonly keptQ: number;
  readonly changedQ: number;
}

const wholeKilohertz = (f: number): string => `${wholeKHz(f)} kHz`;

/** A set that tunes one frequency only has no range. */
const rangeTuned = ({ lowest, highest }: OldCoilFacts): string =>
  highest - lowest < 1e3 ? `only ${wholeKilohertz(lowest)}` : bandSpan(lowest, highest);

/** One level against another, dB. */
function ratioText(difference: number): string {
  const size = Math.abs(difference);
  return size < 0.5 ? 'about the same' : `${formatNumber(size, 2)} dB ${difference < 0 ? 'less' : 'more'}`;
}

function oldCoilNote(facts: OldCoilFacts): string {
  const { carrier, lowest, within, kept, changed } = facts;
  const difference = ratioText(20 * Math.log10(kept / changed));
  const levels = `the detector gets ${volts(kept)} in place of ${volts(changed)} (${difference})`;
  return within
    ? `The set tunes ${rangeTuned(facts)} and so ${kilohertz(carrier)} too: ${levels}.`
    : `The set tunes ${rangeTuned(facts)}, not ${kilohertz(carrier)}: at the ${carrier < lowest ? 'low' : 'high'} end ${levels}.`;
}

function oldCoilCause({ carrier, lowest, highest, within, keptQ, changedQ }: OldCoilFacts): string {
  if (within)
    return `The tuned circuit resonates at ${kilohertz(carrier)} with either coil; its loaded Q is ${formatNumber(keptQ, 2)} with the old one and ${formatNumber(changedQ, 2)} with the other.`;
  const isBelow = carrier < lowest;
  const share = isBelow
    ? `${formatNumber((lowest / carrier) ** 2, 2)} times`
    : `${percent((highest / carrier) ** 2)} of`;
  return `Resonance at ${kilohertz(carrier)} takes about ${share} the inductance or capacitance that the set has at the ${isBelow ? 'low' : 'high'} end of its range.`;
}

/** Figures that are words. */
export const figureTexts = {
  exampleSet: 'Example set',
  examplePlace: 'Example place',
  /** Station A, Station B … */
  exampleStation: (index: number): string => `Station ${String.fromCharCode(65 + (index % 26))}`,
  /** A value that drawing and path give a little differently. */
  about: (value: string): string => `about ${value}`,
  aerialNote: (loop?: LoopId): string => (loop ? LOOP_AERIAL[loop] : 'The wire and the ground form a capacitor.'),
  loopNote: (loop?: LoopId): string => (loop ? LOOP_NOTE[loop] : ''),
  tuningNote: (tuner: TunerId): string => TUNING[tuner],
  /** Least and greatest of the rows' carriers at the detector, V. */
  rowVoltages: (least: number, greatest: number): string =>
    greatest < 1.02 * least
      ? `a carrier of ${volts(least)} at each`
      : `carriers of ${volts(least)} to ${volts(greatest)}, as each loads the tuned circuit`,
  tapNote: (tunedVoltage: number): string =>
    `The detector is tapped down: it gets less than the ${volts(tunedVoltage)} on the tuned circuit, and loads the circuit less.`,
  rectifierNote: (bothHalves: boolean): string =>
    bothHalves
      ? 'Two detectors pass both half cycles in one direction, and the average follows the programme.'
      : 'It passes one half of each cycle, and the average of that half follows the programme.',
  dischargeNote: (load: LoadDescription['kind'] | 'nothing'): string => DISCHARGE[load],
  dipNote: 'Where the line falls below zero, the inductance of the phones keeps the current flowing a little longer.',
  heard: (how: Verdict): string => HEARD[how],
  oldCoilNote,
  oldCoilCause,
  stations: (count: number): string => `${count} ${plural(count, 'station', 'stations')}`,
} as const;
