import { type Warning, warning } from '../facts/warning.ts';
import type { VaneLaw } from '../parts/capacitor/law.ts';
import type { SetDescription } from '../set/description.ts';
import { type DialFit, type DialReading, fitDial } from './dial-fit.ts';
import { fitDialOfAnyLaw } from './dial-law-fit.ts';
import { capacitorOf, type DialCapacitor, shapeOfLaw, vaneLawOf } from './scale-of-capacitor.ts';
import { UnfitReadings } from './unfit.ts';

/** The capacitor as readings of a dial state it. */
export interface StatedCapacitor {
  readonly law: VaneLaw | 'unknown';
  /** F. */
  readonly minimum: number;
  readonly maximum: number;
}

/** A fit of a dial with the capacitor that it is of. */
export interface FitOfDial extends DialFit {
  readonly capacitor: DialCapacitor;
  /** Whether that is how the set's own runs, so that each reading can be weighed against the description. */
  readonly isOfSet: boolean;
}

/** A law that the readings leave less likely than this is not the capacitor's. */
const EXCLUDED = 0.05;

/** A capacitor with the law that is stated for it. @throws UnfitReadings for a law that cannot begin at no capacitance. */
function asStated({ minimum, maximum }: StatedCapacitor, law: VaneLaw): DialCapacitor {
  if (!(minimum > 0) && (law === 'straight-line frequency' || law === 'logarithmic'))
    throw new UnfitReadings({ code: 'dial.law-from-nothing', law });
  return { minimum, maximum, shape: shapeOfLaw(law, minimum, maximum) };
}

/** The law is not known to who read the dial: as the readings show it, and whether the set's is such a one. */
function ofUnknownLaw(readings: readonly DialReading[], stated: StatedCapacitor, set: SetDescription | undefined) {
  const own = set && capacitorOf(set);
  const described = set && vaneLawOf(set);
  const { laws, ...fit } = fitDialOfAnyLaw(readings, { ...stated, padder: own?.padder });
  const ofSet = laws.find(({ law }) => law === described);
  const [{ capacitor }] = laws;
  if (own && ofSet && ofSet.share >= EXCLUDED) return { ...fit, capacitor, isOfSet: true };
  const warnings: readonly Warning[] = described
    ? [...fit.warnings, warning('measure.law-not-as-described', { law: laws[0].law, described })]
    : fit.warnings;
  return { ...fit, capacitor, isOfSet: false, warnings };
}

/** A capacitor that positions were read on. */
interface CapacitorRead {
  readonly capacitor: DialCapacitor;
  readonly warnings: readonly Warning[];
}

/**
 * The capacitor that positions were read on: as the readings state it, between its stated ends by the law that the set
 * describes, or the set's own.
 * @param stated what the readings say of it; left out, or of a law that nobody knows: as the set has it
 * @param set as read; left out: what is stated counts
 * @throws UnfitReadings where nobody says what it is
 */
export function capacitorRead(stated: StatedCapacitor | undefined, set?: SetDescription): CapacitorRead {
  const own = set && capacitorOf(set);
  const described = set && vaneLawOf(set);
  if (!stated || stated.law === 'unknown') {
    if (!own) throw new UnfitReadings({ code: set ? 'dial.no-scale' : 'dial.no-capacitor' });
    if (!stated || !described) return { capacitor: own, warnings: [] };
    return { capacitor: { ...asStated(stated, described), padder: own.padder }, warnings: [] };
  }
  if (!own || described === stated.law)
    return {
      capacitor: { ...asStated(stated, stated.law), padder: own?.padder },
      warnings: set && !own ? [warning('measure.dial-not-described')] : [],
    };
  const { minimum, maximum } = stated;
  // The ends are of the one that was read, how it runs between them of the one described.
  const shape = described ? asStated(stated, described).shape : own.shape;
  return {
    capacitor: { minimum, maximum, shape, padder: own.padder },
    warnings: [warning('measure.other-law', { stated: stated.law, ...(described && { described }) })],
  };
}

/**
 * Inductance and strays from a dial, by the law that the set's capacitor has.
 * @param readings of stations on it
 * @param stated what the readings say of the capacitor; left out: as the set has it
 * @param set as read; left out: the readings alone count
 * @returns as `fitDial`, with the capacitor; warnings say where readings and description differ on it
 * @throws UnfitReadings where no figure follows, or nobody says what the capacitor is
 */
export function fitDialOf(
  readings: readonly DialReading[],
  stated: StatedCapacitor | undefined,
  set?: SetDescription,
): FitOfDial {
  if (stated?.law === 'unknown') return ofUnknownLaw(readings, stated, set);
  const { capacitor, warnings } = capacitorRead(stated, set);
  const fit = fitDial(readings, capacitor);
  const isOfSet = set !== undefined && capacitorOf(set) !== undefined;
  return { ...fit, capacitor, isOfSet, warnings: [...fit.warnings, ...warnings] };
}
