import { formatQuantity } from '../../../../../engine/units/format.ts';
import type { LoopId } from '../figures.ts';
import { kilohertz, volts } from '../format.ts';

export interface AerialPictureFacts {
  readonly loop?: LoopId;
  readonly station: string;
  readonly carrier: number;
  readonly emf: number;
  /** Of a wire aerial: F, m. */
  readonly aerial?: { readonly capacitance: number; readonly effectiveHeight: number };
}

const title = 'The aerial and the ground form a capacitor';

function about({ loop, station, carrier, emf, aerial }: AerialPictureFacts): string {
  if (loop === 'frame')
    return `The picture shows a wire aerial for comparison. This set has a frame aerial: the magnetic field of ${station} through its turns induces an emf of ${volts(emf)}.`;
  if (loop === 'rod')
    return `The picture shows a wire aerial for comparison. This set has a ferrite rod: the magnetic field of ${station} through its turns induces an emf of ${volts(emf)}.`;
  if (!aerial)
    return `The field of ${station} drives charge up and down the wire at ${kilohertz(carrier)}; the emf is ${volts(emf)}.`;
  return `The wire and the ground have a capacitance of ${formatQuantity(aerial.capacitance, 'capacitance', 3)}. The effective height is ${formatQuantity(aerial.effectiveHeight, 'length', 2)}: the field of ${station} over this height gives an emf of ${volts(emf)}, which drives an alternating current through the set.`;
}

const moves = ({ carrier }: AerialPictureFacts): string =>
  `A wire is stretched above the ground, with the set between them. Plus and minus signs on wire and ground change places at ${kilohertz(carrier)}: while the wire is positive the ground is negative, and field lines run between them. An arrow in the lead-in shows the current through the set; it is largest at the moment when wire and ground carry no charge.`;

export const aerialPictureWords = {
  title,
  about,
  description: (facts: AerialPictureFacts): string => `${title}. ${moves(facts)} ${about(facts)}`,
  set: 'set',
  wire: 'wire: one plate',
  comparison: 'a wire aerial, for comparison',
  ground: 'ground: the other plate',
} as const;
