import type { Problem } from '../fields/problem.ts';
import type { CoilDescription } from '../kinds/coils/coil-schema.ts';
import { wireOf } from '../kinds/coils/wire-of.ts';
import { conductorDiameter, overallDiameter } from '../parts/wire/wire.ts';
import { givenValue } from '../units/refusal.ts';

type Clash = Omit<Problem, 'path'> & { readonly field: string };

/** Sizes are shown to three digits: at least this share of what is asked is accepted, so that the size shown is. */
const ROUNDING = 0.995;

/** Turns or layers closer than the bare wire is thick would lie in one another. */
function tooClose(field: string, spacing: number | undefined, bare: number): Clash[] {
  if (spacing === undefined || spacing >= ROUNDING * bare) return [];
  return [
    {
      field,
      expected: { code: 'turn-spacing.at-least', wire: bare },
      given: { code: 'length', value: spacing },
      hint: { code: 'close-or-thinner' },
    },
  ];
}

/** No wire goes round what is narrower than itself. */
function tooNarrow(field: string, across: number, least: number): Clash[] {
  if (across >= ROUNDING * least) return [];
  return [
    {
      field,
      expected: { code: 'size-for-wire.at-least', size: least },
      given: { code: 'length', value: across },
      hint: { code: 'thinner-or-wider' },
    },
  ];
}

/** Posts in a circle, and the wire that passes between each two of them. */
function tooManyPosts(field: string, posts: number, space: number, circle: number): Clash[] {
  if (posts * space <= Math.PI * circle) return [];
  const most = Math.floor((Math.PI * circle) / space);
  return [
    {
      field,
      expected: { code: 'posts.at-most', count: most, circle },
      given: givenValue(posts),
      hint: { code: 'fewer-or-larger' },
    },
  ];
}

function clashes(coil: CoilDescription): Clash[] {
  if (coil.shape === 'measured' || coil.shape === 'core') return [];
  const wire = wireOf(coil.wire);
  const bare = conductorDiameter(wire);
  const covered = overallDiameter(wire);
  const { overall } = wire;
  return [
    ...(overall === undefined ? [] : tooNarrow('wire.overall', overall, bare)),
    ...shapeClashes(coil, bare, covered),
  ];
}

function shapeClashes(
  coil: Exclude<CoilDescription, { shape: 'measured' | 'core' }>,
  bare: number,
  covered: number,
): Clash[] {
  switch (coil.shape) {
    case 'solenoid':
      return [...tooNarrow('formerDiameter', coil.formerDiameter, bare), ...tooClose('pitch', coil.pitch, bare)];
    case 'multilayer':
      return [
        ...tooNarrow('formerDiameter', coil.formerDiameter, bare),
        ...tooClose('layerSpacing', coil.layerSpacing, bare),
      ];
    case 'bank-wound':
      return tooNarrow('formerDiameter', coil.formerDiameter, bare);
    case 'spiral':
      // Of the first turn to its wire's centre: the wire goes round as much less.
      return [...tooNarrow('innerDiameter', coil.innerDiameter, 2 * bare), ...tooClose('pitch', coil.pitch, bare)];
    case 'spider':
      return [
        ...tooNarrow('innerDiameter', coil.innerDiameter, bare),
        ...tooManyPosts('slots', coil.slots, covered, coil.innerDiameter),
      ];
    case 'basket':
      return tooManyPosts('pegs', coil.pegs, coil.pegDiameter + covered, coil.pegCircle);
  }
}

/** Sizes of a coil that are each possible and cannot be wound together. @param path of the coil, as "coils[0]". */
export const windingProblems = (coil: CoilDescription, path: string): Problem[] =>
  clashes(coil).map(({ field, ...problem }) => ({ path: `${path}.${field}`, ...problem }));
