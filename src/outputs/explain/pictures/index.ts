import { aerial } from './aerial.ts';
import { charge } from './charge.ts';
import { curve } from './curve.ts';
import type { MovingPicture, PictureFacts, PictureId } from './facts.ts';
import { heater } from './heater.ts';
import { swing } from './swing.ts';
import { vanes } from './vanes.ts';

export const PICTURES: Readonly<Record<PictureId, MovingPicture>> = { vanes, swing, curve, charge, heater, aerial };
/** The whole picture in words, for who cannot see it. */
export const pictureWords = (id: PictureId, facts: PictureFacts): string =>
  `${PICTURES[id].title}. ${PICTURES[id].moves(facts)} ${PICTURES[id].about(facts)}`;

export { isPicture, type MovingPicture, PICTURE_IDS, type PictureFacts, type PictureId, type Tuner } from './facts.ts';
