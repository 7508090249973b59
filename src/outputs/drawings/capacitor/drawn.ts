import type { Item } from '../../scene/scene.ts';

/** One kind of capacitor, drawn, before it has its words. */
export interface DrawnCapacitor {
  readonly items: readonly Item[];
  readonly paper: { readonly width: number; readonly height: number; readonly drawnAt?: number };
}
