export { type FaultSearch, faultSearch, type ShownNext } from './cause-search.ts';
export { type TouchBoard, touchBoard, touchOnBoard, touchOnCircuit } from './touch-drawings.ts';
