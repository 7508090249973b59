import { aerialPictureWords } from './aerial.ts';
import { chargePictureWords } from './charge.ts';
import { curvePictureWords } from './curve.ts';
import { heaterPictureWords } from './heater.ts';
import { slowMotion } from './slow-motion.ts';
import { swingPictureWords } from './swing.ts';
import { tuningPicture } from './vanes.ts';

export type { AerialPictureFacts } from './aerial.ts';
export type { ChargePictureFacts } from './charge.ts';
export type { CurvePictureFacts } from './curve.ts';
export type { HeaterPictureFacts } from './heater.ts';
export type { SwingPictureFacts } from './swing.ts';
export type { TuningPictureFacts } from './vanes.ts';

/** The moving pictures: what they are called, what is written in them, what they show. */
export const pictureTexts = {
  aerial: aerialPictureWords,
  charge: chargePictureWords,
  curve: curvePictureWords,
  heater: heaterPictureWords,
  swing: swingPictureWords,
  vanes: tuningPicture,
  slowMotion,
  realTime: 'in real time',
} as const;
