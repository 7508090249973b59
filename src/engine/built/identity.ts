import type { Path } from '../kinds/adjustment.ts';
import { aerialLead } from '../kinds/arrangements/aerial-lead.ts';
import type { LoadDescription } from '../kinds/loads/load-schema.ts';
import type { PartId } from '../network/ids.ts';
import { coilPart, listedPart, PART, trapCapacitor, trapCoil } from '../network/part-ids.ts';
import type { SetDescription } from '../set/description.ts';

/** What a part is there for. */
export type PartRole =
  | 'aerial'
  | 'earth'
  | 'tuning-coil'
  | 'aerial-coil'
  | 'rotor'
  /** Described, but not of the circuit. */
  | 'spare-coil'
  /** A loop aerial, which is the tuning coil too. */
  | 'frame'
  | 'rod'
  | 'tuning'
  | 'aerial-tuning'
  | 'series-capacitor'
  | 'parallel-capacitor'
  | 'pump-capacitor'
  | 'by-pass'
  | 'trap-coil'
  | 'trap-capacitor'
  | 'detector'
  | 'second-detector'
  | 'bias-cell'
  | 'equaliser-resistor'
  | 'equaliser-capacitor'
  | 'transformer'
  | 'load-resistor'
  | 'coupling-capacitor'
  | 'load'
  /** An entry of a list of elements. */
  | 'listed';

/** Which part it is: known from the description alone, whether or not the set can be built. */
export interface PartIdentity {
  readonly id: PartId;
  readonly role: PartRole;
  /** Where in the description: what opens its panel and takes its changes. */
  readonly at: Path;
  /** The user's own name for it: words to be shown, never to be compared. */
  readonly displayName?: string;
  /** Place among those of its kind: of a coil, a trap, an entry of a list. */
  readonly index?: number;
  /** Of the load: what it is. */
  readonly load?: LoadDescription['kind'];
}

/** Every part that a set may have, by id. */
export function identitiesOf(set: SetDescription): ReadonlyMap<PartId, PartIdentity> {
  const { arrangement } = set;
  const list: PartIdentity[] = [
    { id: PART.aerial, role: 'aerial', at: ['aerial'] },
    { id: PART.earth, role: 'earth', at: ['earth'] },
    { id: PART.loop, role: set.aerial.kind === 'frame' ? 'frame' : 'rod', at: ['aerial'] },
    ...set.coils.map((coil, index): PartIdentity => {
      const role = coilRole(set, coil.name);
      return { id: coilPart(index), role, at: ['coils', index], displayName: coil.name, index };
    }),
    { id: PART.tuning, role: 'tuning', at: ['tuning'] },
    { id: PART.aerialTuning, role: 'aerial-tuning', at: ['arrangement', 'aerialTuning'] },
    { id: PART.seriesCapacitor, role: 'series-capacitor', at: ['arrangement'] },
    { id: PART.parallelCapacitor, role: 'parallel-capacitor', at: ['arrangement'] },
    { id: PART.pumpCapacitor, role: 'pump-capacitor', at: ['detector'] },
    { id: PART.detector, role: 'detector', at: ['detector'] },
    { id: PART.secondDetector, role: 'second-detector', at: ['detector'] },
    { id: PART.biasCell, role: 'bias-cell', at: ['detector'] },
    { id: PART.byPass, role: 'by-pass', at: ['load'] },
    { id: PART.equaliserResistor, role: 'equaliser-resistor', at: ['load'] },
    { id: PART.equaliserCapacitor, role: 'equaliser-capacitor', at: ['load'] },
    { id: PART.transformer, role: 'transformer', at: ['load'] },
    { id: PART.loadResistor, role: 'load-resistor', at: ['load'] },
    { id: PART.couplingCapacitor, role: 'coupling-capacitor', at: ['load'] },
    { id: PART.load, role: 'load', at: ['load'], load: set.load.kind },
  ];
  if (arrangement.kind === 'elements')
    arrangement.elements.forEach((e, index) => {
      const at = ['arrangement', 'elements', index];
      list.push({ id: listedPart(index), role: 'listed', at, displayName: e.name, index });
    });
  else
    aerialLead(arrangement).traps.forEach((_, index) => {
      const at = ['arrangement', 'traps', index];
      list.push({ id: trapCoil(index), role: 'trap-coil', at, index });
      list.push({ id: trapCapacitor(index), role: 'trap-capacitor', at, index });
    });
  return new Map(list.map((p) => [p.id, p]));
}

/** The coil that a description means by a name. @throws RangeError for a name that none of its coils has. */
export function coilIndex(set: SetDescription, name: string): number {
  const index = set.coils.findIndex((c) => c.name === name);
  if (index < 0) throw new RangeError(`no coil "${name}"`);
  return index;
}

function coilRole({ arrangement }: SetDescription, name: string): PartRole {
  if ('coil' in arrangement && arrangement.coil === name) return 'tuning-coil';
  if ('aerialCoil' in arrangement && arrangement.aerialCoil === name) return 'aerial-coil';
  if ('rotor' in arrangement && arrangement.rotor === name) return 'rotor';
  return 'spare-coil';
}
