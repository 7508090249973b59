import type { LoadDescription } from '../kinds/loads/load-schema.ts';
import { standardErrorOf, USUAL_ERROR } from '../kinds/measured/usual-errors.ts';
import type { SetDescription } from '../set/description.ts';
import type { SetInput } from './input.ts';
import { amountSpread, shareSpread } from './measured-spread.ts';
import { between, COMMON_PRACTICE, plusOrMinus, type Spread, timesOrOver } from './spread.ts';

const HANDBOOKS = 'handbooks, from memory';

/** ± dB on what phones or loudspeaker give for their input. */
function sensitivity(load: LoadDescription): Spread {
  if (load.kind === 'amplifier') return plusOrMinus(3, COMMON_PRACTICE);
  const measured = load.measured?.sensitivity;
  if (measured) return amountSpread(standardErrorOf(measured, USUAL_ERROR.sensitivity));
  if (load.sensitivity !== undefined) return plusOrMinus(1.5, 'as measured');
  if (load.kind === 'crystal earpiece') return plusOrMinus(10, HANDBOOKS);
  if (load.kind === 'moving-coil phones') return plusOrMinus(7, HANDBOOKS);
  return plusOrMinus(load.make === 'balanced armature' ? 5 : 8, HANDBOOKS);
}

/** Factor on the impedance; undefined where it follows from what is given. */
function impedance(load: LoadDescription): Spread | undefined {
  if (load.kind === 'crystal earpiece')
    return load.measured?.capacitance
      ? shareSpread(load.measured.capacitance, USUAL_ERROR.capacitance)
      : timesOrOver(2.5, 'published capacitances, 0.5 to 15 nF');
  if (load.kind !== 'phones') return undefined;
  if (load.measured?.impedance) return shareSpread(load.measured.impedance, USUAL_ERROR.audioImpedance);
  return load.inductance === undefined ? timesOrOver(1.4, HANDBOOKS) : undefined;
}

/** What is not known of what one listens with. */
export function loadSpreads({ load }: SetDescription): SetInput[] {
  const inputs: SetInput[] = [{ id: 'sensitivity', settledBy: 'phones', spread: sensitivity(load), adds: true }];
  const spread = impedance(load);
  if (spread)
    inputs.push({
      id: 'load impedance',
      settledBy: 'phones',
      spread,
      changes: (loadImpedance) => ({ loadImpedance }),
    });
  if ('transformer' in load && load.transformer)
    inputs.push({
      id: 'transformer loss',
      settledBy: 'phones',
      // About the loss calculated.
      spread: between('difference', [-1.5, 0, 1], HANDBOOKS),
      adds: true,
    });
  return inputs;
}
