import { aerial } from './aerial.ts';
import { charge } from './charge.ts';
import { curve } from './curve.ts';
import type { MovingPicture, PictureId } from './facts.ts';
import { heater } from './heater.ts';
import { swing } from './swing.ts';
import { vanes } from './vanes.ts';

export const PICTURES: Readonly<Record<PictureId, MovingPicture>> = { vanes, swing, curve, charge, heater, aerial };

export { type MovingPicture, PICTURE_IDS, type PictureFacts, type PictureId } from './facts.ts';
