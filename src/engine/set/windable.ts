import { brief, type Problem } from '../fields/problem.ts';
import type { CoilDescription } from '../kinds/coils/coil-schema.ts';
import { conductorDiameter, overallDiameter } from '../parts/wire/wire.ts';
import { formatQuantity } from '../units/format.ts';

type Clash = Omit<Problem, 'path'> & { readonly field: string };

/** To three digits; a size of at least 0.995 of what is asked is accepted, so that the one shown is. */
const mm = (x: number): string => formatQuantity(x, 'length');

/** Turns or layers closer than the bare wire is thick would lie in one another. */
function tooClose(field: string, spacing: number | undefined, bare: number): Clash[] {
  if (spacing === undefined || spacing >= 0.995 * bare) return [];
  return [
    {
      field,
      expected: `at least ${mm(bare)}, the thickness of the bare wire`,
      received: mm(spacing),
      hint: 'leave it out for a close winding, or take thinner wire',
    },
  ];
}

/** No wire goes round what is narrower than itself. */
function tooNarrow(field: string, across: number, least: number): Clash[] {
  if (across >= 0.995 * least) return [];
  return [
    {
      field,
      expected: `at least ${mm(least)} for wire this thick`,
      received: mm(across),
      hint: 'take thinner wire, or wind on something wider',
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
      expected: `at most ${most} on a circle of ${mm(circle)}, with the wire between them`,
      received: brief(posts),
      hint: 'take fewer, a larger circle or thinner wire',
    },
  ];
}

function clashes(coil: CoilDescription): Clash[] {
  if (coil.shape === 'measured' || coil.shape === 'core') return [];
  const { size, covering, strands } = coil.wire;
  const wire = { diameter: size, covering, strands };
  const bare = conductorDiameter(wire);
  const covered = overallDiameter(wire);
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
