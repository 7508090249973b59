import { formatQuantity } from '../../units/format.ts';
import {
  type AdjustContext,
  type Adjustment,
  type AdjustmentsByKind,
  adjustmentsIn,
  type EarthSetting,
} from '../adjustment.ts';
import type { EarthDescription } from './earth-schema.ts';

/** What a garden takes. Common practice, no source. */
const LONGEST_ROD = 2.5;
const MOST_RODS = 4;
const LARGEST_PLATE = 1;
const LONGEST_WIRE = 20;
const MOST_RADIALS = 16;
/** Below this rods and wires in a garden do not bring it, Ω. Common practice, no source. */
const LOWEST_OF_GARDEN = 20;

const better = (key: EarthSetting, now: unknown, of: readonly unknown[], edits?: Adjustment['edits']): Adjustment => ({
  id: `earth.${key}`,
  part: 'earth',
  path: key === 'kind' ? ['earth'] : ['earth', key],
  effort: 'outdoors',
  domain: { is: 'choice', of },
  now,
  serves: ['loudness'],
  edits,
});

/** Half as much more, up to a limit. */
const longer = (now: number, limit: number): string[] => {
  const to = Math.min(limit, 1.5 * now);
  return to > 1.1 * now ? [formatQuantity(to, 'length', 2)] : [];
};
const more = (now: number, limit: number): number[] => {
  const to = Math.min(limit, Math.max(now + 1, Math.round(1.5 * now)));
  return to > now ? [to] : [];
};

/** What each earth has to adjust: one entry for each kind. */
const EARTH_ADJUSTMENTS: AdjustmentsByKind<EarthDescription> = {
  // Rods further apart than they are long share little of their ground.
  rod: ({ kind: _, ...rod }) => [
    better(
      'kind',
      'rod',
      [2, 3].map((count) => ({
        ...rod,
        kind: 'rods',
        count,
        spacing: formatQuantity(Math.max(1, 1.5 * rod.length), 'length', 2),
      })),
    ),
    better('length', rod.length, longer(rod.length, LONGEST_ROD)),
  ],
  rods: (rods) => [
    better('count', rods.count, more(rods.count, MOST_RODS)),
    better('length', rods.length, longer(rods.length, LONGEST_ROD)),
  ],
  plate: (plate) => [better('side', plate.side, longer(plate.side, LARGEST_PLATE))],
  'buried wire': (buried) => [better('length', buried.length, longer(buried.length, LONGEST_WIRE))],
  radials: (radials) => [
    better('count', radials.count, more(radials.count, MOST_RADIALS)),
    better('length', radials.length, longer(radials.length, LONGEST_WIRE)),
  ],
  counterpoise: (counterpoise) => [
    better('count', counterpoise.count, more(counterpoise.count, 8)),
    better('length', counterpoise.length, longer(counterpoise.length, LONGEST_WIRE)),
  ],
  measured: ({ resistance }) => [
    better(
      'resistance',
      resistance,
      resistance > 1.5 * LOWEST_OF_GARDEN
        ? [formatQuantity(Math.max(LOWEST_OF_GARDEN, resistance / 2), 'resistance', 2)]
        : [],
    ),
  ],
};

export const earthAdjustments = (earth: EarthDescription, about: AdjustContext): readonly Adjustment[] =>
  about.isLoop ? [] : adjustmentsIn(EARTH_ADJUSTMENTS, earth, about, ['earth']);
