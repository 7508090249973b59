export { ArrivingStation } from './fading.ts';
export { type BandPiece, type BandRecording, bandAt, centreFromName, openBandRecording } from './iq.ts';
export { Limiter } from './limiter.ts';
export { BLOCK, type HowLoud, type Listening, type ListeningOptions, openListening, SOUND_RATE } from './listening.ts';
export { BandNoise } from './noise.ts';
export { madeProgramme, PROGRAMME_RATE, type ProgrammeLoop, recordedProgramme } from './programme.ts';
export { LONGEST_RENDER, type RenderOptions, renderListening } from './render.ts';
export { resample } from './resample.ts';
export { fromBytes, type ReadBytes, readWav, readWavHeader, SoundFileError, writeWav } from './wav.ts';
