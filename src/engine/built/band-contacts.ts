import { type AerialLead, aerialLead } from '../kinds/arrangements/aerial-lead.ts';
import type { ArrangementDescription, TrapDescription } from '../kinds/arrangements/arrangement-schema.ts';
import { coilNamesOf } from '../kinds/arrangements/coil-names.ts';
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
  /** What lies between the way and its point, in the order of the bands; undefined for a band where nothing does. */
  readonly through?: readonly (SwitchedThrough | undefined)[];
}

/** Wave traps and capacitor in the aerial lead of one band, as the lead meets them. */
export interface SwitchedThrough {
  readonly traps: readonly SwitchedTrap[];
  readonly seriesCapacitor?: Farads;
}

/** A trap of one band: a parallel one lies in the lead, a series one leads from it to earth. */
interface SwitchedTrap {
  /** Its place among the traps of its band. */
  readonly index: number;
  readonly kind: Exclude<TrapDescription['kind'], 'absorption'>;
}

/** A band switch as wired. */
export interface BandContacts {
  readonly bands: readonly string[];
  /** The band it stands on. */
  readonly standing: number;
  readonly poles: readonly SwitchPole[];
  /** So many traps, from the first, are those of all bands and lie before the switch. */
  readonly sharedTraps: number;
  /** Bands have other wave traps that this switch cannot change: how is left to the builder. */
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

const areAlike = (values: readonly unknown[]): boolean =>
  values.every((value) => JSON.stringify(value) === JSON.stringify(values[0]));

/** How many traps, from the first, every band has alike. */
function sharedOf(traps: readonly (readonly TrapDescription[])[]): number {
  const most = Math.min(...traps.map(({ length }) => length));
  let shared = 0;
  while (shared < most && areAlike(traps.map((of) => of[shared]))) shared++;
  return shared;
}

/** Whether each band can have traps of its own: none acts on a coil of another band, no coil is in two of them. */
function areSwitchable(sets: readonly SetDescription[], own: readonly (readonly TrapDescription[])[]): boolean {
  const coils = sets.map(({ arrangement }) => new Set(coilNamesOf(arrangement)));
  const coilOf = ({ arrangement }: SetDescription): string | undefined =>
    isSwitched(arrangement) ? arrangement.coil : undefined;
  return own.every((traps, band) =>
    traps.every(({ kind, coil }, i) => {
      const isElsewhere = (other: number): boolean => coil !== undefined && coils[other].has(coil);
      const isTwice = traps.some((trap, k) => k !== i && trap.coil === coil && coil !== undefined);
      return (
        sets.every(
          (set, other) =>
            other === band || (!isElsewhere(other) && (kind !== 'absorption' || coilOf(set) !== coilOf(sets[band]))),
        ) && !isTwice
      );
    }),
  );
}

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
  const aerialLeads = sets.map(({ arrangement }) => aerialLead(arrangement));
  const shared = sharedOf(aerialLeads.map(({ traps }) => traps));
  const own = aerialLeads.map(({ traps }) => traps.slice(shared));
  const hasOtherTraps = !areSwitchable(sets, own);
  const through = throughOf(aerialLeads, hasOtherTraps ? Number.POSITIVE_INFINITY : shared);
  const poles = new Map<string, { leads: SwitchedLead[] } & Omit<SwitchPole, 'leads'>>();
  for (const lead of ORDER) {
    const ways = leads.map((of) => of[lead]);
    const between = lead === 'aerial lead' ? through : undefined;
    if (areAlike(ways) && !between) continue;
    if (lead === 'earth' && isOneEach(ways)) continue;
    const key = JSON.stringify([ways, between]);
    const known = poles.get(key);
    if (known) known.leads.push(lead);
    else poles.set(key, { leads: [lead], ways, ...(between && { through: between }) });
  }
  return {
    bands: bands.map(({ name }) => name),
    standing,
    poles: [...poles.values()],
    sharedTraps: shared,
    hasOtherTraps,
  };
}

/** Whether each coil has one earthed point on all bands: that stays joined to earth and needs no contact. */
const isOneEach = (ways: readonly (CoilPoint | undefined)[]): boolean =>
  ways.every((one) => ways.every((other) => one?.coil !== other?.coil || one?.turn === other?.turn));

/** What each way of the aerial's pole leads through; undefined where the aerial lead is the same on all bands. */
function throughOf(leads: readonly AerialLead[], shared: number): readonly (SwitchedThrough | undefined)[] | undefined {
  const traps = leads.map((lead) =>
    lead.traps.flatMap(({ kind }, index): SwitchedTrap[] =>
      index < shared || kind === 'absorption' ? [] : [{ index, kind }],
    ),
  );
  if (areAlike(leads.map(({ seriesCapacitor }) => seriesCapacitor)) && traps.every(({ length }) => length === 0))
    return undefined;
  return leads.map(({ seriesCapacitor }, band) =>
    seriesCapacitor === undefined && traps[band].length === 0
      ? undefined
      : { traps: traps[band], ...(seriesCapacitor !== undefined && { seriesCapacitor }) },
  );
}
