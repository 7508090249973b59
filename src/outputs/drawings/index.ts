export { drawAerial } from './aerial/aerial.ts';
export { benchConnection } from './bench-connection.ts';
export { drawCapacitor } from './capacitor/capacitor.ts';
export { drawCircuit } from './circuit/draw.ts';
export { circuitDiagram } from './circuit/layouts.ts';
export { drawCoil, tapsOf } from './coil/coil.ts';
export { drawDetector } from './detector.ts';
export { drawLoad } from './load.ts';
export type { PaperRoom } from './paper.ts';
