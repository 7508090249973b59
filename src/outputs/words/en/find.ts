import type { BoxDescription, FoundArrangement } from '../../../engine/find/box-schema.ts';
import type { FrontEnd, Lack, NoArrangement, SetChoice } from '../../../engine/find/choices.ts';
import type { FindAnswer, FoundSet } from '../../../engine/find/find.ts';
import type { KeepRefusal } from '../../../engine/find/kept-parts.ts';
import type { StationChance } from '../../../engine/find/tasks.ts';
import type { Use } from '../../../engine/find/uses.ts';
import type { LeftOut } from '../../../engine/find/why-left-out.ts';
import type { Want } from '../../../engine/set/wants.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { levelSpan } from '../ranges.ts';
import { kindName } from './fields/index.ts';
import { counted, plural } from './grammar.ts';
import { wantFigure, wantName } from './vary/wants.ts';

const millimetres = (metres: number): string => formatQuantity(metres, 'length', 3);
const list = new Intl.ListFormat('en-GB');
/** Long numbers in groups of three. */
const digits = (n: number): string => String(n).replace(/\B(?=(\d{3})+$)/g, ' ');

/** A former by its size: "70 mm tube". */
function formerName({ former }: BoxDescription['formers'][number]): string {
  switch (former.kind) {
    case 'tube':
      return `${millimetres(former.diameter)} tube`;
    case 'plate':
      return `${millimetres(former.outerDiameter)} plate`;
    case 'rod':
      return `${millimetres(former.length)} ferrite rod`;
    case 'frame':
      return `${millimetres(former.side)} frame`;
  }
}

const coilText = (box: BoxDescription, { winding }: FrontEnd, turns: number): string =>
  `${counted(turns, 'turn', 'turns')} on a ${formerName(box.formers[winding.former])}`;

/** A set by what it is: "tapped, 87 turns on a 70 mm tube, germanium". */
const foundName = (box: BoxDescription, { front, back, turns }: SetChoice): string =>
  [
    kindName('arrangement', front.arrangement),
    coilText(box, front, turns.turns),
    kindName('detector', box.detectors[back.detector].detector.kind),
    kindName('load', box.loads[back.load].load.kind),
  ].join(', ');

/** Names of found sets, each its own. */
export function foundNames(box: BoxDescription, sets: readonly Pick<FoundSet, 'choice'>[]): string[] {
  const names = sets.map(({ choice }) => foundName(box, choice));
  return names.map((name, i) => {
    const before = names.slice(0, i).filter((other) => other === name).length;
    return (before === 0 ? name : `${name} (${before + 1})`).slice(0, 120);
  });
}

/** Why a set is among those found, in one sentence. */
export function whyFound(
  { bestOf, isLeastEffort }: Pick<FoundSet, 'bestOf' | 'isLeastEffort'>,
  wants: readonly Want[],
): string {
  const best = bestOf.map((k) => wantName(wants[k]));
  if (best.length > 0 && isLeastEffort)
    return `Nothing does more for ${list.format(best)}, and none takes less effort.`;
  if (best.length > 0) return `Nothing does more for ${list.format(best)}.`;
  return isLeastEffort ? 'None takes less effort.' : 'It lies between the others: none is better in everything.';
}

/** How surely a station is heard through sets built like one. */
export const foundChance = ({ level, range, chance }: StationChance, station: string): string =>
  `${station}: ${level.toFixed(0)} dB SPL (${levelSpan(range)}), heard through ${Math.round(100 * chance)} of 100 such sets`;

/** The lists of a box that hold parts. */
export type BoxList = Use['list'] | 'switches' | 'aerials' | 'earths';

const LISTS: { readonly [L in BoxList]: (box: BoxDescription, index: number) => string } = {
  formers: (box, index) => formerName(box.formers[index]),
  wires: ({ wires }, index) => `${millimetres(wires[index].wire.size)} wire`,
  capacitors: ({ capacitors }, index) => {
    const { capacitor } = capacitors[index];
    if (capacitor.kind === 'fixed') return `${formatQuantity(capacitor.capacitance, 'capacitance', 3)} capacitor`;
    return capacitor.kind === 'variable'
      ? `variable capacitor of ${formatQuantity(capacitor.maximum, 'capacitance', 3)}`
      : `tuning capacitor, ${kindName('tuning', capacitor.kind)}`;
  },
  foils: () => 'foil',
  dielectrics: ({ dielectrics }, index) => dielectrics[index].dielectric,
  detectors: ({ detectors }, index) => kindName('detector', detectors[index].detector.kind),
  loads: ({ loads }, index) => kindName('load', loads[index].load.kind),
  transformers: ({ transformers }, index) => `transformer ${transformers[index].transformer.ratio}:1`,
  switches: ({ switches }, index) => `switch with ${switches[index].positions} positions`,
  aerials: ({ aerials }, index) => `${kindName('aerial', aerials[index].aerial.kind)} aerial`,
  earths: ({ earths }, index) => `earth: ${kindName('earth', earths[index].earth.kind)}`,
};

/** A part of a box with how many there are, or how much: "2 × 60 mm tube"; "35 m of 0.4 mm wire". */
export function boxItemName(box: BoxDescription, list: BoxList, index: number): string {
  const item = box[list][index];
  const name = LISTS[list](box, index);
  const own = item.label === undefined ? name : `${item.label} (${name})`;
  if (list === 'wires') return `${formatQuantity(box.wires[index].length, 'length', 3)} of ${own}`;
  const count = 'count' in item ? Number(item.count) : 1;
  return count > 1 ? `${count} × ${own}` : own;
}

/** What is taken from one place of the box, and what stays of it. */
export const foundUse = (box: BoxDescription, { list: of, index, count, length, left }: Use): string => {
  const name = LISTS[of](box, index);
  return length === undefined
    ? `${count} × ${name} (${left} left)`
    : `${formatQuantity(length, 'length', 2)} of ${name} (${formatQuantity(Math.max(0, left), 'length', 2)} left)`;
};

const LACKS: { readonly [L in Lack]: string } = {
  former: 'no former: add a tube, a plate, a ferrite rod or a frame',
  wire: 'no wire: add a reel for the coil',
  capacitor:
    'no tuning capacitor: add a variable capacitor, or foil and a dielectric for a home-made one; a slider or a variometer, wound on tubes, needs none',
  detector: 'no detector: add a crystal or a diode',
  load: 'nothing to listen with: add phones, a crystal earpiece or an amplifier',
  aerial: 'no aerial: add a wire aerial, or wind one: add a frame or a ferrite rod to the formers',
  earth: 'no earth: add a rod or a water pipe; a frame or a ferrite rod needs none',
  room: 'no coil: no former has room, or no reel has wire, for five turns',
  limits: 'no set is within the limits of the box: allow a larger size, more coils or controls, or other arrangements',
  station: 'no station in the list of the place: add those that you want to hear',
};

/** What is missing of a box, or of the place, and what to add. */
export const lackText = (lack: Lack): string => LACKS[lack];

const KEEP_REFUSALS: { readonly [R in KeepRefusal]: string } = {
  'no set': 'a place by itself has no parts: name a set with --at',
  coils: 'coils are wound from the formers and wires of the box',
  'whole parts': 'find keeps whole parts, not single values',
  'wound aerial': 'frames and ferrite rods are wound: add this one to the formers of the box',
  'fixed tuning': 'a fixed capacitor does not tune a set',
  arrangement: 'find does not look for sets of this arrangement yet',
};

/** Why a part cannot be kept by `faintwave find`, and what is to be done. */
export const keepRefusalText = (refusal: KeepRefusal): string => KEEP_REFUSALS[refusal];

const OF: { readonly [O in LeftOut['of']]: (box: BoxDescription, left: LeftOut) => string } = {
  detector: (box, { trait }) => kindName('detector', box.detectors[Number(trait)].detector.kind),
  load: (box, { trait }) => kindName('load', box.loads[Number(trait)].load.kind),
  arrangement: (_, { choice: { front } }) => kindName('arrangement', front.arrangement),
  former: (box, { trait }) => formerName(box.formers[Number(trait)]),
};

/** Why a part or an arrangement is in none of the sets found. */
export function whyLeftOut(box: BoxDescription, left: LeftOut): string {
  const { of, figures, behind, ahead, matchedBy } = left;
  const what = OF[of](box, left);
  const best = figures.map((one) => `${wantName(one.want)}: ${wantFigure(one)}`).join('; ');
  if (behind > 0.05)
    return `Why no ${what}? The best set with it is at least ${behind.toFixed(1)} dB behind set ${ahead + 1} in everything that is wanted (${best}).`;
  return matchedBy !== undefined
    ? `Why no ${what}? The best set with it does no more than set ${matchedBy + 1}, which takes no more effort (${best}).`
    : `Why no ${what}? The best set with it lies between the sets shown (${best}).`;
}

const NO_ARRANGEMENTS: { readonly [N in NoArrangement]: string } = {
  limits: 'The limits of the box do not allow it',
  frame: 'The box holds no frame',
  rod: 'The box holds no ferrite rod',
  tube: 'The box holds no tube',
  'two tubes': 'The box holds fewer than two tubes',
  'fixed capacitor': 'The box holds no fixed capacitor',
  'other parts':
    'No set of it can be made: too little wire or room for its coils, no aerial or earth, nothing to tune it with, or not within the limits',
};

/** Why an arrangement is in none of the sets of a box. */
export const whyNoArrangement = (arrangement: FoundArrangement, why: NoArrangement): string =>
  `Why no ${kindName('arrangement', arrangement)}? ${NO_ARRANGEMENTS[why]}.`;

/** `faintwave find`. */
export const findAnswer = {
  title: (box: string, place: string): string => `${box} at ${place}`,
  counts: ({ spanned, valued, ruledOut, untried, received, judged }: FindAnswer['counts']): string =>
    [
      `The box allows ${digits(spanned)} ${plural(spanned, 'set', 'sets')}.`,
      `Estimated, some of them twice: ${digits(valued)}; ruled out by the power that reaches the detector: ${digits(ruledOut)};`,
      `calculated in full: ${digits(received)}; calculated with tolerances: ${digits(judged)}.`,
      ...(untried > 0
        ? [
            `Not tried: ${digits(untried)} at most. Their turns and taps lie between those that were tried, or their parts were 4 dB behind in a first look; about the best sets every whole turn of one coil was tried, and some of two coils.`,
          ]
        : []),
    ].join(' '),
  nothing: 'No set can be found:',
  noneInRange: 'No set of this box receives what is wanted.',
  parts: (parts: number, effort: number): string => `${counted(parts, 'part', 'parts')}, effort ${effort}`,
  takes: (uses: readonly string[]): string => `takes ${list.format(uses)}`,
  stopped: 'Stopped: not every set was estimated.',
} as const;
