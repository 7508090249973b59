export { type FaultSearch, faultSearch, type ShownNext } from './search.ts';
export { type TouchBoard, touchBoard, touchOnBoard, touchOnCircuit } from './touch-drawings.ts';
