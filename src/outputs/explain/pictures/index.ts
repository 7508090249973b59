import { aerialPicture } from './aerial.ts';
import { chargePicture } from './charge.ts';
import { curvePicture } from './curve.ts';
import type { MovingPicture, PictureId } from './facts.ts';
import { heaterPicture } from './heater.ts';
import { swingPicture } from './swing.ts';
import { vanesPicture } from './vanes.ts';

export const PICTURES: Readonly<Record<PictureId, MovingPicture>> = {
  vanes: vanesPicture,
  swing: swingPicture,
  curve: curvePicture,
  charge: chargePicture,
  heater: heaterPicture,
  aerial: aerialPicture,
};

export { type MovingPicture, PICTURE_IDS, type PictureFacts, type PictureId } from './facts.ts';
