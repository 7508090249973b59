import { formatQuantity } from '../../units/format.ts';
import type { Edit } from '../adjustment.ts';
import { type ByKind, byKind } from '../by-kind.ts';
import type { ArrangementDescription } from './arrangement-schema.ts';

/** How the aerial is made to hold the tuned circuit less: what was changed, SI; undefined where it was not fitted. */
export interface Loosened {
  readonly what: 'series capacitor' | 'aerial tap' | 'coupling' | 'distance';
  readonly from: number | undefined;
  readonly to: number;
  readonly edits: readonly Edit[];
}

/** What stands for a lead without a capacitor, F: about a usual aerial's own. Common practice, no source. */
const PLAIN_LEAD = 200e-12;
const picofarads = (farads: number): string => formatQuantity(farads, 'capacitance', 2);
const at = (key: string) => ['arrangement', key];

function capacitor(from: number | undefined, farads: number, also: readonly Edit[] = []): Loosened {
  const to = Number(farads.toPrecision(2));
  return {
    what: 'series capacitor',
    from,
    to,
    edits: [{ path: at('seriesCapacitor'), to: picofarads(to) }, ...also],
  };
}

function placing(coils: { readonly coupling?: number; readonly distance: number }, by: number): Loosened {
  if (coils.coupling !== undefined) {
    const to = Number((coils.coupling * by).toPrecision(3));
    return {
      what: 'coupling',
      from: coils.coupling,
      to,
      edits: [{ path: at('coupling'), to: formatQuantity(to, 'ratio', 3) }],
    };
  }
  const to = Number((coils.distance / by + 0.01).toPrecision(3));
  return {
    what: 'distance',
    from: coils.distance,
    to,
    edits: [{ path: at('distance'), to: formatQuantity(to, 'length', 3) }],
  };
}

/** The aerial's hold times a factor below 1, for each arrangement; undefined where there is nothing to loosen. */
const HOLDS: ByKind<ArrangementDescription, Loosened | undefined, [number]> = {
  direct: (_, by) =>
    capacitor(undefined, Math.max(10e-12, PLAIN_LEAD * by), [{ path: at('kind'), to: 'series capacitor' }]),
  'series capacitor': (arrangement, by) =>
    capacitor(arrangement.seriesCapacitor, Math.max(4e-12, arrangement.seriesCapacitor * by)),
  tapped: ({ aerialTap }, by) => {
    const to = Math.max(1, Math.round(2 * aerialTap * by) / 2);
    return { what: 'aerial tap', from: aerialTap, to, edits: [{ path: at('aerialTap'), to }] };
  },
  coupled: placing,
  'two circuits': placing,
  slider: () => undefined,
  variometer: () => undefined,
  frame: () => undefined,
  'ferrite rod': () => undefined,
  elements: () => undefined,
};

/** The aerial's hold on the tuned circuit times a factor below 1; undefined where there is nothing to loosen. */
export const loosen = (arrangement: ArrangementDescription, by: number): Loosened | undefined =>
  byKind(HOLDS, arrangement, by);
