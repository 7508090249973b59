export { aWeighting, BANDS, bandWidth, powerSum } from './bands.ts';
export { EAR_SPREAD, type Heard, type HeardBand, type HeardInput, heard } from './heard.ts';
export { PEAKS, type Programme, programmeShares, USUAL_BANDWIDTH } from './programme.ts';
export { type Room, type RoomName, roomNoise, roomWords, soundLevelA } from './room.ts';
export { equalLoudness, hearingThreshold, TWO_EARS } from './threshold.ts';
export { understood, understoodWords } from './understood.ts';
