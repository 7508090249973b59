import type { Element } from '../../src/engine/network/elements.ts';
import { type ElementId, elementId, partId } from '../../src/engine/network/ids.ts';

type Between<E> = E extends { first: ElementId }
  ? Omit<E, 'id' | 'first' | 'second'> & { name: string; first: string; second: string }
  : Omit<E, 'id' | 'owner'> & { name: string };

/** An element of a test's own circuit: its name is its id, and it is a part of its own. */
export function element<E extends Between<Element>>({ name, ...rest }: E): Extract<Element, { kind: E['kind'] }> {
  const made = { ...rest, id: elementId(name), owner: { part: partId(name), role: 'part' } };
  return made as unknown as Extract<Element, { kind: E['kind'] }>;
}
