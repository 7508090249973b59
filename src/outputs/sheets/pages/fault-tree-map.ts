import type { FaultTree } from '../../../engine/faults/fault-tree.ts';
import { circle, line, rect, text } from '../../scene/build.ts';
import type { Item } from '../../scene/scene.ts';

/** Between steps one below the other, mm. */
const ROW = 8.6;
const RADIUS = 2.5;
const LETTERS = 2.5;
const BOX_WIDTH = 5.4;
const BOX_HEIGHT = 3.8;

interface Node {
  readonly depth: number;
  readonly label: string;
  readonly isStep: boolean;
  /** Column, counted in ends. */
  readonly at: number;
  /** Thick: reached by the answer of a set with nothing wrong. */
  readonly isGood: boolean;
  readonly below: readonly Node[];
}

/**
 * A tree as a drawing: steps as numbered circles, ends as boxes with the likeliest fault.
 * @param tree of a set
 * @param faultLabel of a class of faults, as on the sheet
 * @param width mm
 * @returns its height, mm, and its items at a place on a page
 */
export function faultTreeMap(tree: FaultTree, faultLabel: (own: number) => string, width: number) {
  let ends = 0;
  let deepest = 0;
  const nodeOf = (step: number, depth: number, isGood: boolean): Node => {
    deepest = Math.max(deepest, depth + 1);
    const below = tree.steps[step].branches.map((branch): Node => {
      if ('step' in branch.goal) return nodeOf(branch.goal.step, depth + 1, branch.isGood);
      const label = faultLabel(branch.goal.causes[0].class);
      return { depth: depth + 1, label, isStep: false, at: ends++, isGood: branch.isGood, below: [] };
    });
    const at = (below[0].at + below[below.length - 1].at) / 2;
    return { depth, label: `${step + 1}`, isStep: true, at, isGood, below };
  };
  const top = nodeOf(0, 0, true);
  const pitch = width / Math.max(ends, 1);
  return {
    height: deepest * ROW + 2 * RADIUS + 2,
    items: (x: number, y: number): Item[] => {
      const place = ({ at, depth }: Node): readonly [number, number] => [
        x + (at + 0.5) * pitch,
        y + RADIUS + 0.5 + depth * ROW,
      ];
      const drawn = (node: Node): Item[] => {
        const [cx, cy] = place(node);
        const edges = node.below.map((one) => {
          const [ex, ey] = place(one);
          return line([cx, cy + RADIUS], [ex, ey - (one.isStep ? RADIUS : BOX_HEIGHT / 2)], {
            stroke: 'ink',
            width: one.isGood ? 0.6 : 0.2,
          });
        });
        const words = text([cx, cy + LETTERS * 0.35], node.label, LETTERS, { anchor: 'middle', bold: node.isStep });
        const shape = node.isStep
          ? circle([cx, cy], RADIUS, { stroke: 'ink', fill: 'paper', width: 0.3 })
          : rect(cx - BOX_WIDTH / 2, cy - BOX_HEIGHT / 2, BOX_WIDTH, BOX_HEIGHT, {
              stroke: 'soft',
              fill: 'paper',
              width: 0.2,
            });
        return [...edges, shape, words, ...node.below.flatMap(drawn)];
      };
      return drawn(top);
    },
  };
}
