import { FACE_NAME } from '../../outputs/scene/index.ts';
import regular from './fonts/faintwave-sans-400.woff2?url';
import italic from './fonts/faintwave-sans-400-italic.woff2?url';
import semibold from './fonts/faintwave-sans-600.woff2?url';

const STYLES = [
  { file: regular, style: 'normal', weight: '400' },
  { file: semibold, style: 'normal', weight: '600' },
  { file: italic, style: 'italic', weight: '400' },
] as const;

const onPage = (): Promise<unknown> =>
  Promise.all(STYLES.map(({ style, weight }) => document.fonts.load(`${style} ${weight} 16px "${FACE_NAME}"`)));

/** A worker knows nothing of the page's styles. */
async function inWorker(): Promise<void> {
  const { fonts } = globalThis as { fonts?: FontFaceSet };
  if (!fonts || typeof FontFace === 'undefined') return;
  await Promise.all(
    STYLES.map(async ({ file, style, weight }) => {
      fonts.add(await new FontFace(FACE_NAME, `url("${file}")`, { style, weight }).load());
    }),
  );
}

let ready: Promise<unknown> | undefined;

/** Until the page's face can be drawn with on a canvas, here or in a worker; without it the next in line is drawn with. */
export async function faceReady(): Promise<void> {
  ready ??= (typeof document === 'undefined' ? inWorker() : onPage()).catch(() => undefined);
  await ready;
}
