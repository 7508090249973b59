import type { Warning } from '../facts/warning.ts';
import type { SectionedCoil } from '../kinds/arrangements/coil-sections.ts';
import { coilModel } from '../kinds/models.ts';
import { coilPart } from '../network/part-ids.ts';
import { byName, lazilyOfPair } from '../numerics/lazily.ts';
import { couple } from '../parts/coil/coupling.ts';
import type { CoilModel, TurnSpan } from '../parts/coil/model.ts';
import { ringMutual } from '../parts/coil/ring.ts';
import type { Winding } from '../parts/coil/winding.ts';
import type { SetDescription } from '../set/description.ts';
import type { Henries, Hertz, Metres, Ohms, Ratio } from '../units/quantities.ts';

/** Factors on the figures of a coil, or of a loop as the coil it is. */
export interface CoilFactors {
  /** On its resistance at radio frequency. */
  readonly loss?: Ratio;
  readonly inductance?: Ratio;
  readonly selfCapacitance?: Ratio;
}

/** Turns that link more flux, or lose more, or lie closer: all their sections alike. */
export function scaledCoil<C extends SectionedCoil>(
  coil: C,
  { loss = 1, inductance = 1, selfCapacitance = 1 }: CoilFactors,
): C {
  const { partial, mutual, resistanceAt } = coil;
  return {
    ...coil,
    inductance: inductance * coil.inductance,
    selfCapacitance: selfCapacitance * coil.selfCapacitance,
    partial: (from: number, to: number) => inductance * partial.call(coil, from, to),
    mutual: (first: TurnSpan, second: TurnSpan) => inductance * mutual.call(coil, first, second),
    resistanceAt: (f: Hertz) => (f > 0 ? loss : 1) * resistanceAt.call(coil, f),
  };
}

/** A coil of the set, as made. */
export interface CoilPart extends SectionedCoil {
  readonly model: CoilModel;
  readonly dcResistance: Ohms;
  /** By which its inductance is more than that of its turns as calculated; left out: as calculated. */
  readonly inductanceFactor?: Ratio;
  readonly warnings: readonly Warning[];
}

/**
 * Make every coil a set describes.
 * @param loss multiplies their resistance, for what-ifs. @param around where in the band the set works: at radio
 * frequency the current crowds in the wire and the inductance is up to a few per cent less than at none. @param existing the coil
 * at a place of the list, where it has been made before.
 */
export const coilsOf = (
  set: SetDescription,
  loss: number,
  around: Hertz,
  existing: (description: SetDescription['coils'][number], i: number) => CoilPart | undefined = () => undefined,
): CoilPart[] =>
  set.coils.map((description, i) => {
    const before = existing(description, i);
    if (before) return before;
    const model = coilModel(description);
    // Turns described as running into one another would lose more than all of it.
    const crowded = Math.max(0.5, model.inductanceAt(around) / model.inductance);
    // A core's or measured coil's wire is not known; its direct resistance is some part of that at radio frequency.
    const wired = model.wireLength > 0;
    const dcResistance = Number.isFinite(model.dcResistance) ? model.dcResistance : 0.3 * model.resistanceAt(around);
    return {
      id: coilPart(i),
      model,
      turns: model.turns,
      inductance: crowded * model.inductance,
      selfCapacitance: model.selfCapacitance,
      resistanceAt: (f: Hertz) => (f > 0 ? loss * model.resistanceAt(f) : dcResistance),
      partial: (from, to) => crowded * model.partial(from, to),
      mutual: (first, second) => crowded * model.mutual(first, second),
      wireShare: (from, to) =>
        wired ? (model.wireLengthTo(to) - model.wireLengthTo(from)) / model.wireLength : (to - from) / model.turns,
      dcResistance,
      warnings: model.warnings,
    };
  });

/** How two coils stand to each other. */
export interface CoilPlacing {
  readonly distance: number;
  readonly tilt: number;
  readonly coupling?: number;
  readonly measured?: { readonly coupling?: { readonly value: number } };
}

/** The coupling coefficient of two coils where it is known: measured, or given. */
export const knownCoupling = ({ coupling, measured }: Pick<CoilPlacing, 'coupling' | 'measured'>): number | undefined =>
  measured?.coupling?.value ?? coupling;

/**
 * Mutual inductance between stretches of two coils, middles `distance` apart along the axis of the first, the second
 * turned by `tilt` degrees. The whole comes from their turns in space; a stretch has the share of it that its turns
 * would have were the coils straight. A coupling measured or given wins; without one, coils without turns in space (cores, measured
 * ones) do not reach each other.
 */
export function mutualOf(
  first: CoilPart,
  second: CoilPart,
  placing: CoilPlacing,
): (a: TurnSpan, b: TurnSpan) => Henries {
  const [w1, w2] = [first.model.winding, second.model.winding];
  const known = knownCoupling(placing);
  if (known !== undefined) {
    const k = known / Math.sqrt(first.inductance * second.inductance);
    return (a, b) => k * fluxOf(first, a) * fluxOf(second, b);
  }
  if (!w1 || !w2) return () => 0;
  const { mutualInductance, sumOf } = inSpace(first.model, second.model, placing);
  // The coupling stays, or coils that link each other closely could link more than all of it.
  const whole = mutualInductance * Math.sqrt((first.inductanceFactor ?? 1) * (second.inductanceFactor ?? 1));
  return (a, b) =>
    a[1] - a[0] === first.turns && b[1] - b[0] === second.turns
      ? whole
      : (whole * sumOf(a, b)) / sumOf([0, first.turns], [0, second.turns]);
}

interface InSpace {
  readonly mutualInductance: Henries;
  readonly sumOf: (a: TurnSpan, b: TurnSpan) => Henries;
}

/** Placings of two windings that are kept. */
const MOST_KEPT = 64;
const placingsOf = lazilyOfPair((_first: CoilModel, _second: CoilModel) => byName<InSpace>(MOST_KEPT));

/** Where the turns of two coils stand is all that counts, so a set whose coils only lose otherwise shares it. */
const inSpace = (first: CoilModel, second: CoilModel, { distance, tilt }: { distance: number; tilt: number }) =>
  placingsOf(first, second)(`${distance}/${tilt}`, (): InSpace => {
    const { mutualInductance } = couple(first, second, { offset: distance, tilt: (tilt * Math.PI) / 180 });
    const sumOf = straightSum(first.winding!, second.winding!, distance);
    const sums = byName<Henries>();
    return { mutualInductance, sumOf: (a, b) => sums([...a, ...b].join('/'), () => sumOf(a, b)) };
  });

/** What a stretch of turns links of the flux of its whole coil, per ampere. */
function fluxOf(coil: CoilPart, [from, to]: TurnSpan): Henries {
  const own = coil.partial(from, to);
  const before = from > 0 ? coil.mutual([0, from], [from, to]) : 0;
  const after = to < coil.turns ? coil.mutual([from, to], [to, coil.turns]) : 0;
  return own + before + after;
}

/** Half way between the ends of a winding, along its axis. */
function middleOf({ z }: Winding): Metres {
  let [least, most] = [z[0], z[0]];
  for (const at of z) {
    if (at < least) least = at;
    if (at > most) most = at;
  }
  return (least + most) / 2;
}

function straightSum(w1: Winding, w2: Winding, distance: number): (a: TurnSpan, b: TurnSpan) => Henries {
  const apart = distance - middleOf(w2) + middleOf(w1);
  const touching = w1.wireRadius + w2.wireRadius;
  const share = (turn: number, span: TurnSpan): number =>
    Math.max(0, Math.min(turn + 1, span[1]) - Math.max(turn, span[0]));
  const ofTurn = (i: number, b: TurnSpan): Henries => {
    let sum = 0;
    for (let j = Math.floor(b[0]); j < Math.min(w2.radius.length, b[1]); j++) {
      const dr = w1.radius[i] - w2.radius[j];
      const dz = w2.z[j] + apart - w1.z[i];
      const near = dr * dr + dz * dz < touching * touching;
      sum +=
        share(j, b) *
        ringMutual(w1.radius[i], w2.radius[j], near ? Math.sqrt(Math.max(0, touching * touching - dr * dr)) : dz);
    }
    return sum;
  };
  // Taps are tried on one coil while the other stays: each of its turns is then the same again. NaN: not asked for yet.
  const turnsOf = byName<Float64Array>(MOST_KEPT);
  return (a, b) => {
    const turns = turnsOf(b.join('/'), () => new Float64Array(w1.radius.length).fill(Number.NaN));
    let sum = 0;
    for (let i = Math.floor(a[0]); i < Math.min(w1.radius.length, a[1]); i++) {
      if (Number.isNaN(turns[i])) turns[i] = ofTurn(i, b);
      sum += share(i, a) * turns[i];
    }
    return sum;
  };
}
