/** Where a result about an aerial leaves the range it can be trusted in: each code with its figures, SI. */
// biome-ignore lint/suspicious/noEmptyInterface: codes are added as sentences leave the engine
export interface AerialWarnings {}
