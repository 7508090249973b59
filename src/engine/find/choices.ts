import { loopOf } from '../built/loop-parts.ts';
import { wireOf } from '../kinds/coils/wire-of.ts';
import type { LoadDescription } from '../kinds/loads/load-schema.ts';
import { closePitch } from '../parts/wire/wire.ts';
import type { Metres } from '../units/quantities.ts';
import type { BoxDescription, FoundArrangement } from './box-schema.ts';
import { windingSize } from './winding-size.ts';
import { isWindable, loopOn } from './wound.ts';

/** A coil to be wound: places of its former and its reel in the box, and the most turns that fit and are left. */
export interface WindingChoice {
  readonly former: number;
  readonly reel: number;
  readonly most: number;
}

/** What tunes: a capacitor of the box with so many gangs joined, or one made of its foil. */
export type TunerChoice =
  | { readonly capacitor: number; readonly gangs: number }
  | { readonly foil: number; readonly dielectric: number; readonly sheets: number };

/** A set up to its detector; turns and taps are left open. Numbers are places in the box's lists. */
export interface FrontEnd {
  readonly arrangement: FoundArrangement;
  /** The tuned coil, or the frame or rod. */
  readonly winding: WindingChoice;
  /** Aerial coil or rotor. */
  readonly second?: WindingChoice;
  /** Between two coils end to end, m. */
  readonly apart?: Metres;
  readonly tuner?: TunerChoice;
  /** A fixed capacitor in the aerial's lead. */
  readonly series?: number;
  readonly aerial?: number;
  readonly earth?: number;
}

/** Detector and what one listens with. */
export interface BackEnd {
  readonly detector: number;
  readonly load: number;
  readonly transformer?: number;
}

/** Whole turns of a front end. */
export interface TurnsChosen {
  readonly turns: number;
  readonly secondTurns?: number;
  readonly aerialTap?: number;
  readonly detectorTap?: number;
}

/** One set. */
export interface SetChoice {
  readonly front: FrontEnd;
  readonly back: BackEnd;
  readonly turns: TurnsChosen;
}

/** What a box lacks for any set at all, or for one within its limits. */
export type Lack =
  | 'former'
  | 'wire'
  | 'capacitor'
  | 'detector'
  | 'load'
  | 'aerial'
  | 'earth'
  | 'room'
  | 'limits'
  | 'station';

/** For leads and for soldering, off each coil's wire, m. */
const LEADS: Metres = 0.5;
/** A coil of fewer tunes nothing. */
const FEWEST_TURNS = 5;
const MOST_TURNS = 600;
/** Between coils end to end on tubes. Common practice, no source. */
export const APART: readonly Metres[] = [0.005, 0.02, 0.05];

type Formers = BoxDescription['formers'];

/** The longest side of a former. */
const sizeOf = ({ former }: Formers[number]): Metres =>
  former.kind === 'tube'
    ? Math.max(former.diameter, former.length)
    : former.kind === 'plate'
      ? former.outerDiameter
      : former.kind === 'rod'
        ? former.length
        : former.side;

/** The most turns for which something holds that holds for all fewer; 0 where it holds for none. */
function mostTurns(holds: (turns: number) => boolean): number {
  if (!holds(FEWEST_TURNS)) return 0;
  let [low, high] = [FEWEST_TURNS, MOST_TURNS + 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

function fits(box: BoxDescription, former: number, reel: number, turns: number): boolean {
  const on = box.formers[former].former;
  const { wire, length } = box.wires[reel];
  const left = length - LEADS;
  const pitch = closePitch(wireOf(wire));
  if (!isWindable(box, { former, reel }, turns)) return false;
  try {
    if (on.kind === 'frame' || on.kind === 'rod') {
      // Whether its model holds is a matter of size, not of turns: once is enough.
      if (turns === FEWEST_TURNS) loopOf(loopOn(box, { former, reel }, turns), 1);
      const round =
        on.kind === 'rod' ? Math.PI * (on.diameter + 1e-3) : (on.outline === 'round' ? Math.PI : 4) * on.side;
      return pitch * turns <= (on.kind === 'rod' ? 0.9 * on.length : on.depth) && round * turns <= left;
    }
    const model = windingSize(box, { former, reel }, turns);
    const isInside = on.kind === 'tube' ? model.windingLength <= on.length : model.outerDiameter <= on.outerDiameter;
    return isInside && model.wireLength <= left;
  } catch (refusal) {
    if (refusal instanceof RangeError) return false;
    throw refusal;
  }
}

/** Every former with every reel, those that look alike once. */
function windingsOf(box: BoxDescription): WindingChoice[] {
  const most = box.limits?.size ?? Number.POSITIVE_INFINITY;
  return box.formers.flatMap((item, former) =>
    sizeOf(item) > most
      ? []
      : box.wires.flatMap((_, reel) => {
          const turns = mostTurns((n) => fits(box, former, reel, n));
          return turns > 0 ? [{ former, reel, most: turns }] : [];
        }),
  );
}

function tunersOf(box: BoxDescription): TunerChoice[] {
  const bought = box.capacitors.flatMap(({ capacitor, gangs }, i): TunerChoice[] =>
    capacitor.kind === 'fixed'
      ? []
      : Array.from({ length: capacitor.kind === 'variable' ? gangs : 1 }, (_, k) => ({ capacitor: i, gangs: k + 1 })),
  );
  const made = box.foils.flatMap((foil, i) =>
    box.dielectrics.flatMap((sheet, j): TunerChoice[] => {
      const most = Math.min(foil.count, sheet.count + 1, 11);
      return most >= 2 ? [...new Set([2, most])].map((sheets) => ({ foil: i, dielectric: j, sheets })) : [];
    }),
  );
  return [...bought, ...made];
}

/** Whether a transformer goes before it. */
const takesTransformer = (load: LoadDescription): boolean =>
  (load.kind === 'phones' || load.kind === 'moving-coil phones') && load.transformer === undefined;

/** Detectors, loads and transformers in every combination. */
export const backEndsOf = (box: BoxDescription): BackEnd[] =>
  box.detectors.flatMap((_, detector) =>
    box.loads.flatMap(({ load: described }, load): BackEnd[] => [
      { detector, load },
      ...(takesTransformer(described)
        ? box.transformers.map((__, transformer) => ({ detector, load, transformer }))
        : []),
    ]),
  );

/** Aerials over the earths they need. */
const outdoorsOf = (box: BoxDescription): { aerial: number; earth: number }[] =>
  box.aerials.flatMap(({ aerial: { kind } }, aerial) =>
    kind === 'frame' || kind === 'ferrite rod' ? [] : box.earths.map((_, earth) => ({ aerial, earth })),
  );

/** Pairs of coils on tubes: on two, or on one with room for both. */
function pairsOf(
  box: BoxDescription,
  windings: readonly WindingChoice[],
): { main: WindingChoice; second: WindingChoice }[] {
  const onTube = windings.filter(({ former }) => box.formers[former].former.kind === 'tube');
  return onTube.flatMap((main) => onTube.map((second) => ({ main, second })));
}

/**
 * Every front end that can be made from a box within its limits.
 * @param box as read
 * @returns in a fixed order
 */
export function frontEndsOf(box: BoxDescription): FrontEnd[] {
  const { arrangements, coils = 4, controls = 4 } = box.limits ?? {};
  const isWanted = (kind: FoundArrangement): boolean => arrangements?.includes(kind) ?? true;
  if (controls < 1 || coils < 1) return [];
  const windings = windingsOf(box);
  const tuners = tunersOf(box);
  const outdoors = outdoorsOf(box);
  const fixed = box.capacitors.flatMap(({ capacitor }, i) => (capacitor.kind === 'fixed' ? [i] : []));
  const kindOf = ({ former }: WindingChoice) => box.formers[former].former.kind;
  const found: FrontEnd[] = [];
  const add = (arrangement: FoundArrangement, more: Omit<FrontEnd, 'arrangement'>): void => {
    if (isWanted(arrangement)) found.push({ arrangement, ...more });
  };
  for (const winding of windings) {
    if (kindOf(winding) === 'frame') for (const tuner of tuners) add('frame', { winding, tuner });
    if (kindOf(winding) === 'rod') for (const tuner of tuners) add('ferrite rod', { winding, tuner });
    if (kindOf(winding) !== 'tube' && kindOf(winding) !== 'plate') continue;
    for (const at of outdoors) {
      for (const tuner of tuners) {
        add('direct', { winding, tuner, ...at });
        add('tapped', { winding, tuner, ...at });
        for (const series of fixed) add('series capacitor', { winding, tuner, series, ...at });
      }
      if (kindOf(winding) === 'tube') add('slider', { winding, ...at });
    }
  }
  if (coils < 2) return found;
  for (const { main, second } of pairsOf(box, windings))
    for (const at of outdoors) {
      for (const tuner of tuners)
        for (const apart of APART) add('coupled', { winding: main, second, apart, tuner, ...at });
      if (isInside(box, second, main)) add('variometer', { winding: main, second, ...at });
    }
  return found;
}

/** A rotor turns within its stator: clear of it by the thickness of its tube and wire. */
function isInside({ formers }: BoxDescription, rotor: WindingChoice, stator: WindingChoice): boolean {
  const [inner, outer] = [formers[rotor.former].former, formers[stator.former].former];
  return inner.kind === 'tube' && outer.kind === 'tube' && inner.diameter < 0.85 * outer.diameter;
}

/** Why a box allows no set of an arrangement. */
export type NoArrangement = 'limits' | 'frame' | 'rod' | 'tube' | 'two tubes' | 'fixed capacitor' | 'other parts';

/**
 * What is in the way of an arrangement.
 * @param box as read
 * @param arrangement its kind
 * @returns undefined where a set of it can be made
 */
export function noArrangement(box: BoxDescription, arrangement: FoundArrangement): NoArrangement | undefined {
  if (frontEndsOf(box).some((front) => front.arrangement === arrangement)) return undefined;
  if (!allows(box, [arrangement])) return 'limits';
  const count = (...kinds: string[]): number =>
    box.formers.reduce((sum, { former, count: pieces }) => sum + (kinds.includes(former.kind) ? pieces : 0), 0);
  if (arrangement === 'frame') return count('frame') === 0 ? 'frame' : 'other parts';
  if (arrangement === 'ferrite rod') return count('rod') === 0 ? 'rod' : 'other parts';
  if (arrangement === 'slider' || arrangement === 'coupled') return count('tube') === 0 ? 'tube' : 'other parts';
  if (arrangement === 'variometer') return count('tube') < 2 ? 'two tubes' : 'other parts';
  const hasFixed = box.capacitors.some(({ capacitor }) => capacitor.kind === 'fixed');
  return arrangement === 'series capacitor' && !hasFixed ? 'fixed capacitor' : 'other parts';
}

/** As much of a place and its wants as tells whether a station is missing. */
interface WantedAt {
  readonly place: { readonly stations: readonly unknown[] };
  readonly wants: readonly { readonly kind: string }[];
}

/** Whether all that is wanted is of stations, and none is in the list. Covering a band needs none. */
const lacksStations = ({ place, wants }: WantedAt): boolean =>
  place.stations.length === 0 && !wants.some(({ kind }) => kind === 'band');

/**
 * What is missing of a box from which nothing can be made, and of the place: each thing that has to be added.
 * @param box as read
 * @param at the place, as read, with all that is wanted there; left out, the box alone counts
 * @returns none where something can be made
 */
export function lacksOf(box: BoxDescription, at?: WantedAt): Lack[] {
  const lacks: Lack[] = at && lacksStations(at) ? ['station'] : [];
  const has = (kind: string): boolean => box.formers.some(({ former }) => former.kind === kind);
  if (box.formers.length === 0) lacks.push('former');
  if (box.wires.length === 0) lacks.push('wire');
  if (tunersOf(box).length === 0 && (!has('tube') || !allows(box, ['slider', 'variometer']))) lacks.push('capacitor');
  if (box.detectors.length === 0) lacks.push('detector');
  if (box.loads.length === 0) lacks.push('load');
  if (!has('frame') && !has('rod')) {
    if (box.aerials.length === 0) lacks.push('aerial');
    if (box.earths.length === 0) lacks.push('earth');
  }
  if (lacks.length > 0) return lacks;
  if (frontEndsOf(box).length > 0) return [];
  return frontEndsOf({ ...box, limits: undefined }).length > 0 ? ['limits'] : ['room'];
}

const allows = ({ limits }: BoxDescription, kinds: readonly FoundArrangement[]): boolean =>
  limits?.arrangements === undefined || kinds.some((kind) => limits.arrangements!.includes(kind));
