import * as v from 'valibot';
import { arrangement } from '../kinds/arrangements/arrangement-schema.ts';
import { earth } from '../kinds/earths/earth-schema.ts';
import { withSoilOfPlace } from '../kinds/earths/soil-of-place.ts';
import { load } from '../kinds/loads/load-schema.ts';
import { tuning } from '../kinds/tunings/tuning-schema.ts';
import type { SetDescription, WrittenDescription } from '../set/description.ts';
import type { Metres } from '../units/quantities.ts';
import type { BoxDescription, WrittenBox } from './box-schema.ts';
import type { BackEnd, FrontEnd, SetChoice, TunerChoice, TurnsChosen } from './choices.ts';
import { windingSize } from './winding-size.ts';
import { COIL_NAMES, coilOn, loopOn, writtenCoil, writtenLoop } from './wound.ts';

/** Where sets that are found are to stand, and what is wanted of them. */
export interface FindPlace {
  readonly place: SetDescription['place'];
  readonly ear: SetDescription['ear'];
  readonly wants: NonNullable<SetDescription['wants']>;
}

const FORMAT = 'faintwave-set/1';
/** What a frame or rod stands on: its figures enter nothing. */
const NO_EARTH = { kind: 'measured', resistance: '20 Ω' } as const;
/** Where a coil tunes; its figures enter nothing. */
const NO_TUNING = { kind: 'fixed', capacitance: '100 pF' } as const;

/** What the slider of a description leaves at the end of the coil, where nothing is said of it. */
const FEWEST_OF_SLIDER = 10;

type Written = WrittenBox | BoxDescription;

function writtenTuning(
  box: BoxDescription,
  written: Written,
  tuner: TunerChoice | undefined,
): WrittenDescription['tuning'] {
  if (!tuner) return NO_TUNING;
  if ('capacitor' in tuner) {
    const { capacitor } = written.capacitors![tuner.capacitor];
    const { gangs } = tuner;
    if (gangs === 1 || capacitor.kind !== 'variable') return capacitor;
    const read = box.capacitors[tuner.capacitor].capacitor;
    if (read.kind !== 'variable') return capacitor;
    const times = (farads: number): number => Number((gangs * farads).toPrecision(6));
    const { maximum, minimum } = read;
    return { ...capacitor, maximum: times(maximum), ...(minimum === undefined ? {} : { minimum: times(minimum) }) };
  }
  const [foil, sheet] = [box.foils[tuner.foil], box.dielectrics[tuner.dielectric]];
  const [writtenFoil, writtenSheet] = [written.foils![tuner.foil], written.dielectrics![tuner.dielectric]];
  return {
    kind: 'foil',
    length: foil.length <= sheet.length ? writtenFoil.length : writtenSheet.length,
    width: foil.width <= sheet.width ? writtenFoil.width : writtenSheet.width,
    thickness: writtenSheet.thickness,
    dielectric: writtenSheet.dielectric,
    sheets: tuner.sheets,
  };
}

/**
 * Between the middles of two windings on one axis, whole millimetres.
 * @param windings their lengths, m
 * @param apart between their ends at least, m
 */
export const coilSpacing = ([a, b]: readonly [Metres, Metres], apart: Metres): Metres =>
  Math.ceil(1e3 * (apart + (a + b) / 2)) / 1e3;

function distanceOf(box: BoxDescription, { winding, second, apart = 0 }: FrontEnd, turns: TurnsChosen): number {
  const [a, b] = [windingSize(box, winding, turns.turns), windingSize(box, second!, turns.secondTurns!)];
  return coilSpacing([a.windingLength, b.windingLength], apart);
}

function writtenArrangement(
  box: BoxDescription,
  written: Written,
  { front, turns }: SetChoice,
): WrittenDescription['arrangement'] {
  const { main, second } = COIL_NAMES;
  const tap =
    turns.detectorTap === undefined || turns.detectorTap === turns.turns ? {} : { detectorTap: turns.detectorTap };
  switch (front.arrangement) {
    case 'direct':
      return { kind: 'direct', coil: main, ...tap };
    case 'series capacitor': {
      const { capacitor } = written.capacitors![front.series!];
      if (capacitor.kind !== 'fixed') throw new RangeError('a capacitor in the lead is a fixed one');
      return { kind: 'series capacitor', coil: main, seriesCapacitor: capacitor.capacitance, ...tap };
    }
    case 'tapped':
      return { kind: 'tapped', coil: main, aerialTap: turns.aerialTap!, ...tap };
    case 'coupled': {
      const distance = `${Math.round(1e3 * distanceOf(box, front, turns))} mm`;
      return { kind: 'coupled', aerialCoil: second, coil: main, distance, ...tap };
    }
    case 'slider':
      return { kind: 'slider', coil: main, ...(turns.turns < FEWEST_OF_SLIDER && { fewest: turns.turns }) };
    case 'variometer':
      return { kind: 'variometer', coil: main, rotor: second };
    case 'frame':
    case 'ferrite rod':
      return { kind: front.arrangement, ...tap };
  }
}

function writtenLoad(written: Written, { load, transformer }: BackEnd): WrittenDescription['load'] {
  const described = written.loads![load].load;
  return transformer === undefined
    ? described
    : ({ ...described, transformer: written.transformers![transformer].transformer } as WrittenDescription['load']);
}

const isLoopFront = ({ arrangement: kind }: FrontEnd): boolean => kind === 'frame' || kind === 'ferrite rod';

/**
 * The description of a set that is found, its parts as they are written in the box.
 * @param from the box as read and as written
 * @param choice of its parts
 * @param at where it is to stand, as written: place, ear, wants
 * @param name what it is called
 */
export function writtenSet(
  { box, written }: { readonly box: BoxDescription; readonly written: WrittenBox },
  choice: SetChoice,
  at: {
    readonly place: WrittenDescription['place'];
    readonly ear?: WrittenDescription['ear'];
    readonly wants?: WrittenDescription['wants'];
  },
  name: string,
): WrittenDescription {
  const { front, back, turns } = choice;
  const loop = isLoopFront(front);
  const coils = loop ? [] : [writtenCoil(box, written, front.winding, turns.turns)];
  if (front.second) coils.push(writtenCoil(box, written, front.second, turns.secondTurns!, COIL_NAMES.second));
  return {
    format: FORMAT,
    name,
    place: at.place,
    aerial: loop ? writtenLoop(box, written, front.winding, turns.turns) : written.aerials![front.aerial!].aerial,
    earth: front.earth === undefined ? NO_EARTH : written.earths![front.earth].earth,
    coils,
    tuning: writtenTuning(box, written, front.tuner),
    arrangement: writtenArrangement(box, written, choice),
    detector: written.detectors![back.detector].detector,
    load: writtenLoad(written, back),
    ...(at.ear === undefined ? {} : { ear: at.ear }),
    ...(at.wants === undefined ? {} : { wants: at.wants }),
  };
}

/** Sets of a box as read: what two of them have in common is the same object, so that its model is made once. */
export function chosenSets(
  box: BoxDescription,
  { place, ear, wants }: FindPlace,
): (choice: SetChoice) => SetDescription {
  const known = new Map<string, unknown>();
  const once = <T>(key: string, make: () => T): T => {
    let made = known.get(key) as T | undefined;
    if (made === undefined) {
      made = make();
      known.set(key, made);
      if (known.size > MOST_KEPT) known.delete(known.keys().next().value!);
    }
    return made;
  };
  return (choice) => {
    const { front, back, turns } = choice;
    const { winding, second } = front;
    const loop = isLoopFront(front);
    const coilAt = (at: { former: number; reel: number }, n: number, name: string) =>
      once(`coil ${at.former} ${at.reel} ${n} ${name}`, () => coilOn(box, at, n, name));
    const coils = loop ? [] : [coilAt(winding, turns.turns, COIL_NAMES.main)];
    if (second) coils.push(coilAt(second, turns.secondTurns!, COIL_NAMES.second));
    return {
      format: FORMAT,
      name: '',
      place,
      ear,
      wants,
      aerial: loop
        ? once(`loop ${winding.former} ${winding.reel} ${turns.turns}`, () => loopOn(box, winding, turns.turns))
        : box.aerials[front.aerial!].aerial,
      earth: once(`earth ${front.earth}`, () =>
        withSoilOfPlace(
          front.earth === undefined ? v.parse(earth, NO_EARTH) : box.earths[front.earth].earth,
          place.ground,
        ),
      ),
      coils,
      tuning: once(`tuner ${JSON.stringify(front.tuner)}`, () => v.parse(tuning, writtenTuning(box, box, front.tuner))),
      arrangement: v.parse(arrangement, writtenArrangement(box, box, choice)),
      detector: box.detectors[back.detector].detector,
      load: once(`load ${back.load} ${back.transformer}`, () => v.parse(load, writtenLoad(box, back))),
    };
  };
}
/** Parts made that are kept; the oldest are made anew. */
const MOST_KEPT = 5000;
