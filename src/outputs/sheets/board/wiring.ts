import { connectionsIn } from '../../drawings/circuit/nets.ts';
import type { BoardPart, BoardParts } from './parts.ts';

/** One piece of wire, between two terminals. */
export interface WiringLine {
  readonly from: string;
  readonly to: string;
  /** Why, in a few words, for the first wire of each net. */
  readonly note: string;
}

export interface Wiring {
  readonly lines: readonly WiringLine[];
  /** Terminals that stay free. */
  readonly free: readonly string[];
}

/**
 * Wires in the order in which one lays them: the earth line first, then from the aerial along the way of the signal.
 * Each net is a chain, so that no terminal takes more than two wires.
 * @param order of the tags along the board, so that wires stay short.
 */
export function wiringOf({ parts }: BoardParts, order: readonly string[] = parts.map((p) => p.tag)): Wiring {
  const nets = new Map<number, { terminal: string; part: BoardPart }[]>();
  const sorted = [...parts].sort((a, b) => order.indexOf(a.tag) - order.indexOf(b.tag));
  for (const part of sorted)
    part.terminals.forEach((terminal, i) => {
      const net = part.nets[i];
      nets.set(net, [...(nets.get(net) ?? []), { terminal, part }]);
    });
  // A frame has no earth terminal; the far side of the phones is the common line.
  const common = parts.find((p) => p.kind === 'earth terminal') ?? parts.find((p) => p.kind === 'outputs');
  const earth = common?.nets[common.nets.length - 1];
  const list = [...nets.entries()].sort(([a], [b]) => (a === earth ? -1 : b === earth ? 1 : 0));
  const lines: WiringLine[] = [];
  const free: string[] = [];
  for (const [net, ends] of list) {
    if (ends.length === 1) free.push(ends[0].terminal);
    for (let i = 1; i < ends.length; i++)
      lines.push({
        from: ends[i - 1].terminal,
        to: ends[i].terminal,
        note: i === 1 ? noteFor(net === earth, ends) : '',
      });
  }
  return { lines, free };
}

function noteFor(earth: boolean, ends: readonly { terminal: string; part: BoardPart }[]): string {
  if (earth) return 'the earth line: these wires make one chain';
  const kinds = new Set(ends.map((e) => e.part.kind));
  if (kinds.has('aerial terminal')) return 'from the aerial';
  if (kinds.has('outputs')) return 'what the detector gives, to the terminals';
  if (kinds.has('detector')) return 'to the detector: keep this wire short';
  if (kinds.has('variable')) return 'the tuned circuit';
  return '';
}

/** "L1 start → C1 fixed vanes": how a line is printed and read back. */
export const lineText = ({ from, to }: WiringLine): string => `${from} → ${to}`;

/**
 * What printed lines join, as the parts' elements between nets; to be held against the circuit.
 * @throws RangeError for a line that names no terminal of these parts.
 */
export function wiredConnections(lines: readonly string[], parts: readonly BoardPart[]) {
  const terminals = parts.flatMap((p) => p.terminals);
  const parent = terminals.map((_, i) => i);
  const find = (i: number): number => (parent[i] === i ? i : find(parent[i]));
  for (const line of lines) {
    const ends = line.split(' → ').map((end) => terminals.indexOf(end.trim()));
    if (ends.length !== 2 || ends.includes(-1)) throw new RangeError(`“${line}” names no two terminals`);
    parent[find(ends[0])] = find(ends[1]);
  }
  return parts.flatMap((p) =>
    p.pieces.map((piece) => ({
      name: piece.name,
      polar: piece.polar,
      nets: piece.terminals.map((t) => find(terminals.indexOf(t))),
    })),
  );
}

/** What a wiring list and the circuit do not agree on; empty when the list realises exactly the circuit. */
export function wiringDisagreements(lines: readonly string[], { parts, circuit }: BoardParts): string[] {
  const wired = netsByParts(wiredConnections(lines, parts).filter((c) => c.polar || c.nets[0] !== c.nets[1]));
  const wanted = netsByParts(connectionsIn(circuit).connections);
  return [
    ...wired.filter((net) => !wanted.includes(net)).map((net) => `The list joins ${net}; the circuit does not.`),
    ...wanted.filter((net) => !wired.includes(net)).map((net) => `The circuit joins ${net}; the list does not.`),
  ];
}

/** Every net by what hangs on it. */
function netsByParts(connections: readonly { name: string; polar: boolean; nets: readonly number[] }[]): string[] {
  const nets = new Map<number, string[]>();
  for (const c of connections)
    c.nets.forEach((net, end) => {
      nets.set(net, [...(nets.get(net) ?? []), c.polar ? `${c.name} (${end === 0 ? 'from' : 'to'})` : c.name]);
    });
  return [...nets.values()].map((list) => list.sort().join(' + ')).sort();
}
