import { aerialLead } from '../kinds/arrangements/aerial-lead.ts';
import type { ArrangementDescription } from '../kinds/arrangements/arrangement-schema.ts';
import { usedTurns } from '../kinds/arrangements/used-turns.ts';
import { isSwitched } from '../set/band-checks.ts';
import { standingBand, turnSwitch } from '../set/band-switch.ts';
import type { SetDescription } from '../set/description.ts';
import type { Farads } from '../units/quantities.ts';
import { setCircuit } from './set-circuit.ts';

/** What a pole of a band switch leads from. */
export type SwitchedLead =
  | 'aerial lead'
  | 'tuning capacitor'
  | 'aerial tuner'
  | 'detector'
  | 'coil end'
  | 'other end'
  | 'earth';

/** A point of a coil: so many turns from its first end. */
export interface CoilPoint {
  readonly coil: string;
  readonly turn: number;
}

/** One pole of a band switch. */
export interface SwitchPole {
  /** What is joined to its moving contact. */
  readonly leads: readonly SwitchedLead[];
  /** What each way leads to, in the order of the bands; undefined where a way is free. */
  readonly ways: readonly (CoilPoint | undefined)[];
  /** A capacitor between the way and its point, F, in the order of the bands. */
  readonly through?: readonly (Farads | undefined)[];
}

/** A band switch as wired. */
export interface BandContacts {
  readonly bands: readonly string[];
  /** The band it stands on. */
  readonly standing: number;
  readonly poles: readonly SwitchPole[];
  /** Bands have other wave traps: how those are switched is left to the builder. */
  readonly hasOtherTraps: boolean;
}

/** The point of a coil that each lead goes to. */
type Leads = Partial<Record<SwitchedLead, CoilPoint>>;

/**
 * Where each lead goes on the band that the set stands on.
 * @param set as read
 * @returns turns from the first end of a coil; none for an arrangement that cannot have a band switch
 */
export function leadPoints(set: SetDescription): Leads {
  const arrangement: ArrangementDescription = set.arrangement;
  if (!isSwitched(arrangement)) return {};
  const circuit = setCircuit(set);
  const turnsOf = (name: string): number => circuit.coils[set.coils.findIndex((coil) => coil.name === name)].turns;
  const { coil } = arrangement;
  const turns = turnsOf(coil);
  const { used, rest } = usedTurns(arrangement, turns);
  // Where the rest is shorted the end of the coil is joined to the top of the turns in use: what is on it may stay there.
  const top = rest === 'shorted' ? turns : used;
  const at = (turn: number): CoilPoint => ({ coil, turn });
  const isFull = set.detector.wiring === 'full-wave';
  const common: Leads = {
    'tuning capacitor': at(top),
    detector: at(isFull ? top : (arrangement.detectorTap ?? top)),
    ...(rest === 'shorted' ? { 'coil end': at(used) } : {}),
    ...(isFull ? { 'other end': at(0), earth: at(used / 2) } : {}),
  };
  switch (arrangement.kind) {
    case 'tapped':
      return { 'aerial lead': at(arrangement.aerialTap), ...common };
    case 'coupled':
    case 'two circuits': {
      const aerial = arrangement.aerialCoil;
      const aerialTurns = turnsOf(aerial);
      if (arrangement.kind === 'coupled') return { 'aerial lead': { coil: aerial, turn: aerialTurns }, ...common };
      return {
        'aerial lead': { coil: aerial, turn: arrangement.aerialTap ?? aerialTurns },
        'aerial tuner': { coil: aerial, turn: aerialTurns },
        ...common,
      };
    }
    default:
      return { 'aerial lead': at(top), ...common };
  }
}

const ORDER = [
  'aerial lead',
  'aerial tuner',
  'tuning capacitor',
  'detector',
  'coil end',
  'other end',
  'earth',
] as const;

/**
 * The contacts of a band switch: a pole for every lead that goes to another point on another band; leads that always go
 * together share one. The earthed ends of all coils stay joined to earth.
 * @param set as read
 * @returns bands, and poles with the point of each way; undefined for a set without a band switch
 * @throws RangeError for parts that cannot be built
 */
export function bandContacts(set: SetDescription): BandContacts | undefined {
  const { bands } = set;
  const standing = standingBand(set);
  if (!bands || standing === undefined) return undefined;
  const sets = bands.map((_, i) => turnSwitch(set, i));
  const leads = sets.map(leadPoints);
  const capacitors = sets.map(({ arrangement }) => aerialLead(arrangement).seriesCapacitor);
  const isOther = (values: readonly unknown[]): boolean =>
    values.some((value) => JSON.stringify(value) !== JSON.stringify(values[0]));
  const hasOtherCapacitor = isOther(capacitors);
  const poles = new Map<string, { leads: SwitchedLead[] } & Omit<SwitchPole, 'leads'>>();
  for (const lead of ORDER) {
    const ways = leads.map((of) => of[lead]);
    const through = lead === 'aerial lead' && hasOtherCapacitor ? capacitors : undefined;
    if (!isOther(ways) && !through) continue;
    const key = JSON.stringify([ways, through]);
    const known = poles.get(key);
    if (known) known.leads.push(lead);
    else poles.set(key, { leads: [lead], ways, ...(through && { through }) });
  }
  const traps = sets.map(({ arrangement }) => aerialLead(arrangement).traps);
  return {
    bands: bands.map(({ name }) => name),
    standing,
    poles: [...poles.values()],
    hasOtherTraps: isOther(traps),
  };
}
