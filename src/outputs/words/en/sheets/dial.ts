import { formatNumber } from '../../../../engine/units/format.ts';
import { bandSpan, kHz } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { listOf } from '../grammar.ts';

/** What turns or slides, and the pointer with it. */
export type Mover = 'spindle' | 'rotor' | 'leaf' | 'slider' | 'tube' | 'sheet';
const MOVERS: Record<Mover, string> = {
  spindle: 'spindle of the capacitor',
  rotor: 'turning coil',
  leaf: 'hinged leaf',
  slider: 'slider',
  tube: 'inner tube',
  sheet: 'moving sheet',
};
/** A round scale's pointer at 0. */
const OPEN: Record<Mover, string> = {
  spindle: 'the vanes fully open (the highest frequency)',
  rotor: 'the two coils opposing (the highest frequency)',
  leaf: 'the leaves wide open (the highest frequency)',
  slider: 'the slider at its end (the highest frequency)',
  tube: 'the tube drawn right out (the highest frequency)',
  sheet: 'the sheet drawn right out (the highest frequency)',
};

/** Which end a straight scale is read from. */
export type ScaleStart = 'open' | 'fewest turns';
const STARTS: Record<ScaleStart, string> = {
  open: 'open end',
  'fewest turns': 'end with the fewest turns',
};
const ZERO: Record<ScaleStart, (mover: Mover) => string> = {
  open: (mover) =>
    `The scale lies along the travel of the ${MOVERS[mover]}; its 0 is where that is drawn right out (the highest frequency).`,
  'fewest turns': (mover) =>
    `The scale lies along the travel of the ${MOVERS[mover]}; its 0 is at the end with the fewest turns in use.`,
};

interface Intro {
  readonly mover: Mover;
  /** Of a straight scale. */
  readonly start?: ScaleStart;
  /** "C1", where the set has two dials. */
  readonly tag?: string;
  readonly withCapacitor: boolean;
}
interface TwoTags {
  readonly tag: string;
  readonly mainTag: string;
}
interface Panel {
  readonly width: number;
  readonly height: number;
}
/** From mm. */
const panelSize = ({ width, height }: Panel): string => `${width} × ${height} mm`;
const pointer = (reach: number): string =>
  `Put on a pointer of wire, or of clear strip with a hair line, that reaches ${reach} mm from the middle`;

interface DialAlt {
  readonly mover: Mover;
  readonly tag?: string;
  readonly stations: readonly { readonly name: string; readonly frequency: number; readonly reading: string }[];
}
const alt = ({ mover, tag, stations }: DialAlt): string => {
  const what = tag === undefined ? MOVERS[mover] : `${MOVERS[mover]} of ${tag}`;
  if (stations.length === 0) return `for the ${what}`;
  return `for the ${what}, with ${listOf(stations.map((s) => `${printable(s.name)} (${kHz(s.frequency)} kHz) at ${s.reading}`))}`;
};

const stretch = ({ lowest, highest }: { readonly lowest: number; readonly highest: number }): string =>
  bandSpan(lowest, highest);

export const dialSheetWords = {
  title: 'Dial',
  titleOnBand: (band: string): string => `Dial for ${printable(band)}`,
  description: 'Dial at full size, with the marks of the stations, and a blank one to mark by hand.',
  headings: {
    mount: 'To mount it',
    stations: 'Where each station should be',
    blank: 'The same dial, blank',
    second: (tag: string): string => `The dial of ${tag}, the capacitor of the aerial circuit`,
  },
  columns: {
    station: 'Station',
    kHz: 'kHz',
    scale: 'Scale',
    scaleMm: 'Scale, mm',
    tagMm: (tag: string): string => `${tag}, mm`,
    asBuilt: 'As built, between',
    tagAsBuilt: (tag: string): string => `${tag} as built, between`,
    heard: 'Heard',
    foundAt: 'Found at',
  },
  intro: ({ mover, start, tag, withCapacitor }: Intro): string =>
    [
      tag === undefined ? 'Full size.' : `Full size, for ${tag}, the capacitor of the detector circuit.`,
      start === undefined ? `The pointer stands at 0° with ${OPEN[mover]}.` : ZERO[start](mover),
      withCapacitor
        ? 'It is calculated for this coil and capacitor; as built it will be out by a little, so try it with a station you know before you glue.'
        : 'It is calculated for this coil; as built it will be out by a little, so try it with a station you know before you glue.',
    ].join(' '),
  tuneBoth: ({ tag, mainTag }: TwoTags): string =>
    `There are two capacitors to tune: ${mainTag}, of the detector circuit, first; then ${tag}, of the aerial circuit; then ${mainTag} again. Move the coils apart until neighbouring stations go, and tune both again.`,
  folds: (folds: readonly { readonly lowest: number; readonly highest: number }[]): string =>
    `Dashed along the kHz scale: ${listOf(folds.map(stretch))}. The pointer runs back there, as it does beside a wave trap: one place stands for several frequencies, so none is marked.`,
  second: (mainTag: string): string =>
    `Cut and mount it like the other. It is right while ${mainTag} is in tune; the closer the coils, the further it shifts.`,
  blank:
    'For your own marks: tune to a station whose frequency you know, put a pencil dot at the pointer, and write it in. Five or six stations are enough to draw the rest by eye.',
  blankTwice: (tag: string): string =>
    `For your own marks: tune to a station whose frequency you know, put a pencil dot at the pointer, and write it in. Five or six stations are enough to draw the rest by eye. Print this page twice: ${tag} has the same scale.`,
  /** A reading that lies at an end of the scale. */
  atEnd: (reading: string): string => `${reading} (end)`,
  alt: {
    marked: (dial: DialAlt): string => `Dial ${alt(dial)}.`,
    blank: (dial: Omit<DialAlt, 'stations'>): string => `Blank dial ${alt({ ...dial, stations: [] })}.`,
  },
};

/** How the face comes to stand before what moves. Lengths mm. */
export const dialMounting = {
  strip: (panel: Panel, mover: Mover): string =>
    `Glue the face to a strip of thin wood or card, ${panelSize(panel)}, and screw the strip along the track of the ${MOVERS[mover]}, close beside it.`,
  stripInParts: (panel: Panel, mover: Mover): string =>
    `The face is printed in parts: join them first. Glue it to a strip of thin wood or card, ${panelSize(panel)}, and screw the strip along the track of the ${MOVERS[mover]}, close beside it.`,
  stripPointer: (mover: Mover, start: ScaleStart): string =>
    `Fix a pointer to the ${MOVERS[mover]}: a wire, or a strip of clear plastic with a hair line scratched in, just clear of the scale. Shift the strip until it reads 0 at the ${STARTS[start]}.`,
  stripTurned: (start: ScaleStart): string =>
    `Where the ${STARTS[start]} is at the right, turn the strip round, so that its 0 is there too: the figures are then upside down, but they are right.`,
  mirrored: (mover: Mover, swing: number): string => {
    const full = formatNumber(swing, 3);
    return `The face is for a ${MOVERS[mover]} that turns clockwise, seen from the front, from 0° to ${full}°. If yours turns the other way, let it stand at ${full}° with ${OPEN[mover]} and subtract every reading of these sheets from ${full} (26° becomes ${formatNumber(swing - 26, 3)}°); or prick the marks through the paper and write them on its back.`;
  },
  hingePanel: (panel: Panel): string =>
    `Glue the face to a panel of thin plywood or card, ${panelSize(panel)} or larger, and fix it upright at the end of the hinge, with the cross of the face on the line of the hinge. Nothing is drilled.`,
  hingePointer: (reach: number): string =>
    `${pointer(reach)}, to the edge of the moving leaf, and bend it until it reads 0° with the leaves wide open. The pointer slot (dashed) is left uncut.`,
  panelByCapacitor: (panel: Panel): string =>
    `Panel: thin plywood or stiff card, ${panelSize(panel)} or larger, upright; wider than the board does no harm. Screw it to the front edge of the board, or hold it under the nut of the bush of the capacitor.`,
  panelBySpindle: (panel: Panel): string =>
    `Panel: thin plywood or stiff card, ${panelSize(panel)} or larger, upright; wider than the board does no harm. Screw it to the front edge of the board, or hold it under the nut of the bush of the spindle.`,
  drill: ({ hole, below }: { readonly hole: number; readonly below: number }): string =>
    `Measure how high the middle of the spindle is above the top of the board, and drill the panel there: ${hole} mm for a 6 mm spindle (wider where a bush comes through). The face reaches ${below} mm below that hole: with a lower spindle let the panel hang down in front of the edge of the board.`,
  glue: (reach: number): string =>
    `Glue the face to the panel, its cross over the hole. ${pointer(reach)}, to the knob.`,
  slot: 'The pointer slot (dashed) is only for a pointer behind the panel: cut it out, and a wire bent forward from the spindle shows through it. With a knob in front leave it whole.',
};

const of = (tag: string | undefined, what: string): string => (tag === undefined ? what : `${tag} ${what}`);

/** What stands on the face. */
export const dialFace = {
  cutHere: 'cut here',
  drillHere: 'drill for the spindle',
  drill: (diameter: number): string => `drill ${diameter} mm`,
  slot: 'pointer slot',
  degrees: 'degrees',
  metres: 'metres',
  fold: (lowest: number, highest: number): string => `${stretch({ lowest, highest })} cannot be read here`,
  kilohertzLine: (value: number, tag?: string): string => of(tag, `${value} kHz`),
  metresLine: (value: number, tag?: string): string => of(tag, `${value} m`),
  stationLine: (name: string, tag?: string): string => of(tag, `station ${name}`),
  straightScale: (start: ScaleStart): string => `mm from the ${STARTS[start]}, then kHz`,
};
