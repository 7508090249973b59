import type { Heater } from '../../../engine/parts/detector/thermionic/heater.ts';
import { SCENE_PICTURES } from '../../../engine/set/scenes.ts';
import { formatNumber } from '../../../engine/units/format.ts';
import type { OneWay } from '../model/one-way.ts';
import type { Waves } from '../model/waves.ts';
import type { Pen } from '../stage/pen.ts';

/** What one turns, or moves, to tune. */
export type Tuner = 'vanes' | 'sheets' | 'slider' | 'variometer';

/** The set's own figures, as the moving pictures need them. SI. */
export interface PictureFacts {
  readonly waves: Waves;
  readonly detector: OneWay;
  readonly detectorLabel: string;
  /** Mean voltage the detector works against. */
  readonly directVoltage: number;
  /** The pointer's way: where it stands (0 open … 1 meshed), what that tunes, how sharply. */
  readonly dial: readonly {
    readonly position: number;
    readonly frequency: number;
    readonly capacitance?: number;
    readonly loadedQ: number;
  }[];
  readonly tuner: Tuner;
  /** In place of a wire aerial. */
  readonly loop?: 'frame' | 'rod';
  readonly swing: number;
  readonly stations: readonly { readonly name: string; readonly frequency: number; readonly emf: number }[];
  readonly aerial?: { readonly capacitance: number; readonly effectiveHeight: number };
  readonly heater: Heater;
  /** Heater voltage of the set's valve, or the rated one. */
  readonly heaterVoltage: number;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** One moving picture: drawn afresh for any moment. */
export interface MovingPicture {
  readonly id: PictureId;
  readonly title: string;
  /** What it shows, in one sentence, with figures. */
  about(facts: PictureFacts): string;
  /** What moves in it, for who cannot see it. */
  moves(facts: PictureFacts): string;
  /** How much slower than in the set, or "" where it runs in its own time. */
  slowed(facts: PictureFacts): string;
  /** After so many seconds it begins again. */
  seconds(facts: PictureFacts): number;
  /** The moment to show where nothing may move, s. */
  still(facts: PictureFacts): number;
  /** Its caption tells of the still moment: a picture file shows that one. */
  readonly captioned?: boolean;
  paint(pen: Pen, facts: PictureFacts, seconds: number, box: Box, letters: number): void;
}

export const PICTURE_IDS = SCENE_PICTURES;
export type PictureId = (typeof PICTURE_IDS)[number];
export const isPicture = (value: unknown): value is PictureId => (PICTURE_IDS as readonly unknown[]).includes(value);

/** A frequency in kHz, without its unit. */
export const kilohertz = (f: number): string => formatNumber(f / 1e3, 4).replace(/\.0+$/, '');

/** "603 thousand times a second". */
export const timesASecond = (f: number): string => `${kilohertz(f)} thousand times a second`;

/** "slowed 603 thousand times". */
export function slowedText(times: number): string {
  const show = (value: number) => (value >= 100 ? Math.round(value / 10) * 10 : Math.round(value * 10) / 10);
  return times >= 0.95e6 ? `slowed ${show(times / 1e6)} million times` : `slowed ${show(times / 1e3)} thousand times`;
}
