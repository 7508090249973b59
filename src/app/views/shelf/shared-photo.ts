import { barePhoto, type Photo } from '../../../outputs/write-up/index.ts';

/** Enough for 30 cm of paper at 150 dots an inch, and for any screen. */
const LONGEST_SIDE = 1800;
/** Smaller pictures stay as they are. */
const SMALL_BYTES = 1e6;
const QUALITY = 0.85;

/**
 * A picture as others may see it: without place and time of the camera, no larger than print and screens need. In a
 * worker.
 * @returns undefined for a file that is no picture
 */
export async function sharedPhoto(file: Blob): Promise<Photo | undefined> {
  const bare = barePhoto(new Uint8Array(await file.arrayBuffer()));
  if (bare && bare.bytes.length <= SMALL_BYTES) return bare;
  return (await smaller(file).catch(() => undefined)) ?? bare;
}

async function smaller(file: Blob): Promise<Photo | undefined> {
  const picture = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const canvas = new OffscreenCanvas(Math.round(picture.width * scale), Math.round(picture.height * scale));
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const drawn = await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
  return barePhoto(new Uint8Array(await drawn.arrayBuffer()));
}
