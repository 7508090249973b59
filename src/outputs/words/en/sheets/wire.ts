import type { Wire } from '../../../../engine/kinds/coils/wire-schema.ts';
import type { Metal } from '../../../../engine/parts/wire/metal.ts';
import { formatNumber } from '../../../../engine/units/format.ts';
import { nearestGauge } from '../../../../engine/units/gauge.ts';
import { cutLength, mm } from '../../figures.ts';
import { listOf } from '../grammar.ts';
import { coveringNames } from '../materials.ts';

const METALS: Record<Metal, string> = { copper: 'copper', aluminium: 'aluminium' };

/** A gauge is named where its wire is within 6 % of the size. */
const NEAR = 0.06;
const gaugesOf = ({ size }: Wire): string[] =>
  (['SWG', 'AWG'] as const)
    .map((scale) => ({ scale, ...nearestGauge(scale, size) }))
    .filter(({ error }) => Math.abs(error) < NEAR)
    .map(({ scale, number }) => `${number} ${scale}`);

const isStranded = ({ strands = 1 }: Wire): boolean => strands > 1;

/** "0.4 mm enamelled copper wire (near 27 SWG and 26 AWG)". */
export function wireText(wire: Wire): string {
  const gauges = gaugesOf(wire);
  const name = `${mm(wire.size)} ${coveringNames[wire.covering]} ${METALS[wire.metal]} wire`;
  const whole = isStranded(wire) ? `${wire.strands} strands of ${name}` : name;
  return gauges.length > 0 ? `${whole} (near ${listOf(gauges)})` : whole;
}

const GAUGES = 'SWG and AWG are two scales of numbers by which wire is sold.';
const LITZ =
  'Wire of many strands, each insulated from the others, is called Litz: at every end and tap bare and tin all of them.';

const wireNotes = (wire: Wire): string[] => [
  ...(gaugesOf(wire).length > 0 ? [GAUGES] : []),
  ...(isStranded(wire) ? [LITZ] : []),
];

/** The same, with what may be unknown in it: gauges, strands. */
export const wireWithNotes = (wire: Wire): string => [`${wireText(wire)}.`, ...wireNotes(wire)].join(' ');

export const frameWire = {
  box: (wire: Wire): string =>
    [`${wireText(wire)}.`, ...wireNotes(wire), 'Another covering will do: the notches set the spacing.'].join(' '),
  hoop: (wire: Wire): string =>
    [`${wireText(wire)}.`, ...wireNotes(wire), 'Another covering will do: the marks set the spacing.'].join(' '),
};

interface InsteadOfCovered {
  readonly size: number;
  /** m, over all, that enamelled wire is thinner. */
  readonly thread: number;
}

/** Enamelled wire of the same size in place of a thread-covered one. */
export const enamelledInstead = {
  sameSpacing: ({ size }: Pick<InsteadOfCovered, 'size'>): string =>
    `enamelled wire of the same ${mm(size)}, with the same spacing`,
  withThread: ({ size, thread }: InsteadOfCovered): string =>
    `enamelled wire of the same ${mm(size)} is thinner over its covering, so the same turns would lie closer and have more inductance: wind a thread of about ${formatNumber(thread * 1e3, 2)} mm along with it, so that the turns take the same length`,
  sameSpacingInLayers: ({ size }: Pick<InsteadOfCovered, 'size'>): string =>
    `enamelled wire of the same ${mm(size)}, with the same spacing, and paper as thick between the layers`,
  withThreadInLayers: ({ size, thread }: InsteadOfCovered): string =>
    `enamelled wire of the same ${mm(size)} is thinner over its covering, so the same turns would lie closer and have more inductance: wind a thread of about ${formatNumber(thread * 1e3, 2)} mm along with it, so that the turns take the same length, and lay paper as thick between the layers`,
};

interface WireToCut {
  readonly cut: number;
  readonly wound: number;
  /** Left at either end, m. */
  readonly tail: number;
  /** What one tap takes, m; none where there is no tap. */
  readonly tap?: number;
}

/** How much wire to cut, and for what. */
export const wireToCutText = ({ cut, wound, tail, tap }: WireToCut): string =>
  tap === undefined
    ? `${cutLength(cut)}: ${mm(wound)} wound, ${mm(tail)} left free at each end, and 3 % to spare`
    : `${cutLength(cut)}: ${mm(wound)} wound, ${mm(tail)} left free at each end, ${mm(tap)} for each tap, and 3 % to spare`;
