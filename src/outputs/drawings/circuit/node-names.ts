import { nodeOf } from '../../../engine/kinds/arrangements/nodes.ts';
import { nodeText } from '../../words/index.ts';

/** What a node of the circuit is called in the description of its diagram; the builder's own as the builder wrote it. */
export function nodeName(id: string): string {
  const node = nodeOf(id);
  if (!node) throw new RangeError(`node "${id}" has no name`);
  return nodeText(node);
}
