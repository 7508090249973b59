import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import { wireOf } from '../../../engine/kinds/coils/wire-of.ts';
import { closePitch, overallDiameter } from '../../../engine/parts/wire/wire.ts';
import type { Box } from '../../scene/boxes.ts';
import { circle, line } from '../../scene/build.ts';
import { placeLabels } from '../../scene/labels.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { coilDrawing, type TapName } from '../../words/index.ts';
import { SMALL, THIN } from '../paper.ts';

export interface Tap {
  readonly name: TapName;
  /** Turns from the earthed end. */
  readonly turn: number;
}

export interface DrawnCoil {
  readonly items: readonly Item[];
  readonly paper: { readonly width: number; readonly height: number; readonly drawnAt?: number };
}

export type WoundDescription = Exclude<CoilDescription, { shape: 'measured' }>;
export type CoilOf<S extends CoilDescription['shape']> = Extract<CoilDescription, { shape: S }>;

/** How far a tube reaches beyond its winding at either end, mm. */
export const SPARE = 8;

/** Over its covering, mm. */
export const overall = ({ wire }: WoundDescription): number => overallDiameter(wireOf(wire)) * 1e3;
/** Centre to centre when wound close, mm. */
export const close = ({ wire }: WoundDescription): number => closePitch(wireOf(wire)) * 1e3;

/** Which turns to draw when all would run into each other: every so many, and always the first and the last. */
export function shown(turns: number, spacingOnPaper: number, least = 0.55): { step: number; list: number[] } {
  const step = Math.max(1, Math.ceil(least / Math.max(spacingOnPaper, 1e-6)));
  const last = Math.max(0, Math.ceil(turns) - 1);
  const list: number[] = [];
  for (let i = 0; i < last; i += step) list.push(i);
  list.push(last);
  return { step, list };
}

/** Taps with leaders from where they are on the coil to their names. */
export function tapLabels(
  taps: readonly (Tap & { at: Point; toward: Point })[],
  frame: Box,
  avoid: readonly Box[] = [],
): Item[] {
  const placed = placeLabels(
    taps.map((t, i) => {
      // Of taps side by side the outer ones write outward, so that no leader runs through another's words.
      const near = (other: number) => taps[other] && Math.abs(taps[other].at[0] - t.at[0]) < 24;
      const first = near(i + 1) && !near(i - 1) ? 'end' : near(i - 1) && !near(i + 1) ? 'start' : 'middle';
      const d = Math.hypot(t.toward[0] - t.at[0], t.toward[1] - t.at[1]) || 1;
      const [ux, uy] = [(t.toward[0] - t.at[0]) / d, (t.toward[1] - t.at[1]) / d];
      return {
        item: { text: coilDrawing.tap(t), size: SMALL, sits: 'middle' as const, rim: true },
        must: true,
        places: [0, 4.6, 9.2, 13.8].flatMap((more) => {
          const p: Point = [t.toward[0] + ux * more, t.toward[1] + uy * more];
          const side = Math.abs(ux) > 0.5 ? (ux > 0 ? 'start' : 'end') : first;
          return ([side, 'middle', 'start', 'end'] as const).map((anchor) => ({
            at: [p[0] + (anchor === 'start' ? 0.7 : anchor === 'end' ? -0.7 : 0), p[1]] as Point,
            anchor,
          }));
        }),
      };
    }),
    frame,
    avoid,
    1.8,
  );
  return [
    ...taps.flatMap((t, i) => {
      const label = placed.items[i];
      const end: Point = [label.at[0], label.at[1] + (label.at[1] < t.at[1] ? 1.6 : label.at[1] > t.at[1] ? -1.6 : 0)];
      return [
        line(t.at, end, { stroke: 'accent', width: THIN * 1.4 }),
        circle(t.at, 0.7, {
          fill: 'accent',
          title: coilDrawing.tapTitle(t),
        }),
      ];
    }),
    ...placed.items.map((item) => ({ ...item, role: 'accent' as const })),
  ];
}
