/** The engine for other programs: pure functions, SI in and out, warnings with every result. */

export { type SetCircuit, setCircuit } from './built/set-circuit.ts';
export type { Assembly } from './kinds/arrangements/assembly.ts';
export type { Circuit, Element } from './network/elements.ts';
export type { ElementId, ElementRole, Owner, PartId } from './network/ids.ts';
export type { Port } from './network/port.ts';
export { wireAerial } from './parts/aerial/wire-aerial.ts';
export { variableCapacitor } from './parts/capacitor/index.ts';
export { makeCoil } from './parts/coil/coil.ts';
export { couple } from './parts/coil/coupling.ts';
export type { CoilModel } from './parts/coil/model.ts';
export { detectorByKind } from './parts/detector/library.ts';
export { steadyDetector } from './parts/detector/steady.ts';
export { earth } from './parts/earth/earth.ts';
export { audioLoad } from './parts/load/index.ts';
export * from './place/index.ts';
export { type ReceiveOptions, receive } from './reception/path/receive.ts';
export type * from './reception/path/types.ts';
export type { SetDescription, WrittenDescription } from './set/description.ts';
export { jsonSchema } from './set/json-schema.ts';
export { type Problem, problemSentence, type ReadResult, readText, readValue } from './set/read.ts';
export { withValueAt, writeText } from './set/write.ts';
export { type LinearSolver, linearSolver, type Solution } from './solvers/linear/solve.ts';
export { formatNumber, formatQuantity } from './units/format.ts';
export { type ParsedQuantity, parseQuantity, type QuantityKind } from './units/parse.ts';
export type * from './units/quantities.ts';
export { type NodeWaves, type NodeWavesOptions, nodeWaves } from './waves/node-waves.ts';
export { type WavePlace, wavePlaces } from './waves/wave-places.ts';
