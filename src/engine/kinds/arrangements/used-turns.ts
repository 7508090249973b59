import type { ArrangementDescription } from './arrangement-schema.ts';
import { type CoilInCircuit, SAME_TURN, withNodeJoined } from './coil-sections.ts';

/** How much of its coil a single circuit uses. */
export interface UsedTurns {
  /** From the earthed end. */
  readonly used: number;
  /** Ends of the rest: both joined to the top of the turns in use, or the far one left open. */
  readonly rest?: 'shorted' | 'open';
}

const SINGLE_CIRCUITS: readonly unknown[] = ['direct', 'series capacitor', 'tapped'];

/** Whether an arrangement is one circuit fed from the aerial, of whose coil a part can be in use. @param kind as written */
export const isSingleCircuit = (kind: unknown): boolean => SINGLE_CIRCUITS.includes(kind);

/** Whether the description says how much of the coil is in use. */
export const isUsedInPart = (
  arrangement: ArrangementDescription,
): arrangement is Extract<ArrangementDescription, { usedTurns?: unknown }> & { readonly usedTurns: number } =>
  'usedTurns' in arrangement && arrangement.usedTurns !== undefined;

/**
 * The turns of its tuning coil that an arrangement uses.
 * @param arrangement as read
 * @param turns of the coil
 * @returns all of them where the description says nothing else
 */
export function usedTurns(arrangement: ArrangementDescription, turns: number): UsedTurns {
  if (!isUsedInPart(arrangement) || turns - arrangement.usedTurns <= SAME_TURN) return { used: turns };
  return { used: arrangement.usedTurns, rest: arrangement.unusedTurns ?? 'shorted' };
}

/** Node of the last turn of a coil whose turns in use end at the node "top". */
export const lastNode = ({ rest }: UsedTurns): string => (rest === 'open' ? 'far end' : 'top');

/** The same coil with the end of its turns in use at the node "top". */
export const joinedAtTop = (coil: CoilInCircuit, { used, rest }: UsedTurns): CoilInCircuit =>
  rest === undefined ? coil : withNodeJoined(coil, coil.nodeAt(used), 'top');
