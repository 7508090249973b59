import type { BoxDescription } from '../../../engine/find/box-schema.ts';
import type { FrontEnd, Lack, SetChoice } from '../../../engine/find/choices.ts';
import type { FindAnswer, FoundSet, LeftOut } from '../../../engine/find/find.ts';
import type { StationChance } from '../../../engine/find/tasks.ts';
import type { Use } from '../../../engine/find/uses.ts';
import type { Want } from '../../../engine/set/wants.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { kindName } from './fields/index.ts';
import { counted } from './grammar.ts';
import { wantFigure, wantName } from './vary/wants.ts';

const millimetres = (metres: number): string => formatQuantity(metres, 'length', 3);
const list = new Intl.ListFormat('en-GB');

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
export const foundName = (box: BoxDescription, { front, back, turns }: SetChoice): string =>
  [
    kindName('arrangement', front.arrangement),
    coilText(box, front, turns.turns),
    kindName('detector', box.detectors[back.detector].detector.kind),
    kindName('load', box.loads[back.load].load.kind),
  ].join(', ');

/** Why a set is among those found, in one sentence. */
export function whyFound({ bestOf, isLeastEffort }: FoundSet, wants: readonly Want[]): string {
  const best = bestOf.map((k) => wantName(wants[k]));
  if (best.length > 0 && isLeastEffort)
    return `Nothing does more for ${list.format(best)}, and none takes less effort.`;
  if (best.length > 0) return `Nothing does more for ${list.format(best)}.`;
  return isLeastEffort ? 'None takes less effort.' : 'It lies between the others: none is better in everything.';
}

/** How surely a station is heard through sets built like one. */
export const foundChance = ({ level, range, chance }: StationChance, station: string): string =>
  `${station}: ${level.toFixed(0)} dB SPL (${range[0].toFixed(0)} to ${range[1].toFixed(0)}), heard through ${Math.round(100 * chance)} of 100 such sets`;

const LISTS: { readonly [L in Use['list']]: (box: BoxDescription, index: number) => string } = {
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
};

/** What is taken from one place of the box, and what stays of it. */
export const foundUse = (box: BoxDescription, { list: of, index, count, length, left }: Use): string => {
  const name = LISTS[of](box, index);
  return length === undefined
    ? `${count} × ${name} (${left} left)`
    : `${formatQuantity(length, 'length', 2)} of ${name} (${formatQuantity(Math.max(0, left), 'length', 2)} left)`;
};

const LACKS: { readonly [L in Lack]: string } = {
  former: 'no former: a tube, a plate, a ferrite rod or a frame would do',
  wire: 'no wire: a reel for the coil would do',
  capacitor: 'no capacitor: with a slider or a variometer, on a tube, it would do',
  detector: 'no detector: a crystal or a diode would do',
  load: 'nothing to listen with: phones, a crystal earpiece or an amplifier would do',
  aerial: 'no aerial: a wire, or a frame or ferrite rod to be wound, would do',
  earth: 'no earth: a rod or a water pipe would do; a frame or ferrite rod needs none',
  room: 'no coil: no former has room, or no reel has wire, for five turns',
  limits: 'nothing within the limits: larger ones, or more arrangements, would do',
};

/** What is missing of a box, and what would do. */
export const lackText = (lack: Lack): string => LACKS[lack];

const OF: { readonly [O in LeftOut['of']]: (box: BoxDescription, choice: SetChoice) => string } = {
  detector: (box, { back }) => kindName('detector', box.detectors[back.detector].detector.kind),
  load: (box, { back }) => kindName('load', box.loads[back.load].load.kind),
  arrangement: (_, { front }) => kindName('arrangement', front.arrangement),
};

/** Why a part or an arrangement is in none of the sets found. */
export function whyLeftOut(box: BoxDescription, { of, choice, figures, behind }: LeftOut): string {
  const what = OF[of](box, choice);
  const best = figures.map((one) => `${wantName(one.want)}: ${wantFigure(one)}`).join('; ');
  return behind > 0.05
    ? `Why no ${what}? The best set with it is at least ${behind.toFixed(1)} dB behind in everything that is wanted (${best}).`
    : `Why no ${what}? The best set with it does no more than one that takes less effort (${best}).`;
}

/** `faintwave find`. */
export const findAnswer = {
  title: (box: string, place: string): string => `${box} at ${place}`,
  counts: ({ spanned, valued, received, judged }: FindAnswer['counts']): string =>
    `${spanned} sets spanned, ${valued} valued, ${received} received, ${judged} judged as built.`,
  nothing: 'Nothing can be made from this box:',
  noneInRange: 'No set of this box receives what is wanted.',
  parts: (parts: number, effort: number): string => `${counted(parts, 'part', 'parts')}, effort ${effort}`,
  takes: (uses: readonly string[]): string => `takes ${list.format(uses)}`,
  stopped: 'Stopped: not every set was valued.',
} as const;
