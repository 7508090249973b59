import { type Ground, groundConstants } from '../place/ground.ts';
import { type GroundFieldInput, groundField } from '../place/ground-wave/ground-field.ts';
import type { EnvironmentKind } from '../place/noise/man-made.ts';
import type { Noise } from '../place/noise/noise.ts';
import { type Decibels, fromDecibels } from '../units/quantities.ts';
import { SKY_WAVE, sectionsWith, siteSpread } from './field-draws.ts';

type Range = readonly [low: number, high: number];

/** Conductivity of a class of ground read from a map, ×/÷. */
const CLASS = 1.8;

/**
 * Range of a figure from the decibels below and above it.
 * @param value an amplitude (a voltage, a field strength), any unit.
 * @param below the range relative to the value: its lower end, below zero, and its upper one, dB.
 * @returns the two ends, in the unit of the value.
 */
export const rangeOfDecibels = (value: number, [below, above]: Range): Range => [
  value * fromDecibels(below),
  value * fromDecibels(above),
];

/**
 * 90 % range of a ground wave's field as a builder would measure it: the site and its terrain, coasts on the way, and,
 * where the ground was given by its kind, the spread of its conductivity.
 * @param input frequency in Hz, the path in m, power in W, as `groundField` takes them.
 * @returns the 5th percentile and the 95th, V/m.
 * @throws RangeError for impossible input, as `groundField`.
 */
export function groundFieldRange(input: GroundFieldInput): Range {
  const field = groundField(input);
  const sections = input.sections ?? [{ length: field.distance, ground: input.ground ?? ('average' as Ground) }];
  const site = siteSpread(sections);
  const isKind = ({ ground }: { ground: Ground }) =>
    typeof ground === 'string' && groundConstants(ground).conductivity < 1;
  const by = (factor: number): Decibels => {
    const changed = sections.map((s) => (isKind(s) ? sectionsWith([s], factor)[0] : s));
    const { level } = groundField({ ...input, ground: undefined, distance: undefined, sections: changed });
    return Number.isFinite(level) ? level - field.level : 0;
  };
  const ends = sections.some(isKind) ? [by(1 / CLASS), by(CLASS)] : [0, 0];
  return rangeOfDecibels(field.fieldStrength, [
    -Math.hypot(site.low, Math.min(0, ...ends)),
    Math.hypot(site.high, Math.max(0, ...ends)),
  ]);
}

/**
 * 90 % range of the sky wave's field on one evening, fading included, about the yearly median.
 * @param fieldStrength the yearly median, V/m.
 * @returns the 5th percentile and the 95th, V/m.
 */
export const skyFieldRange = (fieldStrength: number): Range =>
  rangeOfDecibels(fieldStrength, [SKY_WAVE.low, SKY_WAVE.high]);

/**
 * Man-made noise about the median of its surroundings: √(time² + place²) × 1.28 of the deciles of Rec. ITU-R P.372
 * (those of places from memory), dB.
 */
const NOISE: Readonly<Record<EnvironmentKind, Range>> = {
  city: [-14, 18],
  residential: [-10, 16],
  rural: [-11, 15],
  'quiet rural': [-11, 15],
};
/** Lightning of a season and hour; noise as measured. */
const LIGHTNING: Range = [-12, 12];
const MEASURED: Range = [-3, 3];

/**
 * 90 % range of one part of the noise about its figure.
 * @param part of the noise
 * @param environment of the site: its class of man-made noise
 * @returns the 5th percentile and the 95th relative to the figure, dB
 */
export const noisePartRange = (part: 'manMade' | 'atmospheric', environment: EnvironmentKind): Range =>
  part === 'manMade' ? NOISE[environment] : LIGHTNING;

/**
 * 90 % range of noise about its figure.
 * @param options the noise at the site; without man-made noise it counts as measured.
 * @param environment of the site: its class of man-made noise.
 * @returns the 5th percentile and the 95th relative to the figure, dB.
 */
export function noiseRange({ manMade, atmospheric }: Noise, environment: EnvironmentKind): Range {
  if (!manMade) return MEASURED;
  return atmospheric && atmospheric.figure > manMade.figure
    ? noisePartRange('atmospheric', environment)
    : noisePartRange('manMade', environment);
}
