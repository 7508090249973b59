export { makeCoil } from './coil.ts';
export { couple } from './coupling.ts';
export { bestWire, spreadFor, turnsFor, type Unwound } from './design.ts';
export { FORMERS } from './dielectrics.ts';
