import { isRecord } from '../fields/introspect.ts';
import { COIL_KEYS } from '../kinds/arrangements/coil-names.ts';
import { isSingleCircuit } from '../kinds/arrangements/used-turns.ts';
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

/** Whether a new band has coils of its own, or uses more or fewer turns of the coil that there is. */
export type BandCoil = 'own' | 'shared';

/** Coils of which a stretch keeps its inductance when turns are added at the end. */
const WOUND_ON: readonly string[] = ['solenoid', 'spiral', 'spider', 'basket'];

/**
 * Whether a new band can use the coil that there is.
 * @param written as written, whatever is in it
 * @returns false where another coil is needed: for coils in layers, on cores or measured ones, and coupled coils
 */
export function canShareCoil(written: unknown): boolean {
  if (!isRecord(written) || !isRecord(written.arrangement) || !Array.isArray(written.coils)) return false;
  const { kind, coil, usedTurns } = written.arrangement;
  if (!isSingleCircuit(kind) || usedTurns !== undefined) return false;
  // Another band goes on using as many turns as before only as a single circuit on them.
  if (othersOn(written, coil).some((other) => !isSingleCircuit(other.kind) || other.coil !== coil)) return false;
  const tuning: unknown = written.coils.find((one) => isRecord(one) && one.name === coil);
  return isRecord(tuning) && WOUND_ON.some((shape) => shape === tuning.shape) && tuning.measured === undefined;
}

/** Arrangements of bands that the switch does not stand on, as far as they have a coil in circuit. */
const othersOn = (written: Record<string, unknown>, coil: unknown): Record<string, unknown>[] =>
  (Array.isArray(written.bands) ? written.bands : []).flatMap((band: unknown) =>
    isRecord(band) && isRecord(band.arrangement) && isOn(band.arrangement, coil) ? [band.arrangement] : [],
  );

const isOn = (arrangement: Record<string, unknown>, coil: unknown): boolean =>
  COIL_KEYS.some((key) => arrangement[key] === coil);

/**
 * A set with a band switch and one band more. Its coils are those of the band the set stands on, on the same formers and
 * with the same wire, wound for the new band; taps in proportion, the aerial loosened as far as the band needs it. With a
 * shared coil the lower of the two bands has all its turns, the higher one those next to the earthed end, and the switch
 * shorts the rest; every other band on that coil keeps the turns it had.
 * @param written a description that reads without problems
 * @param to the new band; its name is the band's
 * @param coil default 'own'; 'shared' where `canShareCoil`
 * @returns the description and what of the band it covers (Hz); undefined where no switch can do it: a set of another
 * arrangement than those a switch changes, one with as many bands as a switch has, or with a band of this name
 * @throws RangeError for a set that cannot be built
 */
export function addBand(written: WrittenDescription, to: BandName, coil: BandCoil = 'own'): AddedBand | undefined {
  const read = readValue(written);
  if (!read.ok) return undefined;
  const { arrangement } = written;
  if (!('coil' in arrangement) || typeof arrangement.coil !== 'string') return undefined;
  if (coil === 'shared' && !canShareCoil(written)) return undefined;
  const { lowest, highest } = bandFigures(read.set);
  const now = Math.sqrt(lowest * highest);
  const bands = written.bands ?? [{ name: nearestBand(now) }];
  const before = standingBand({ bands }) ?? 0;
  const inBand =
    coil === 'own' ? withOwnCoils(written, arrangement, to) : withSharedCoil(written, BANDS[to].from < now);
  const index = bands.length;
  const extended = {
    ...inBand.written,
    bands: [
      ...bands.map((band, i) => (i === before ? { ...band, arrangement: inBand.before } : inBand.other(band))),
      { name: to },
    ],
  };
  const tried = readValue(extended);
  if (!tried.ok) return undefined;
  const rewound = rewindFor(tried.set, BANDS[to]);
  const wound = rewound.changes.reduce((all, { path, to: value }) => withValueAt(all, path, value), extended);
  if (!readValue(wound).ok) return undefined;
  return { written: turnSwitch(wound, before), index, rewound };
}

type WrittenArrangement = WrittenDescription['arrangement'];
type WrittenBand = NonNullable<WrittenDescription['bands']>[number];

/** A description on the new band, and the arrangement of the band that it stood on. */
interface Extended {
  readonly written: WrittenDescription;
  readonly before: WrittenArrangement;
  /** A band that the switch did not stand on. */
  readonly other: (band: WrittenBand) => WrittenBand;
}

/** Both bands on one coil. @param isLower the new band is the lower one, which has all turns */
function withSharedCoil(written: WrittenDescription, isLower: boolean): Extended {
  const { arrangement, coils } = written;
  const { turns } = coils.find(({ name }) => 'coil' in arrangement && name === arrangement.coil) as {
    readonly turns?: unknown;
  };
  const inPart = (one: WrittenArrangement): WrittenArrangement =>
    ({ ...one, usedTurns: turns, unusedTurns: 'shorted' }) as WrittenArrangement;
  const other = (band: WrittenBand): WrittenBand => {
    const own = band.arrangement as (WrittenArrangement & { usedTurns?: unknown; coil?: unknown }) | undefined;
    const isWhole = own !== undefined && own.usedTurns === undefined;
    return isWhole && 'coil' in arrangement && own.coil === arrangement.coil
      ? { ...band, arrangement: inPart(own) }
      : band;
  };
  return isLower
    ? { written, before: inPart(arrangement), other }
    : { written: { ...written, arrangement: inPart(arrangement) }, before: arrangement, other: (band) => band };
}

/** The description with a copy of every coil that its arrangement names, and the arrangement with those. */
function withOwnCoils(written: WrittenDescription, arrangement: WrittenArrangement, band: string): Extended {
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
  return { written: { ...written, coils, arrangement: own }, before: arrangement, other: (band) => band };
}
