import type { JointId, TerminalId } from '../../../engine/network/ids.ts';
import type { Point } from '../../scene/scene.ts';
import type { WireUse } from '../../words/index.ts';
import type { BoardPart, BoardParts, PartKind } from './parts.ts';

/** One piece of wire, between two terminals. */
export interface WiringLine {
  readonly from: string;
  readonly to: string;
  /** What for, of the first wire of each net. */
  readonly use?: WireUse;
  /** It carries the signal before the detector: what it is long adds stray capacitance and loss. */
  readonly keepShort: boolean;
}

export interface BoardWiring {
  readonly lines: readonly WiringLine[];
  /** Terminals that stay free. */
  readonly free: readonly string[];
}

interface End {
  readonly terminal: string;
  readonly part: BoardPart;
  /** Of the terminal, in the set. */
  readonly id: TerminalId;
}

/** Terminals that are joined with one another. */
export interface Net {
  readonly ends: readonly End[];
  readonly isEarth: boolean;
}

/** The nets of a set, the earth line first, then from the aerial along the way of the signal. */
export function netsOf({ parts }: BoardParts): Net[] {
  const nets = new Map<JointId, End[]>();
  for (const part of parts)
    part.terminals.forEach((terminal, i) => {
      const net = part.ends[i].joint;
      nets.set(net, [...(nets.get(net) ?? []), { terminal, part, id: part.ends[i].id }]);
    });
  // A frame has no earth terminal; the far side of the phones is the common line.
  const common = parts.find((p) => p.kind === 'earth terminal') ?? parts.find((p) => p.kind === 'outputs');
  const earth = common?.ends[common.ends.length - 1].joint;
  return [...nets]
    .map(([net, ends]) => ({ ends, isEarth: net === earth }))
    .sort((a, b) => Number(b.isEarth) - Number(a.isEarth));
}

/**
 * Wires in the order in which one lays them. Each net is a chain, so that no terminal takes more than two wires.
 * @param at where terminals lie, for chains that are short; without it they follow the order of the parts.
 */
export function wiringOf(nets: readonly Net[], at?: ReadonlyMap<string, Point>): BoardWiring {
  const lines: WiringLine[] = [];
  const free: string[] = [];
  for (const { ends, isEarth } of nets) {
    if (ends.length === 1) free.push(ends[0].terminal);
    const chain = at && ends.length > 2 ? shortChain(ends, at) : ends;
    const keepShort = !isEarth && ends.some(({ part: { kind } }) => TUNED.has(kind));
    for (let i = 1; i < chain.length; i++)
      lines.push({
        from: chain[i - 1].terminal,
        to: chain[i].terminal,
        use: i === 1 ? useOf(isEarth, ends) : undefined,
        keepShort,
      });
  }
  return { lines, free };
}

/** The ends of a net in a chain: the shortest joints first, none to a third wire or round in a ring. */
function shortChain(ends: readonly End[], at: ReadonlyMap<string, Point>): End[] {
  const points = ends.map(({ terminal }) => at.get(terminal)!);
  const joints = points
    .flatMap((p, i) =>
      points.slice(i + 1).map((q, k) => ({ i, k: i + 1 + k, length: Math.hypot(p[0] - q[0], p[1] - q[1]) })),
    )
    .sort((a, b) => a.length - b.length);
  const chains = ends.map((_, i) => [i]);
  for (const { i, k } of joints) {
    const [a, b] = [chains[i], chains[k]];
    const isEnd = (chain: readonly number[], x: number): boolean => chain[0] === x || chain[chain.length - 1] === x;
    if (a === b || !isEnd(a, i) || !isEnd(b, k)) continue;
    const joined = [...(a[0] === i ? a.toReversed() : a), ...(b[0] === k ? b : b.toReversed())];
    for (const x of joined) chains[x] = joined;
  }
  // From the end that comes first along the signal.
  const [chain] = chains;
  return (chain[0] < chain[chain.length - 1] ? chain : chain.toReversed()).map((i) => ends[i]);
}

/** What stands in tuned circuits. */
const TUNED: ReadonlySet<PartKind> = new Set(['coil', 'loop', 'variable', 'switch']);

function useOf(isEarth: boolean, ends: readonly End[]): WireUse | undefined {
  if (isEarth) return 'earth';
  const kinds = new Set(ends.map((e) => e.part.kind));
  if (kinds.has('aerial terminal')) return 'aerial';
  if (kinds.has('outputs')) return 'output';
  if (kinds.has('switch')) return 'band switch';
  if (kinds.has('detector')) return 'detector';
  return kinds.has('variable') ? 'tuned circuit' : undefined;
}

/** "L1 start → C1 fixed vanes": how a line is printed. */
export const lineText = ({ from, to }: WiringLine): string => `${from} → ${to}`;
