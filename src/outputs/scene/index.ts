export { FACE, FACE_NAME } from './face.ts';
export { DAY, type Palette, PRINT } from './palette.ts';
export type { Item, Role, Scene } from './scene.ts';
export { type SvgOptions, sceneToSvg } from './svg.ts';
export { textWidth } from './text-width.ts';
