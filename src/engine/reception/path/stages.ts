import { warning } from '../../facts/warning.ts';
import { magnitude } from '../../numerics/complex.ts';
import { capital, formatNumber, formatQuantity } from '../../units/format.ts';
import { type Decibels, decibels, type Hertz, powerDecibels, type Watts } from '../../units/quantities.ts';
import type { DetectionLaw, LawOfDetector } from '../detection/detection-law.ts';
import { EAR_SPREAD, PEAKS } from '../hearing/index.ts';
import { effectiveHeight, type Receiver, TEST_TONE, type TunedStation } from './receive-station.ts';
import type { Stage } from './types.ts';

/** ± dB on the level in the phones from crystal or diode, coil and taps as built. Common practice, no source. */
const PARTS_SPREAD = 4;

/** ± dB of the sound in the end: field, parts and phones add as powers; in square law a field's error counts double. */
export function heardSpread(set: Receiver, s: TunedStation): number {
  return Math.hypot(s.field.spread * s.work.fieldExponent, PARTS_SPREAD, set.circuit.load.spread, EAR_SPREAD / 2);
}

/** Every level on the way of a tuned station, field to ear. @param law of the set's detector with its load. */
export function stagesOf(set: Receiver, s: TunedStation, law: LawOfDetector, width: Hertz): Stage[] {
  const { circuit } = set;
  const f = s.station.frequency;
  const spread = 10 ** (s.field.spread / 20);
  const around = (x: number, exponent = 1): [number, number] => [x / spread ** exponent, x * spread ** exponent];
  const height = effectiveHeight(circuit, f);
  const mean = (s.audioVoltage * s.audioVoltage) / 2;
  const matched = decibelsOf(s.steady.inputPower, s.availableAtDetector);
  const exponent = s.work.fieldExponent;
  const noisy = s.field.fieldStrength < 3 * s.field.noise ? [warning('reception.near-noise')] : [];
  return [
    {
      id: 'field',
      title: 'Field at the site',
      value: s.field.fieldStrength,
      kind: 'field strength',
      unit: 'V/m',
      text: formatQuantity(s.field.fieldStrength, 'field strength', 2),
      sentence: s.field.sentence,
      range: around(s.field.fieldStrength),
      warnings: [...s.field.warnings, ...noisy],
    },
    {
      id: 'aerial',
      title: 'In the aerial',
      value: s.emf,
      kind: 'voltage',
      unit: 'V',
      text: `${formatQuantity(s.emf, 'voltage', 2)} peak`,
      sentence: `An effective height of ${formatQuantity(height, 'length', 2)} makes ${formatQuantity(s.emf, 'voltage', 2)} of the field; ${powerWords(s.aerialPower)} is there to be had.`,
      range: around(s.emf),
      warnings: [...(circuit.aerial ?? circuit.loop)!.warningsAt(f), ...circuit.earth.warnings],
    },
    {
      id: 'tuned circuit',
      title: 'On the tuned circuit',
      value: s.tunedVoltage,
      kind: 'voltage',
      unit: 'V',
      text: `${formatQuantity(s.tunedVoltage, 'voltage', 2)} peak`,
      change: decibelsOf(s.availableAtDetector, s.aerialPower),
      sentence: `Resonance lifts it ${formatNumber(s.tunedVoltage / s.emf, 2)} times; loaded Q ${formatNumber(s.loadedQ, 2)}, ${formatQuantity(width, 'frequency', 2)} broad.`,
      range: around(s.tunedVoltage),
      warnings: s.within ? [] : [warning('reception.pointer-at-end')],
    },
    {
      id: 'detector',
      title: 'At the detector',
      value: s.steady.junctionVoltage,
      kind: 'voltage',
      unit: 'V',
      text: `${formatQuantity(s.steady.junctionVoltage, 'voltage', 2)} peak`,
      change: matched,
      sentence: `The detector takes ${powerWords(s.steady.inputPower)} and loads the circuit like ${formatQuantity(s.steady.inputResistance, 'resistance', 2)}. ${LAW_WORDS[law.lawAt(s.steady.junctionVoltage)]}`,
      range: around(s.steady.junctionVoltage),
      warnings: [...circuit.detector.warnings, ...s.steady.warnings],
    },
    {
      id: 'audio',
      title: 'After the detector',
      value: s.audioVoltage,
      kind: 'voltage',
      unit: 'V',
      text: `${formatQuantity(s.audioVoltage, 'voltage', 2)} peak audio`,
      change: decibelsOf(s.audioPower, s.steady.inputPower),
      sentence: `${formatQuantity(s.steady.directVoltage, 'voltage', 2)} direct, and the programme at ${formatNumber(Math.min(s.station.modulation, 1) * 100, 2)} % depth; ${formatNumber(100 * s.distortion, 2)} % distortion.`,
      range: around(s.audioVoltage, exponent),
      warnings: [...s.audio.warnings],
    },
    {
      id: 'phones',
      title: circuit.load.listening === 'phones' ? 'In the phones' : 'In the amplifier',
      value: s.phonesPower,
      kind: 'power',
      unit: 'W',
      text: s.phonesPower < LEAST_POWER ? '<1 aW' : formatQuantity(s.phonesPower, 'power', 2),
      change: mean > 0 ? decibelsOf(s.phonesPower, s.audioPower) : undefined,
      sentence: `${capital(circuit.load.label)}: ${formatQuantity(magnitude(circuit.load.impedanceAt(TEST_TONE)), 'resistance', 2)} at 1 kHz, ${formatNumber(circuit.load.sensitivity.level, 3)} dB SPL for ${circuit.load.sensitivity.per === 'mW' ? '1 mW' : circuit.load.sensitivity.per === 'V' ? '1 V' : '10 mV'}.`,
      range: around(s.phonesPower, 2 * exponent),
      warnings: [...circuit.load.warnings],
    },
    {
      id: 'ear',
      title: 'At the ear',
      value: s.heard.spl,
      kind: 'level',
      unit: 'dB SPL',
      text: levelWords(s.heard.spl),
      sentence: `${s.heard.sentence}${beforeProgramme(set, s)}`,
      range: [s.heard.spl - heardSpread(set, s), s.heard.spl + heardSpread(set, s)],
      warnings: s.heard.warnings,
    },
  ];
}

/** Undefined where nothing arrives or nothing is left. */
const decibelsOf = (after: Watts, before: Watts): Decibels | undefined =>
  after > 0 && before > 0 ? powerDecibels(after / before) : undefined;

/** How the sound follows the carrier across the detector, in words. */
const LAW_WORDS: Record<DetectionLaw, string> = {
  square:
    'With this load it works by square law on such a carrier: half of it would give about a quarter of the sound.',
  'faster than square':
    'The carrier hardly reaches the bend of its curve: half of it would give less than a quarter of the sound.',
  between: 'It works between square law and straight detection.',
  straight: 'The carrier is large enough for it to follow the envelope straight.',
};

/** Powers below this are nothing a builder could tell from none, W. */
const LEAST_POWER: Watts = 1e-18;

const powerWords = (power: Watts): string =>
  power < LEAST_POWER ? 'next to nothing' : formatQuantity(power, 'power', 2);

const levelWords = (level: Decibels): string => `${formatNumber(Math.round(level), 4)} dB SPL`;

/** How the level of the programme follows from that of a tone, which is what the figure of the phones speaks of. */
function beforeProgramme(set: Receiver, s: TunedStation): string {
  const tone = toneLevel(set, s);
  const below = Math.round(tone) - Math.round(s.heard.spl);
  const { programme } = s.station;
  if (!Number.isFinite(tone) || programme === 'tone' || s.heard.words === 'not heard' || below < 1) return '';
  const depth = `${formatNumber(Math.min(s.station.modulation, 1) * 100, 2)} %`;
  const is = programme === 'mixed' ? 'speech and music are' : `${programme} is`;
  const seldom = PEAKS[programme];
  const why =
    below > seldom
      ? `${seldom} dB because loud moments come seldom, the rest because the set and what one listens with give other notes less than this one`
      : 'because loud moments come seldom';
  return ` A steady tone of 1 kHz at ${depth} depth would be ${levelWords(tone)}; ${is} ${below} dB less on average, ${why}.`;
}

/** Of the test tone at the ear. */
const toneLevel = (set: Receiver, s: TunedStation): Decibels =>
  set.soundPressureOfVoltAt(TEST_TONE) +
  decibels((s.audio.audioCurrent * magnitude(set.transducerAt(TEST_TONE))) / Math.SQRT2);
