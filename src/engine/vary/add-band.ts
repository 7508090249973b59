import { standingBand, turnSwitch } from '../set/band-switch.ts';
import type { WrittenDescription } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { untakenName } from '../set/untaken-name.ts';
import { withValueAt } from '../set/write.ts';
import { bandFigures } from './band-figures.ts';
import { BANDS, type BandName, nearestBand } from './bands.ts';
import { type Rewound, rewindFor } from './move-band.ts';

/** A set with one band more, as facts. */
export interface AddedBand {
  /** The description with the band, its switch where it stood. */
  readonly written: WrittenDescription;
  /** The band's place in the list. */
  readonly index: number;
  readonly rewound: Rewound;
}

/** Coils that a band needs of its own: all but those of traps, which stay in the lead. */
const OWN_COILS = ['coil', 'aerialCoil'] as const;
/** Characters of a coil's name. */
const LONGEST_NAME = 60;

/**
 * A set with a band switch and one band more. Its coils are those of the band the set stands on, on the same formers and
 * with the same wire, wound for the new band; taps in proportion, the aerial loosened as far as the band needs it.
 * @param written a description that reads without problems
 * @param to the new band; its name is the band's
 * @returns the description and what of the band it covers (Hz); undefined where no switch can do it: a set of another
 * arrangement than those a switch changes, one with as many bands as a switch has, or with a band of this name
 * @throws RangeError for a set that cannot be built
 */
export function addBand(written: WrittenDescription, to: BandName): AddedBand | undefined {
  const read = readValue(written);
  if (!read.ok) return undefined;
  const { arrangement } = written;
  if (!('coil' in arrangement) || typeof arrangement.coil !== 'string') return undefined;
  const { lowest, highest } = bandFigures(read.set);
  const bands = written.bands ?? [{ name: nearestBand(Math.sqrt(lowest * highest)) }];
  const before = standingBand({ bands }) ?? 0;
  const inBand = withOwnCoils(written, arrangement, to);
  const index = bands.length;
  const extended = {
    ...inBand,
    bands: [...bands.map((band, i) => (i === before ? { ...band, arrangement } : band)), { name: to }],
  };
  const tried = readValue(extended);
  if (!tried.ok) return undefined;
  const rewound = rewindFor(tried.set, BANDS[to]);
  const wound = rewound.changes.reduce((now, { path, to: value }) => withValueAt(now, path, value), extended);
  if (!readValue(wound).ok) return undefined;
  return { written: turnSwitch(wound, before), index, rewound };
}

/** The description with a copy of every coil that its arrangement names, and the arrangement with those. */
function withOwnCoils(
  written: WrittenDescription,
  arrangement: WrittenDescription['arrangement'],
  band: string,
): WrittenDescription {
  let coils = written.coils;
  let own = arrangement;
  for (const key of OWN_COILS) {
    const name = (arrangement as Partial<Record<string, unknown>>)[key];
    const coil = coils.find((one) => one.name === name);
    if (!coil) continue;
    // What was measured of the coil is not so of another.
    const { measured: _, ...copy } = coil as typeof coil & { readonly measured?: unknown };
    const used = coils.map((one) => one.name);
    const named = untakenName(`${name} ${band}`.slice(0, LONGEST_NAME - 3), (one) => used.includes(one));
    coils = [...coils, { ...copy, name: named } as (typeof coils)[number]];
    own = { ...own, [key]: named } as typeof own;
  }
  return { ...written, coils, arrangement: own };
}
