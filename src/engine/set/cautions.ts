import { type Caution, type CautionCode, type CautionSubject, supplyCautions } from '../facts/cautions.ts';
import type { AerialDescription } from '../kinds/aerials/aerial-schema.ts';
import { type ByKind, byKind } from '../kinds/by-kind.ts';
import type { DetectorDescription } from '../kinds/detectors/detector-schema.ts';
import type { EarthDescription } from '../kinds/earths/earth-schema.ts';
import type { LoadDescription } from '../kinds/loads/load-schema.ts';
import { isLoop } from '../kinds/loops.ts';
import type { SetDescription } from './description.ts';

const outdoors = (): readonly CautionCode[] => ['aerial.power-lines', 'aerial.thunder', 'aerial.ladders-and-masts'];
/** A frame or rod stands in the room. */
const indoors = (): readonly CautionCode[] => [];

const AERIALS: ByKind<AerialDescription, readonly CautionCode[]> = {
  'inverted-L': outdoors,
  T: outdoors,
  vertical: outdoors,
  horizontal: outdoors,
  sloping: outdoors,
  bent: outdoors,
  frame: indoors,
  'ferrite rod': indoors,
  // A measured aerial may be of any form.
  measured: outdoors,
  impedance: outdoors,
};

const aboveGround = (): readonly CautionCode[] => ['earth.mains-and-gas'];
const dugIn = (): readonly CautionCode[] => ['earth.mains-and-gas', 'earth.buried-cables'];

const EARTHS: ByKind<EarthDescription, readonly CautionCode[]> = {
  rod: dugIn,
  rods: dugIn,
  plate: dugIn,
  'buried wire': dugIn,
  radials: dugIn,
  counterpoise: aboveGround,
  // It is there already.
  measured: aboveGround,
};

const harmless = (): readonly CautionCode[] => [];

const DETECTORS: ByKind<DetectorDescription, readonly CautionCode[]> = {
  galena: () => ['detector.lead-sulphide', 'detector.low-melting-metal'],
  mineral: () => ['detector.low-melting-metal'],
  germanium: harmless,
  schottky: harmless,
  silicon: harmless,
  exponential: harmless,
  measured: harmless,
  valve: () => ['detector.hot-valve', 'detector.heater-supply', 'detector.accumulator'],
};

const headphones = (): readonly CautionCode[] => ['load.clicks-on-ears'];

const LOADS: ByKind<LoadDescription, readonly CautionCode[]> = {
  phones: headphones,
  'moving-coil phones': headphones,
  'crystal earpiece': headphones,
  amplifier: ({ supply }) => ['load.volume', ...supplyCautions(supply)],
};

const about = (subject: CautionSubject, codes: readonly CautionCode[]): Caution[] =>
  codes.map((code) => ({ about: subject, code }));

/** What can hurt in or around this set, in the order in which a builder meets it. */
export const cautionsFor = (set: SetDescription): Caution[] => [
  ...about('aerial', byKind(AERIALS, set.aerial)),
  // A loop needs no earth.
  ...about('earth', isLoop(set.aerial) ? [] : byKind(EARTHS, set.earth)),
  ...about('detector', byKind(DETECTORS, set.detector)),
  ...about('load', byKind(LOADS, set.load)),
  ...about('old parts', ['old-parts']),
];

/**
 * From this level at the ear on, dB SPL, hearing is at risk: the limit for eight hours a day of NIOSH 98-126 (1998), 85 dB,
 * its A-weighting left out, which for programme in this band takes off less than the levels are in doubt.
 */
const LOUD = 85;

/**
 * What the loudest station adds for somebody with phones on the ears; an amplifier's volume has its own caution.
 * @param level dB SPL at the ear, without a value where nothing is heard
 */
export const hearingCautions = ({ load }: SetDescription, level: number | undefined): Caution[] =>
  load.kind !== 'amplifier' && level !== undefined && level >= LOUD ? about('load', ['load.loud']) : [];

/** Whether a part of the set may draw its power from the mains. */
const mayUseMains = ({ detector, load }: SetDescription): boolean =>
  detector.kind === 'valve' || load.kind === 'amplifier';

/** What can hurt while this set is built and tried. */
export const benchCautions = (set: SetDescription): Caution[] =>
  about('bench', [
    'bench.wire-ends',
    'bench.solder',
    ...(mayUseMains(set)
      ? (['bench.mains-isolated', 'bench.licensed-person'] as const)
      : (['bench.no-mains'] as const)),
  ]);
