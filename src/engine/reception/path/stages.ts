import { warning } from '../../facts/warning.ts';
import { magnitude } from '../../numerics/complex.ts';
import { type Decibels, decibels, type Hertz, powerDecibels, type Watts } from '../../units/quantities.ts';
import type { LawOfDetector } from '../detection/detection-law.ts';
import { PEAKS } from '../hearing/index.ts';
import { effectiveHeight, type Receiver, TEST_TONE, type TunedStation } from './receive-station.ts';
import type { ToneFacts } from './stage-facts.ts';
import type { Hearing, Stage } from './types.ts';

/**
 * Every level on the way of a tuned station, field to ear.
 * @param law of the set's detector with its load. @param hearing undefined out of range.
 */
export function stagesOf(
  set: Receiver,
  s: TunedStation,
  { law, width, hearing }: { law: LawOfDetector; width: Hertz; hearing?: Hearing },
): Stage[] {
  const { circuit } = set;
  const f = s.station.frequency;
  const height = effectiveHeight(circuit, f);
  const mean = (s.audioVoltage * s.audioVoltage) / 2;
  const matched = decibelsOf(s.steady.inputPower, s.availableAtDetector);
  const noisy = s.field.fieldStrength < 3 * s.field.noise ? [warning('reception.near-noise')] : [];
  return [
    {
      id: 'field',
      value: s.field.fieldStrength,
      kind: 'field strength',
      unit: 'V/m',
      facts: {
        stage: 'field',
        how: s.field.how,
        distance: s.field.distance,
        sea: s.field.sea,
        departureAngle: s.field.departureAngle,
      },
      warnings: [...s.field.warnings, ...noisy],
    },
    {
      id: 'aerial',
      value: s.emf,
      kind: 'voltage',
      unit: 'V',
      facts: { stage: 'aerial', effectiveHeight: height, emf: s.emf, availablePower: s.aerialPower },
      warnings: [...(circuit.aerial ?? circuit.loop)!.warningsAt(f), ...circuit.earth.warnings],
    },
    {
      id: 'tuned circuit',
      value: s.tunedVoltage,
      kind: 'voltage',
      unit: 'V',
      change: decibelsOf(s.availableAtDetector, s.aerialPower),
      facts: {
        stage: 'tuned circuit',
        gain: s.emf > 0 ? s.tunedVoltage / s.emf : 0,
        loadedQ: s.loadedQ,
        bandwidth: width,
      },
      warnings: [
        ...(s.within ? [] : [warning('reception.pointer-at-end')]),
        ...(s.within && s.otherWithin === false
          ? [warning('arrangement.aerial-circuit-out-of-reach', { isMeshed: s.other > 0.5 })]
          : []),
      ],
    },
    {
      id: 'detector',
      value: s.steady.junctionVoltage,
      kind: 'voltage',
      unit: 'V',
      change: matched,
      facts: {
        stage: 'detector',
        inputPower: s.steady.inputPower,
        inputResistance: s.steady.inputResistance,
        law: law.lawAt(s.steady.junctionVoltage),
      },
      warnings: [...circuit.detector.warnings, ...s.steady.warnings],
    },
    {
      id: 'audio',
      value: s.audioVoltage,
      kind: 'voltage',
      unit: 'V',
      change: decibelsOf(s.audioPower, s.steady.inputPower),
      facts: {
        stage: 'audio',
        directVoltage: s.steady.directVoltage,
        depth: Math.min(s.station.modulation, 1),
        distortion: s.distortion,
      },
      warnings: [...s.audio.warnings],
    },
    {
      id: 'phones',
      value: s.phonesPower,
      kind: 'power',
      unit: 'W',
      change: mean > 0 ? decibelsOf(s.phonesPower, s.audioPower) : undefined,
      facts: {
        stage: 'phones',
        load: circuit.set.load,
        impedance: magnitude(circuit.load.impedanceAt(TEST_TONE)),
        sensitivity: circuit.load.sensitivity,
        listening: circuit.load.listening,
      },
      warnings: [...circuit.load.warnings],
    },
    {
      id: 'ear',
      value: hearing?.level,
      kind: 'level',
      unit: 'dB SPL',
      facts: { stage: 'ear', hearing, tone: hearing && toneFacts(set, s) },
      warnings: hearing ? s.heard.warnings : [],
    },
  ];
}

/** Undefined where nothing arrives or nothing is left. */
const decibelsOf = (after: Watts, before: Watts): Decibels | undefined =>
  after > 0 && before > 0 ? powerDecibels(after / before) : undefined;

/** How the level of the programme follows from that of a tone, which is what the figure of the phones speaks of. */
function toneFacts(set: Receiver, s: TunedStation): ToneFacts | undefined {
  const level = toneLevel(set, s);
  const below = Math.round(level) - Math.round(s.heard.spl);
  const { programme, modulation } = s.station;
  if (!Number.isFinite(level) || programme === 'tone' || s.heard.loudness === 'not heard' || below < 1)
    return undefined;
  return { programme, depth: Math.min(modulation, 1), level, below, crest: PEAKS[programme] };
}

/** Of the test tone at the ear. */
const toneLevel = (set: Receiver, s: TunedStation): Decibels =>
  set.soundPressureOfVoltAt(TEST_TONE) +
  decibels((s.audio.audioCurrent * magnitude(set.transducerAt(TEST_TONE))) / Math.SQRT2);
