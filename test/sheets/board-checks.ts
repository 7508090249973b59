import { overlap } from '../../src/outputs/scene/boxes.ts';
import type { BoardLayout } from '../../src/outputs/sheets/board/layout.ts';
import type { BoardPart, BoardParts } from '../../src/outputs/sheets/board/parts.ts';
import { type Connection, connectionsIn } from '../support/nets.ts';

/** Bodies that lie in one another's room, by tag; coils that belong together may. */
export function clashes({ placed }: BoardLayout, couplings: readonly (readonly [string, string])[]): string[] {
  const boxes = placed.map(({ part, print, at, turn }) => {
    // A coil that leans takes the room of its turned outline.
    const [c, s] = [Math.abs(Math.cos((turn * Math.PI) / 180)), Math.abs(Math.sin((turn * Math.PI) / 180))];
    const [w, h] = [print.w * c + print.h * s, print.w * s + print.h * c];
    return { tag: part.tag, box: { x: at[0] - w / 2, y: at[1] - h / 2, w, h } };
  });
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => overlap(a.box, b.box, -0.01) && !couplings.some((c) => c.includes(a.tag) && c.includes(b.tag)))
      .map((b) => `${a.tag} and ${b.tag}`),
  );
}

/**
 * What printed lines join, as the parts' elements between nets; to be held against the circuit.
 * @throws RangeError for a line that names no terminal of these parts.
 */
function wiredConnections(lines: readonly string[], parts: readonly BoardPart[]) {
  const terminals = parts.flatMap((p) => p.terminals);
  const parent = terminals.map((_, i) => i);
  const find = (i: number): number => (parent[i] === i ? i : find(parent[i]));
  for (const line of lines) {
    const ends = line.split(' → ').map((end) => terminals.indexOf(end.trim()));
    if (ends.length !== 2 || ends.includes(-1)) throw new RangeError(`“${line}” names no two terminals`);
    parent[find(ends[0])] = find(ends[1]);
  }
  const ids = parts.flatMap((p) => p.ends.map((end) => end.id));
  return parts.flatMap(({ part, kind }) =>
    (part?.pieces ?? []).map(
      (piece): Connection => ({
        id: piece.id,
        polar: kind === 'detector' || kind === 'cell',
        nets: piece.terminals.map((t) => find(ids.indexOf(t))),
      }),
    ),
  );
}

/** What a wiring list and the circuit do not agree on; empty when the list realises exactly the circuit. */
export function wiringDisagreements(lines: readonly string[], { parts, built }: BoardParts): string[] {
  const wired = netsByParts(wiredConnections(lines, parts).filter((c) => c.polar || c.nets[0] !== c.nets[1]));
  const wanted = netsByParts(connectionsIn(built.assembly.circuitAt(0.5)).connections);
  return [
    ...wired.filter((net) => !wanted.includes(net)).map((net) => `The list joins ${net}; the circuit does not.`),
    ...wanted.filter((net) => !wired.includes(net)).map((net) => `The circuit joins ${net}; the list does not.`),
  ];
}

/** Every net by what hangs on it. */
function netsByParts(connections: readonly Connection[]): string[] {
  const nets = new Map<number, string[]>();
  for (const c of connections)
    c.nets.forEach((net, end) => {
      nets.set(net, [...(nets.get(net) ?? []), c.polar ? `${c.id} (${end === 0 ? 'from' : 'to'})` : c.id]);
    });
  return [...nets.values()].map((list) => list.sort().join(' + ')).sort();
}

/**
 * The same held against the elements themselves, end by end: every net of the wires is one node of the circuit, and every
 * node one net. Takes nothing from how the board or the diagram read the circuit.
 */
export function wiringFaults(lines: readonly string[], { parts, built }: BoardParts): string[] {
  const { elements } = built.assembly.circuitAt(0.5);
  const two = elements.filter((e) => e.kind !== 'mutual');
  const node = merged(
    two.filter((e) => e.owner.role === 'contact' || (e.owner.role === 'emf' && e.owner.part === 'loop')),
    (e) => [e.from, e.to],
  );
  const net = merged(lines, (line) => line.split(' → ').map((end) => end.trim()));
  const pairs: [string, string, string][] = [];
  const join = (terminal: string, at: string): void => {
    pairs.push([net(terminal), node(at), terminal]);
  };
  for (const part of parts) {
    const own = two.filter((e) => e.owner.part === part.id);
    const terminal = (is: (mark: string) => boolean): string => part.terminals[part.marks.findIndex(is)];
    switch (part.kind) {
      case 'aerial terminal':
        join(part.terminals[0], 'aerial');
        break;
      case 'earth terminal':
        join(part.terminals[0], 'earth');
        break;
      case 'outputs':
        join(part.terminals[0], built.circuit.transducer.from);
        join(part.terminals[1], built.circuit.transducer.to);
        break;
      case 'transformer': {
        const [secondary] = own.filter((e) => e.owner.role === 'secondary');
        join(
          terminal((m) => m === 'secondary one end'),
          secondary.from,
        );
        join(
          terminal((m) => m === 'secondary other end'),
          secondary.to,
        );
        const rest = two.filter((e) => e.owner.part !== part.id).flatMap((e) => [e.from, e.to]);
        const ends = own.filter((e) => e.owner.role === 'primary').flatMap((e) => [e.from, e.to]);
        const [live] = ends.filter((n) => n !== 'earth' && rest.includes(n));
        join(
          terminal((m) => m === 'primary one end'),
          live,
        );
        join(
          terminal((m) => m === 'primary other end'),
          'earth',
        );
        break;
      }
      case 'coil':
      case 'loop': {
        const windings = own.filter((e) => e.owner.role === 'winding');
        for (const e of windings) {
          const [from, to] = e.owner.turns ?? [0, 1];
          for (const [turn, at] of [
            [from, e.to],
            [to, e.from],
          ] as const)
            join(part.terminals[part.ends.findIndex((end) => end.turn === turn)], at);
        }
        break;
      }
      default: {
        const [e] = own.filter(({ owner }) => !owner.role.endsWith('capacitance') && owner.role !== 'contact');
        join(part.terminals[0], e.from);
        join(part.terminals[1], e.to);
      }
    }
  }
  const faults: string[] = [];
  for (const [a, p, s] of pairs)
    for (const [b, q, t] of pairs)
      if ((a === b) !== (p === q))
        faults.push(
          `${s} and ${t} are ${a === b ? '' : 'not '}joined by the list, ${p === q ? '' : 'not '}in the circuit`,
        );
  return faults;
}

/** The parts of a band under the names that the board of the band switch has for them. */
export function namedAsOnBoard(board: BoardParts, { parts }: BoardParts, band: number): BoardParts {
  const named = board.parts.map((part): BoardPart => {
    const own = `${part.id}:${band}`;
    const found = parts.find(({ id }) => id === own) ?? parts.find(({ id }) => id === part.id);
    if (!found) throw new Error(`${part.words} is not on the board`);
    return {
      ...part,
      terminals: part.ends.map((end) => found.terminals[found.ends.findIndex(({ id }) => id === end.id)]),
    };
  });
  return { ...board, parts: named };
}

/** What the band switch joins on a band, as lines of a wiring list. */
export const switchTurned = (poles: number, band: number): string[] =>
  Array.from({ length: poles }, (_, i) => `S1 ${i + 1} → S1 ${i + 1}${String.fromCharCode(97 + band)}`);

/** Disjoint sets of names. */
function merged<T>(list: readonly T[], ends: (item: T) => readonly string[]): (name: string) => string {
  const parent = new Map<string, string>();
  const root = (name: string): string => {
    let at = name;
    while (parent.has(at)) at = parent.get(at)!;
    return at;
  };
  for (const item of list) {
    const [a, b] = ends(item).map(root);
    if (a !== b) parent.set(a, b);
  }
  return root;
}
