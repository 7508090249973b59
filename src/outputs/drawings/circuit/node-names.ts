import { AERIAL, OUT } from '../../../engine/kinds/arrangements/assembly.ts';
import { listedName } from '../../../engine/kinds/arrangements/element-list.ts';
import { EARTH } from '../../../engine/network/elements.ts';
import { nodeNames } from '../../words/index.ts';

/** The circuit's own nodes, by their ids. */
const NODES: Readonly<Record<string, () => string>> = {
  [EARTH]: () => nodeNames.earth,
  [AERIAL]: () => nodeNames.aerial,
  [OUT]: () => nodeNames.out,
  top: () => nodeNames.top,
  bottom: () => nodeNames.bottom,
  middle: () => nodeNames.middle,
  foot: () => nodeNames.foot,
  'far end': () => nodeNames.farEnd,
  'aerial coil': () => nodeNames.aerialCoil,
  pump: () => nodeNames.pump,
  biased: () => nodeNames.biased,
  equalised: () => nodeNames.equalised,
  'load secondary': () => nodeNames.secondary,
  'load in': () => nodeNames.loadIn,
};

/** Ids with a number in them. */
const NUMBERED: readonly (readonly [RegExp, (n: number) => string])[] = [
  [/^turn ([\d.]+)$/, (n) => nodeNames.turn(n)],
  [/^aerial turn ([\d.]+)$/, (n) => nodeNames.aerialTurn(n)],
  [/^after trap (\d+)$/, (n) => nodeNames.afterTrap(n)],
  [/^trap (\d+) middle$/, (n) => nodeNames.trapMiddle(n)],
  [/^trap (\d+) loop$/, (n) => nodeNames.trapLoop(n)],
];

/** What a node of the circuit is called in the description of its diagram; the builder's own as the builder wrote it. */
export function nodeName(id: string): string {
  const listed = listedName(id);
  if (listed !== undefined) return listed;
  if (Object.hasOwn(NODES, id)) return NODES[id]();
  for (const [form, words] of NUMBERED) {
    const found = form.exec(id);
    if (found) return words(Number(found[1]));
  }
  throw new RangeError(`node "${id}" has no name`);
}
