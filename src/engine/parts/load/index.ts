export { type Amplifier, amplifier } from './amplifier.ts';
export { type CrystalEarpiece, crystalEarpiece } from './earpiece.ts';
export type { LoadElement, LoadNetwork } from './elements.ts';
export { audioLoad, type LoadSpec } from './load.ts';
export { type MagneticPhones, magneticPhones } from './magnetic.ts';
export { bestTransformerRatio, type Load, meanImpedance } from './model.ts';
export { type MovingCoilPhones, movingCoilPhones } from './moving-coil.ts';
export type { Response, ResponsePoints } from './response.ts';
export { reflectedImpedance, type Transformer, throughTransformer, transformerEfficiency } from './transformer.ts';
