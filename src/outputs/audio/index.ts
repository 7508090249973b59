export { type BandPiece, bandAt, openBandRecording } from './iq.ts';
export { BLOCK, type HowLoud, type Listening, type ListeningOptions, openListening, SOUND_RATE } from './listening.ts';
export { PROGRAMME_RATE, recordedProgramme } from './programme.ts';
export { LONGEST_RENDER, type RenderOptions, renderListening } from './render.ts';
export { readWav, SoundFileError, writeWav } from './wav.ts';
