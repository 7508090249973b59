export { compareTableWords } from './compare.ts';
export { dialStationsTableWords, dialTableWords } from './dial.ts';
export { pathTableWords, stationsTableWords } from './path.ts';
export {
  arrivalWarning,
  bearingText,
  disturbedByText,
  estimateText,
  neighbourText,
  placeTableWords,
  propagationText,
} from './place.ts';
export { rowAsText } from './table.ts';
