import { aerialPicture } from './aerial.ts';
import { chargePicture } from './charge.ts';
import { curvePicture } from './curve.ts';
import { heaterPicture } from './heater.ts';
import { slowMotion } from './slow-motion.ts';
import { swingPicture } from './swing.ts';
import { tuningPicture } from './vanes.ts';

export type { AerialPictureFacts } from './aerial.ts';
export type { ChargePictureFacts } from './charge.ts';
export type { CurvePictureFacts } from './curve.ts';
export type { HeaterPictureFacts } from './heater.ts';
export type { SwingPictureFacts } from './swing.ts';
export type { TuningPictureFacts } from './vanes.ts';

/** The moving pictures: what they are called, what is written in them, what they show. */
export const pictureTexts = {
  aerial: aerialPicture,
  charge: chargePicture,
  curve: curvePicture,
  heater: heaterPicture,
  swing: swingPicture,
  vanes: tuningPicture,
  slowMotion,
  realTime: 'in real time',
} as const;
