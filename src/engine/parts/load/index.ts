export { audioLoad } from './load.ts';

export type { Load } from './model.ts';
