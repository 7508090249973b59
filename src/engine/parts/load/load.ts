import { warning } from '../../facts/warning.ts';
import { type Amplifier, amplifier } from './amplifier.ts';
import { type CrystalEarpiece, crystalEarpiece } from './earpiece.ts';
import { type MagneticPhones, magneticPhones } from './magnetic.ts';
import type { Load } from './model.ts';
import { type MovingCoilPhones, movingCoilPhones } from './moving-coil.ts';
import { type Transformer, throughTransformer } from './transformer.ts';

export type LoadSpec = (MagneticPhones | CrystalEarpiece | MovingCoilPhones | Amplifier) & {
  readonly transformer?: Transformer;
};

/** Below this a moving coil on a crystal detector takes next to no power from it. Common practice, no source. */
const WANTS_TRANSFORMER = 600;

/**
 * What the detector's output is heard in, with its transformer if it has one. By-pass capacitors and equalising resistors
 * ahead of it belong to the circuit.
 * @param spec phones, earpiece or amplifier, with a transformer or none, SI
 * @returns impedance at any frequency (Ω), sound pressure by voltage, direct resistance (Ω)
 * @throws RangeError when it cannot be as described.
 */
export function audioLoad(spec: LoadSpec): Load {
  const load = bareLoad(spec);
  if (spec.transformer) return throughTransformer(spec.transformer, load);
  if (spec.kind === 'moving-coil phones' && spec.impedance < WANTS_TRANSFORMER)
    return {
      ...load,
      warnings: [...load.warnings, warning('load.moving-coil-without-transformer', { impedance: spec.impedance })],
    };
  return load;
}

function bareLoad(spec: LoadSpec): Load {
  switch (spec.kind) {
    case 'phones':
      return magneticPhones(spec);
    case 'crystal earpiece':
      return crystalEarpiece(spec);
    case 'moving-coil phones':
      return movingCoilPhones(spec);
    case 'amplifier':
      return amplifier(spec);
  }
}
