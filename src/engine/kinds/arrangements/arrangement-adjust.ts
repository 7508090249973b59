import type { AdjustContext, Adjustment, Adjustments, ArrangementSetting, Wish } from '../adjustment.ts';
import type { KindOf, Of } from '../by-kind.ts';
import { turnsDomain } from '../turns-adjust.ts';
import type { ArrangementDescription } from './arrangement-schema.ts';
import { usedTurns } from './used-turns.ts';

/** What an arrangement has to adjust, and which of it works together: looser coupling pays with a higher tap. */
interface ArrangementAdjustments<A> {
  readonly adjust: Adjustments<A>;
  /** Ids of adjustments, those of a coil's turns as "turns". */
  readonly together: readonly (readonly string[])[];
  /** The same, where the aerial's capacitance narrows the tuning range. */
  readonly forRange?: readonly (readonly string[])[];
}

type SingleCircuit = Extract<ArrangementDescription, { readonly usedTurns?: number }>;

const EITHER: readonly Wish[] = ['loudness', 'clearance'];
const place = (key: ArrangementSetting): Pick<Adjustment, 'id' | 'part' | 'path'> => ({
  id: `arrangement.${key}`,
  part: 'arrangement',
  path: ['arrangement', key],
});

/** A tap at any whole turn. A full-wave pair takes both ends of the coil, so its detector has none. */
const tapAt = (key: 'aerialTap' | 'detectorTap', turns: number | undefined, now: number | undefined): Adjustment[] =>
  turns === undefined
    ? []
    : [
        {
          ...place(key),
          effort: 'tap',
          domain: { is: 'whole', from: 1, to: Math.max(1, Math.floor(turns)), scale: 'ratio' },
          now,
          serves: EITHER,
        },
      ];

const detectorTap = (turns: number | undefined, now: number | undefined, about: AdjustContext): Adjustment[] =>
  about.wiring === 'full-wave' ? [] : tapAt('detectorTap', turns, now ?? turns);

/** Turns of its coil that can be tapped: those in use. */
const tappable = (a: SingleCircuit, about: AdjustContext): number | undefined => {
  const turns = about.turnsOf(a.coil);
  return turns === undefined ? undefined : usedTurns(a, turns).used;
};

/** Where part of the coil is in use: how much of it, taps staying where they are. */
const turnsInUse = (a: SingleCircuit, about: AdjustContext): Adjustment[] => {
  const turns = about.turnsOf(a.coil);
  if (a.usedTurns === undefined || turns === undefined) return [];
  const taps = about.tapsOn(a.coil).map((tap) => tap.turns);
  return [
    {
      ...place('usedTurns'),
      effort: 'tap',
      domain: turnsDomain(a.usedTurns, { least: Math.max(1, ...taps), most: turns, about }),
      now: a.usedTurns,
      serves: ['reach', 'band'],
    },
  ];
};

/** In the aerial lead. Below 10 pF strays decide, above 1 nF it is a piece of wire. */
const SERIES = { is: 'series', series: 'E12', from: 1e-11, to: 1e-9, unit: 'capacitance' } as const;

const seriesCapacitor = (now: number | undefined): Adjustment => ({
  ...place('seriesCapacitor'),
  effort: 'rewire',
  domain: SERIES,
  now,
  serves: EITHER,
});

/** What stands in parallel with a coil that does the tuning. */
const parallelCapacitor = (now: number): Adjustment => ({
  ...place('parallelCapacitor'),
  effort: 'rewire',
  domain: { is: 'series', series: 'E12', from: 1e-11, to: 1e-9, unit: 'capacitance' },
  now: now > 0 ? now : undefined,
  serves: ['reach'],
});

/** How close two coils stand; where the coupling was measured, that. */
function coupling({ distance, coupling }: { distance: number; coupling?: number }): Adjustment {
  return coupling === undefined
    ? {
        ...place('distance'),
        effort: 'knob',
        domain: { is: 'real', from: 0.005, to: 0.5, scale: 'ratio', unit: 'length', digits: 2 },
        now: distance,
        serves: EITHER,
      }
    : {
        ...place('coupling'),
        effort: 'knob',
        domain: { is: 'real', from: 0.005, to: 0.95, scale: 'ratio', unit: 'ratio', digits: 2 },
        now: coupling,
        serves: EITHER,
      };
}

const COUPLING_AND_TAP: readonly (readonly string[])[] = [
  ['arrangement.distance', 'arrangement.detectorTap'],
  ['arrangement.coupling', 'arrangement.detectorTap'],
];

/** What each arrangement has to adjust: one entry for each kind. */
const ARRANGEMENT_ADJUSTMENTS: {
  readonly [K in KindOf<ArrangementDescription>]: ArrangementAdjustments<Of<ArrangementDescription, K>>;
} = {
  direct: {
    adjust: (a, about) => [
      ...detectorTap(tappable(a, about), a.detectorTap, about),
      {
        ...seriesCapacitor(undefined),
        edits: (to) => [
          { path: ['arrangement', 'seriesCapacitor'], to },
          { path: ['arrangement', 'kind'], to: 'series capacitor' },
        ],
      },
      ...turnsInUse(a, about),
    ],
    together: [
      ['arrangement.seriesCapacitor', 'arrangement.detectorTap'],
      ['arrangement.seriesCapacitor', 'turns'],
    ],
  },
  'series capacitor': {
    adjust: (a, about) => [
      ...detectorTap(tappable(a, about), a.detectorTap, about),
      seriesCapacitor(a.seriesCapacitor),
      ...turnsInUse(a, about),
    ],
    together: [
      ['arrangement.seriesCapacitor', 'arrangement.detectorTap'],
      ['arrangement.seriesCapacitor', 'turns'],
    ],
  },
  tapped: {
    adjust: (a, about) => [
      ...tapAt('aerialTap', tappable(a, about), a.aerialTap),
      ...detectorTap(tappable(a, about), a.detectorTap, about),
      seriesCapacitor(a.seriesCapacitor),
      ...turnsInUse(a, about),
    ],
    together: [['arrangement.aerialTap', 'arrangement.detectorTap']],
    forRange: [
      ['arrangement.seriesCapacitor', 'arrangement.aerialTap'],
      ['arrangement.seriesCapacitor', 'turns'],
    ],
  },
  coupled: {
    adjust: (a, about) => [
      coupling(a),
      ...detectorTap(about.turnsOf(a.coil), a.detectorTap, about),
      seriesCapacitor(a.seriesCapacitor),
    ],
    together: COUPLING_AND_TAP,
    forRange: [['arrangement.seriesCapacitor', 'turns']],
  },
  'two circuits': {
    adjust: (a, about) => [
      coupling(a),
      ...tapAt('aerialTap', about.turnsOf(a.aerialCoil), a.aerialTap ?? about.turnsOf(a.aerialCoil)),
      ...detectorTap(about.turnsOf(a.coil), a.detectorTap, about),
      seriesCapacitor(a.seriesCapacitor),
    ],
    together: COUPLING_AND_TAP,
    forRange: [
      ['arrangement.distance', 'arrangement.aerialTap'],
      ['arrangement.coupling', 'arrangement.aerialTap'],
    ],
  },
  slider: {
    adjust: (a, about) => [
      ...tapAt('detectorTap', about.turnsOf(a.coil), a.detectorTap),
      parallelCapacitor(a.parallelCapacitor),
    ],
    together: [],
  },
  variometer: {
    adjust: (a) => [parallelCapacitor(a.parallelCapacitor)],
    together: [],
  },
  frame: {
    adjust: (a, about) => [...detectorTap(about.loopTurns, a.detectorTap, about)],
    together: [],
  },
  'ferrite rod': {
    adjust: (a, about) => [...detectorTap(about.loopTurns, a.detectorTap, about)],
    together: [],
  },
  elements: { adjust: { none: 'a list of elements has no taps or couplings of its own' }, together: [] },
};

/** The adjustments of an arrangement of any kind. */
export function arrangementAdjustments(
  arrangement: ArrangementDescription,
  about: AdjustContext,
): {
  readonly adjustments: readonly Adjustment[];
  readonly together: readonly (readonly string[])[];
  readonly forRange: readonly (readonly string[])[];
} {
  // The compiler cannot follow that the entry under a description's own kind takes that description.
  const {
    adjust,
    together,
    forRange = [],
  } = ARRANGEMENT_ADJUSTMENTS[arrangement.kind] as ArrangementAdjustments<ArrangementDescription>;
  return {
    adjustments: typeof adjust === 'function' ? adjust(arrangement, about, ['arrangement']) : [],
    together,
    forRange,
  };
}
