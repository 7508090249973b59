import { EARTH } from '../../network/elements.ts';
import type { Coded, NoFigures } from '../../units/coded.ts';
import { AERIAL, OUT } from './assembly.ts';
import { listedName } from './element-list.ts';

/** What a node of a set's circuit is. */
export interface Nodes {
  readonly earth: NoFigures;
  readonly aerial: NoFigures;
  readonly out: NoFigures;
  readonly top: NoFigures;
  readonly bottom: NoFigures;
  readonly middle: NoFigures;
  readonly foot: NoFigures;
  readonly 'far end': NoFigures;
  readonly 'aerial coil': NoFigures;
  readonly pump: NoFigures;
  readonly biased: NoFigures;
  readonly equalised: NoFigures;
  readonly 'detector tap': NoFigures;
  readonly 'load secondary': NoFigures;
  readonly 'load in': NoFigures;
  readonly tap: { readonly turn: number };
  readonly 'aerial tap': { readonly turn: number };
  readonly 'after trap': { readonly trap: number };
  readonly 'trap middle': { readonly trap: number };
  readonly 'trap loop': { readonly trap: number };
  /** Of a listed circuit, as the builder calls it. */
  readonly listed: { readonly name: string };
  /** Inside a part, where nobody can put a probe. */
  readonly inside: NoFigures;
}

export type NodeOf = Coded<Nodes>;

type Plain = {
  [C in keyof Nodes]: Nodes[C] extends NoFigures ? (keyof Nodes[C] extends never ? C : never) : never;
}[keyof Nodes];

const PLAIN: Readonly<Record<string, Plain>> = {
  [EARTH]: 'earth',
  [AERIAL]: 'aerial',
  [OUT]: 'out',
  top: 'top',
  bottom: 'bottom',
  middle: 'middle',
  foot: 'foot',
  'far end': 'far end',
  'aerial coil': 'aerial coil',
  pump: 'pump',
  biased: 'biased',
  equalised: 'equalised',
  'detector tap': 'detector tap',
  'load secondary': 'load secondary',
  'load in': 'load in',
  sky: 'inside',
  ground: 'inside',
  'aerial wire': 'inside',
  'aerial foot': 'inside',
  'loop foot': 'inside',
};

const NUMBERED: readonly (readonly [RegExp, (n: number) => NodeOf])[] = [
  [/^turn ([\d.]+)$/, (turn) => ({ code: 'tap', turn })],
  [/^aerial turn ([\d.]+)$/, (turn) => ({ code: 'aerial tap', turn })],
  [/^after trap (\d+)$/, (trap) => ({ code: 'after trap', trap })],
  [/^trap (\d+) middle$/, (trap) => ({ code: 'trap middle', trap })],
  [/^trap (\d+) loop$/, (trap) => ({ code: 'trap loop', trap })],
];

/**
 * The one place where ids of nodes are read.
 * @param id of a node, as the circuits of arrangements have it
 * @returns what it is; undefined for an id that no arrangement makes
 */
export function nodeOf(id: string): NodeOf | undefined {
  const name = listedName(id);
  if (name !== undefined) return { code: 'listed', name };
  if (Object.hasOwn(PLAIN, id)) return { code: PLAIN[id] };
  if (id.startsWith('within ')) return { code: 'inside' };
  for (const [form, of] of NUMBERED) {
    const match = form.exec(id);
    if (match) return of(Number(match[1]));
  }
  return undefined;
}
