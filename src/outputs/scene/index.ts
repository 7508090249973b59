export { type Box, itemBox, textBoxes } from './boxes.ts';
export { DAY, type Palette, PRINT, variables } from './palette.ts';
export type { Item, Look, Meaning, Point, Role, Scene, Segment, TextItem } from './scene.ts';
export { escaped, type SvgOptions, sceneToSvg } from './svg.ts';
export { shorten, textWidth, wrap } from './text-width.ts';
