export { BANDS, bandWidth } from './bands.ts';
export { EAR_SPREAD, type Heard, heard, loudnessOf } from './heard.ts';
export { intelligibilityBeside } from './intelligibility.ts';
export { PEAKS, type Programme } from './programme.ts';
export { roomNoise } from './room.ts';
