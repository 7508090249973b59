import type { AudioLimits } from '../../../../engine/reception/detection/audio-limits.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';

const hertz = (f: number): string => formatQuantity(f, 'frequency', 2);
const ohms = (R: number): string => formatQuantity(R, 'resistance', 2);
const percent = (x: number): string => `${formatNumber(100 * x, 2)} %`;

/** What a treble loss from a frequency on does to the programme. */
const effect = (f: number): string =>
  f < 2500 ? 'speech is muffled' : f < 4500 ? 'speech is clear, music dull' : 'little of what stations send is lost';

/** Treble lost below this share of half the bandwidth is not lost by the resonance. */
const BY_RESONANCE = 0.5;

function tunedCircuit({ throughTunedCircuit: f, halfBandwidth }: AudioLimits): string {
  if (f === undefined) return 'The tuned circuit, loaded by the detector, is broad enough for the whole audio band.';
  const loss = `Treble loss in the tuned circuit: more than 3 dB above ${hertz(f)} (${effect(f)}).`;
  return f < BY_RESONANCE * halfBandwidth
    ? `${loss} Its bandwidth is not the cause: the capacitance across the load bypasses the treble, and the detector then loads the circuit more heavily for it than for the bass.`
    : loss;
}

function load({ throughLoad: f }: AudioLimits): string {
  return f === undefined
    ? 'The load causes no treble loss of 3 dB up to 20 kHz.'
    : `Treble loss in the load: more than 3 dB above ${hertz(f)}, compared with 1 kHz (${effect(f)}).`;
}

/** Less distortion than this is hardly heard; common practice, no source. */
const HEARD = 0.05;
/** Distortion with nothing clipped: named with its cause, or the reader takes "no clipping" for "no distortion". */
const bent = (distortion: number): string =>
  distortion > HEARD
    ? ` The distortion of ${percent(distortion)} comes from the curve of the detector, and from the load it puts on the tuned circuit, which changes with the envelope.`
    : '';

function negativePeaks({ directLoad, audioLoad, clipsFrom, distortion }: AudioLimits): string {
  const loads = `The load is ${ohms(directLoad)} at direct current and ${ohms(audioLoad)} at 1 kHz`;
  const ratio = audioLoad / directLoad;
  if (clipsFrom === undefined)
    return `${loads}: no negative-peak clipping at any depth of modulation.${bent(distortion)}`;
  return ratio < 0.95
    ? `${loads}, a ratio of ${formatNumber(ratio, 2)}: negative-peak clipping on this station at depths above about ${percent(clipsFrom)}; a lower load at direct current or a higher one at audio frequencies reduces it.`
    : `${loads}: negative-peak clipping on this station at depths above about ${percent(clipsFrom)}.`;
}

function diagonal({ followsTo, depth, loadCapacitance }: AudioLimits): string {
  if (followsTo !== undefined)
    return `At ${percent(depth)} depth the load capacitor follows tones up to ${hertz(followsTo)}; above, it discharges too slowly (diagonal clipping). Less capacitance or a lower load reduces it.`;
  return loadCapacitance > 0
    ? `The load capacitor discharges fast enough at ${percent(depth)} depth: no diagonal clipping in the audio band.`
    : 'There is no load capacitor, and so no diagonal clipping.';
}

/** What detector and load do to the programme: treble loss, negative-peak clipping, diagonal clipping; one sentence each. */
export const audioLimitSentences = (limits: AudioLimits): string[] =>
  [tunedCircuit, load, negativePeaks, diagonal].map((sentence) => sentence(limits));
