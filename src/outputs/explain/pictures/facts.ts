import type { Heater } from '../../../engine/parts/detector/thermionic/heater.ts';
import { SCENE_PICTURES } from '../../../engine/set/scenes.ts';
import { figureTexts, type LoopId, type TunerId } from '../../words/index.ts';
import type { OneWay } from '../model/one-way.ts';
import type { Waves } from '../model/waves.ts';
import type { Pen } from '../stage/pen.ts';

/** The set's own figures, as the moving pictures need them. SI. */
export interface PictureFacts {
  readonly waves: Waves;
  readonly detector: OneWay;
  /** Mean voltage the detector works against. */
  readonly directVoltage: number;
  /** The pointer's way: where it stands (0 open … 1 meshed), what that tunes, how sharply. */
  readonly dial: readonly {
    readonly position: number;
    readonly frequency: number;
    readonly capacitance?: number;
    readonly loadedQ: number;
  }[];
  /** What one moves to tune. */
  readonly tuner: TunerId;
  /** In place of a wire aerial. */
  readonly loop?: LoopId;
  readonly swing: number;
  readonly stations: readonly { readonly name: string; readonly frequency: number; readonly emf: number }[];
  readonly aerial?: { readonly capacitance: number; readonly effectiveHeight: number };
  readonly heater: Heater;
  /** Heater voltage of the set's valve, or the rated one. */
  readonly heaterVoltage: number;
}

export interface PictureBox {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** One moving picture: drawn afresh for any moment. */
export interface MovingPicture {
  readonly id: PictureId;
  readonly title: () => string;
  /** What it shows, in a sentence or two, with figures. */
  about(facts: PictureFacts): string;
  /** The whole of it in words, for who cannot see it: title, what moves, figures. */
  description(facts: PictureFacts): string;
  /** How much slower than in the set it runs. */
  speed(facts: PictureFacts): string;
  /** After so many seconds it begins again. */
  seconds(facts: PictureFacts): number;
  /** The moment to show where nothing may move, s. */
  still(facts: PictureFacts): number;
  /** Its caption tells of the still moment: a picture file shows that one. */
  readonly captioned?: boolean;
  paint(pen: Pen, facts: PictureFacts, seconds: number, box: PictureBox, letters: number): void;
}

export const PICTURE_IDS = SCENE_PICTURES;
export type PictureId = (typeof PICTURE_IDS)[number];
export const isPicture = (value: unknown): value is PictureId => (PICTURE_IDS as readonly unknown[]).includes(value);

/** The station that is tuned in. */
export const ownStation = ({ stations, waves }: PictureFacts) =>
  stations.find((s) => Math.abs(s.frequency - waves.spec.carrier) < 100);

/** What it is called. */
export const stationName = (facts: PictureFacts): string => ownStation(facts)?.name ?? figureTexts.exampleStation(0);
