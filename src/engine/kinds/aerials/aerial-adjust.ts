import { formatQuantity } from '../../units/format.ts';
import { type AdjustContext, type Adjustment, type AdjustmentsByKind, adjustmentsIn } from '../adjustment.ts';
import { betterWires } from '../coils/wire-adjust.ts';
import type { Wire } from '../coils/wire-schema.ts';
import { halfTurns, turnsAdjustment } from '../turns-adjust.ts';
import type { AerialDescription } from './aerial-schema.ts';

type Surroundings = AdjustContext['environment'];

/** What a mast or tree carries without guys, planning or a crane, m. Common practice, no source. */
const HIGHEST_MAST: Readonly<Record<Surroundings, number>> = {
  city: 10,
  residential: 10,
  rural: 12,
  'quiet rural': 15,
};
/** Wire that finds room, m. Common practice, no source. */
const LONGEST_WIRE: Readonly<Record<Surroundings, number>> = {
  city: 20,
  residential: 25,
  rural: 40,
  'quiet rural': 60,
};
/** A frame that goes through a door and still turns, m. */
const LARGEST_FRAME = 1.2;
/** One step makes it at most so many times what it is. */
const STEPS = [1.25, 1.5];

/** Larger, step by step, up to a limit; whole and half metres above 2 m. */
function larger(now: number, limit: number): string[] {
  const rounded = (x: number): number => (x >= 2 ? Math.round(2 * x) / 2 : Number(x.toPrecision(2)));
  const sizes = STEPS.map((by) => rounded(Math.min(limit, now * by))).filter((x) => x >= 1.05 * now && x <= limit);
  return [...new Set(sizes)].map((x) => formatQuantity(x, 'length', 3));
}

const outdoors = (key: 'height' | 'length', now: number, limit: number): Adjustment => ({
  id: `aerial.${key}`,
  part: 'aerial',
  path: ['aerial', key],
  effort: 'outdoors',
  domain: { is: 'choice', of: larger(now, limit) },
  now,
  serves: ['loudness'],
});

const height = (aerial: { height: number }, { environment }: AdjustContext): Adjustment =>
  outdoors('height', aerial.height, HIGHEST_MAST[environment]);
const span = (aerial: { length: number }, { environment }: AdjustContext): Adjustment =>
  outdoors('length', aerial.length, LONGEST_WIRE[environment]);

/** Turned so that the strongest other station falls into the null. */
const turned = (now: number | undefined, { against }: AdjustContext): Adjustment[] =>
  against?.bearing === undefined
    ? []
    : [
        {
          id: 'aerial.direction',
          part: 'aerial',
          path: ['aerial', 'direction'],
          effort: 'knob',
          domain: { is: 'choice', of: [Math.round(against.bearing + 90) % 360] },
          now,
          serves: ['clearance'],
        },
      ];

const wire = (now: Wire): Adjustment => ({
  id: 'aerial.wire',
  part: 'aerial',
  path: ['aerial', 'wire'],
  effort: 'rewind',
  domain: { is: 'choice', of: betterWires(now) },
  now,
  serves: ['loudness', 'clearance'],
});

/** What each aerial has to adjust: one entry for each kind. */
const AERIAL_ADJUSTMENTS: AdjustmentsByKind<AerialDescription> = {
  'inverted-L': (aerial, about) => [height(aerial, about), span(aerial, about)],
  T: (aerial, about) => [height(aerial, about), span(aerial, about)],
  sloping: (aerial, about) => [height(aerial, about), span(aerial, about)],
  horizontal: (aerial, about) => [height(aerial, about), span(aerial, about)],
  vertical: (aerial, about) => [height(aerial, about)],
  bent: { none: 'its corners are given one by one' },
  measured: { none: 'its size is not given' },
  impedance: { none: 'its size is not given' },
  frame: (aerial, about) => [
    {
      id: 'aerial.side',
      part: 'aerial',
      path: ['aerial', 'side'],
      effort: 'rewind',
      domain: { is: 'choice', of: larger(aerial.side, LARGEST_FRAME) },
      now: aerial.side,
      serves: ['loudness'],
      // Inductance goes about as side times turns squared; taps along.
      edits: (to, side) => {
        const by = Math.sqrt(aerial.side / Number(side));
        const turns = Math.max(1, Math.round(aerial.turns * by));
        return [
          { path: ['aerial', 'side'], to },
          { path: ['aerial', 'turns'], to: turns },
          ...about.tapsOn(undefined).map((tap) => ({
            path: tap.path,
            to: Math.min(turns, halfTurns(tap.turns * by)),
          })),
        ];
      },
    },
    turnsAdjustment({ id: 'aerial.turns', part: 'aerial', path: ['aerial', 'turns'] }, aerial.turns, {
      coil: undefined,
      most: 400,
      about,
    }),
    ...turned(aerial.direction, about),
    wire(aerial.wire),
  ],
  'ferrite rod': (aerial, about) => [
    turnsAdjustment(
      { id: 'aerial.turns', part: 'aerial', path: ['aerial', 'turns'] },
      aerial.turns,
      { coil: undefined, most: 2000, about },
      // Wound as close as before; it must fit on the rod.
      (by) => [
        {
          path: ['aerial', 'winding'],
          to: formatQuantity(Math.min(aerial.winding * by, 0.9 * aerial.length), 'length', 3),
        },
      ],
    ),
    ...turned(aerial.direction, about),
    wire(aerial.wire),
  ],
};

export const aerialAdjustments = (aerial: AerialDescription, about: AdjustContext): readonly Adjustment[] =>
  adjustmentsIn(AERIAL_ADJUSTMENTS, aerial, about, ['aerial']);
