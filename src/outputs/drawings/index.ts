export { type CoilDrawing, coilWords, drawCoil, tapsOf } from './coil/coil.ts';
export type { Tap } from './coil/drawn.ts';
export { type Room, scaleWords } from './paper.ts';
