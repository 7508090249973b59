export { type Heard, heard, loudnessOf } from './heard.ts';
export { intelligibilityAmong, intelligibilityWhen } from './intelligibility.ts';
export { PEAKS, type Programme } from './programme.ts';
export { roomNoise } from './room.ts';
export { bandWidth, THIRD_OCTAVES } from './third-octaves.ts';
export { LISTENERS } from './threshold.ts';
