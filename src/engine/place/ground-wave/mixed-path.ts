import type { Decibels, Hertz, Metres } from '../../units/quantities.ts';
import { LIGHT_SPEED } from '../../units/quantities.ts';
import { type Ground, type GroundConstants, groundConstants, sameGround } from '../ground.ts';
import type { GroundWaveCurves, GroundWaveMethod } from './ground-wave.ts';

/** A stretch of a path over one kind of ground. Lists of sections begin at the transmitter. */
export interface PathSection {
  /** m, above 0. */
  readonly length: Metres;
  readonly ground: Ground;
}

export interface PlainSection {
  readonly length: Metres;
  readonly ground: GroundConstants;
}

/**
 * Sections shorter than this are joined to a neighbour: a boundary every few hundred metres adds more error than it
 * describes (each costs up to about 2.5 dB).
 * @returns metres: 1 km or one wavelength, whichever is more.
 */
export const sliverLength = (frequency: Hertz): Metres => Math.max(1000, LIGHT_SPEED / frequency);

/**
 * Sections with neighbours of the same ground joined and slivers taken by their longer neighbour, shortest first.
 * The total is kept, and turning the path round turns the answer round.
 * @throws RangeError for an empty list or an impossible length or ground.
 */
export function tidySections(sections: readonly PathSection[], shortest: Metres): PlainSection[] {
  if (sections.length === 0) throw new RangeError('a path needs at least one section');
  let path = sections.map(({ length, ground }) => {
    if (!(length > 0 && length < Number.POSITIVE_INFINITY))
      throw new RangeError(`the length of a section must be above 0 m, got ${length}`);
    return { length, ground: groundConstants(ground) };
  });
  const turned = isTurned(path);
  if (turned) path.reverse();
  path = joinAlike(path);
  while (path.length > 1) {
    let least = 0;
    for (let i = 1; i < path.length; i++) if (path[i].length < path[least].length) least = i;
    if (path[least].length >= shortest) break;
    const before = path[least - 1]?.length ?? 0;
    const after = path[least + 1]?.length ?? 0;
    path[least] = { length: path[least].length, ground: path[before >= after ? least - 1 : least + 1].ground };
    path = joinAlike(path);
  }
  return turned ? path.reverse() : path;
}

function joinAlike(path: readonly PlainSection[]): PlainSection[] {
  const joined: PlainSection[] = [];
  for (const section of path) {
    const last = joined.at(-1);
    if (last && sameGround(last.ground, section.ground))
      joined[joined.length - 1] = { length: last.length + section.length, ground: last.ground };
    else joined.push(section);
  }
  return joined;
}

/** Of a path and the same turned round exactly one is "turned": ties are then broken alike from either end. */
function isTurned(path: readonly PlainSection[]): boolean {
  for (let i = 0; i < path.length / 2; i++) {
    const a = path[i];
    const b = path[path.length - 1 - i];
    const difference =
      a.length - b.length ||
      a.ground.conductivity - b.ground.conductivity ||
      a.ground.permittivity - b.ground.permittivity;
    if (difference !== 0) return difference < 0;
  }
  return false;
}

export interface MixedPath {
  /** dB(µV/m) for 1 kW e.m.r.p. at the far end. */
  readonly level: Decibels;
  readonly method: GroundWaveMethod | 'mixed-path';
  /** What was computed, after joining. */
  readonly sections: readonly PlainSection[];
}

/**
 * Field at the end of a path over several kinds of ground, by Millington: the curve of each section's ground is followed
 * over the section's part of the distance, once from each end, and the two answers in dB are averaged.
 * A path of one ground gives its curve exactly; turning the path round changes nothing. The rise of the field behind a
 * coast (recovery over sea) is real and kept.
 * Source: G. Millington, Proc. IEE 96 III (1949), Rec. ITU-R P.368 annex 2 (from memory); the figures in
 * reference/propagation-checks.json, "millington-1".
 * @param sections from the transmitter; slivers are joined first.
 */
export function mixedPath(frequency: Hertz, sections: readonly PathSection[], curves: GroundWaveCurves): MixedPath {
  const path = tidySections(sections, sliverLength(frequency));
  if (path.length === 1) {
    const [{ length, ground }] = path;
    const curve = curves(ground);
    return { level: curve.level(length), method: curve.method(length), sections: path };
  }
  const outward = followed(path, curves);
  const back = followed(path.toReversed(), curves);
  return { level: (outward + back) / 2, method: 'mixed-path', sections: path };
}

/**
 * Level part of the way along a tidied path, dB(µV/m) for 1 kW e.m.r.p.: what `mixedPath` gives for the part walked, without
 * joining a short last stretch, so that the curve has no steps.
 */
export function levelAlong(path: readonly PlainSection[], distance: Metres, curves: GroundWaveCurves): Decibels {
  const walked: PlainSection[] = [];
  let remainder = distance;
  for (const { length, ground } of path) {
    if (!(remainder > 0)) break;
    walked.push({ length: Math.min(length, remainder), ground });
    remainder -= length;
  }
  if (walked.length === 1) return curves(walked[0].ground).level(distance);
  return (followed(walked, curves) + followed(walked.toReversed(), curves)) / 2;
}

/** E₁(D₁) + Σ [Eᵢ(Dᵢ) − Eᵢ(Dᵢ₋₁)], Dᵢ the distance to the end of section i. */
function followed(path: readonly PlainSection[], curves: GroundWaveCurves): Decibels {
  let distance = 0;
  let level = 0;
  for (const { length, ground } of path) {
    const { level: at } = curves(ground);
    if (distance > 0) level -= at(distance);
    distance += length;
    level += at(distance);
  }
  return level;
}
