export { fitBand } from './fit.ts';

export type { VariableCapacitor } from './model.ts';

export { variableCapacitor } from './variable.ts';
