export { type BandPiece, bandAt, openBandRecording } from './iq.ts';
export { openListening } from './listening.ts';
export { BLOCK, type HowLoud, type Listening, type ListeningOptions, SOUND_RATE } from './listening-types.ts';
export { PROGRAMME_RATE, recordedProgramme } from './programme.ts';
export { LONGEST_RENDER, type RenderOptions, renderListening } from './render.ts';
export { readWav, SoundFileError, writeWav } from './wav.ts';
