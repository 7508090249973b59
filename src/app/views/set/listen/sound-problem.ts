import { SoundFileError } from '../../../../outputs/audio/index.ts';

/** An error whose message is made for the person at the page. */
export class ListeningError extends Error {}

/** What to tell the person of an error; `otherwise` where its message is a programmer's. */
export const listeningProblem = (error: unknown, otherwise: string): string =>
  error instanceof ListeningError || error instanceof SoundFileError ? error.message : otherwise;
