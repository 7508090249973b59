import { text } from '../../scene/build.ts';
import type { Item } from '../../scene/scene.ts';
import { SMALL } from '../paper.ts';

/** One kind of capacitor, drawn, before it has its words. */
export interface DrawnCapacitor {
  readonly items: readonly Item[];
  readonly paper: { readonly width: number; readonly height: number; readonly drawnAt?: number };
}

/** Room below a drawing for a dimension, a line of words and the note of its scale, one under the other, mm. */
export const FOOT = 21;

/** What it is, on a line of its own: beside the note of the scale the two would run into each other. */
export const footWords = (height: number, words: string): Item => text([2, height - 6], words, SMALL);
