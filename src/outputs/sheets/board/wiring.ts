import type { JointId } from '../../../engine/network/ids.ts';
import type { WireUse } from '../../words/index.ts';
import type { BoardPart, BoardParts } from './parts.ts';

/** One piece of wire, between two terminals. */
export interface WiringLine {
  readonly from: string;
  readonly to: string;
  /** What for, of the first wire of each net. */
  readonly use?: WireUse;
}

export interface BoardWiring {
  readonly lines: readonly WiringLine[];
  /** Terminals that stay free. */
  readonly free: readonly string[];
}

/**
 * Wires in the order in which one lays them: the earth line first, then from the aerial along the way of the signal.
 * Each net is a chain, so that no terminal takes more than two wires.
 * @param order of the tags along the board, so that wires stay short.
 */
export function wiringOf({ parts }: BoardParts, order: readonly string[] = parts.map((p) => p.tag)): BoardWiring {
  const nets = new Map<JointId, { terminal: string; part: BoardPart }[]>();
  const sorted = [...parts].sort((a, b) => order.indexOf(a.tag) - order.indexOf(b.tag));
  for (const part of sorted)
    part.terminals.forEach((terminal, i) => {
      const net = part.ends[i].joint;
      nets.set(net, [...(nets.get(net) ?? []), { terminal, part }]);
    });
  // A frame has no earth terminal; the far side of the phones is the common line.
  const common = parts.find((p) => p.kind === 'earth terminal') ?? parts.find((p) => p.kind === 'outputs');
  const earth = common?.ends[common.ends.length - 1].joint;
  const list = [...nets.entries()].sort(([a], [b]) => (a === earth ? -1 : b === earth ? 1 : 0));
  const lines: WiringLine[] = [];
  const free: string[] = [];
  for (const [net, ends] of list) {
    if (ends.length === 1) free.push(ends[0].terminal);
    for (let i = 1; i < ends.length; i++)
      lines.push({
        from: ends[i - 1].terminal,
        to: ends[i].terminal,
        use: i === 1 ? useOf(net === earth, ends) : undefined,
      });
  }
  return { lines, free };
}

function useOf(isEarth: boolean, ends: readonly { readonly part: BoardPart }[]): WireUse | undefined {
  if (isEarth) return 'earth';
  const kinds = new Set(ends.map((e) => e.part.kind));
  if (kinds.has('aerial terminal')) return 'aerial';
  if (kinds.has('outputs')) return 'output';
  if (kinds.has('detector')) return 'detector';
  return kinds.has('variable') ? 'tuned circuit' : undefined;
}

/** "L1 start → C1 fixed vanes": how a line is printed. */
export const lineText = ({ from, to }: WiringLine): string => `${from} → ${to}`;
