import { setCircuit } from '../../../engine/built/set-circuit.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatNumber } from '../../../engine/units/format.ts';
import type { Item } from '../../scene/scene.ts';
import { verdictWords } from '../../words/index.ts';
import { fewestPages } from '../paper/fewest-pages.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';
import { type AerialDial, aerialDial, aerialDialMarks } from './aerial-dial.ts';
import { DEGREES, roundFace, SPINDLE, straightFace } from './dial-face.ts';
import { type DialMarks, dialMarks, dialTicks, type Pointer } from './dial-marks.ts';
import { kHz } from './words.ts';

export function dialSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const ticks = dialTicks(set, reception);
  const marks = dialMarks(set, reception, ticks);
  const second = aerialDial(set);
  const own = second && aerialDialMarks(ticks, reception, second);
  return fewestPages((size) => dialPages(set, reception, { marks, second, own }, paper, size));
}

interface Dials {
  readonly marks: DialMarks;
  readonly second?: AerialDial;
  /** The marks of the second. */
  readonly own?: DialMarks;
}

/** @param size of the letters in tables and lists, mm. */
function dialPages(
  set: SetDescription,
  reception: Reception,
  { marks, second, own }: Dials,
  paper: PaperName,
  size: number,
): Sheet {
  const flow = new Flow({ id: 'dial', title: 'Dial', set: set.name, paper, fullSize: true });
  const round = marks.scale.kind === 'round';
  const draw = (of: DialMarks, blank: boolean): Face => {
    const face = faceOf(of, blank);
    flow.template(face.items, face, faceWords(of, blank));
    return face;
  };
  flow.para(
    `Full size${second ? `, for ${second.mainTag}, the detector circuit’s capacitor` : ''}. ${
      round
        ? `The pointer stands on 0° with the ${openWords(set)}.`
        : `The scale lies along the travel of the ${marks.moves}, its 0 where that is ${set.arrangement.kind === 'slider' ? 'at the end with the fewest turns in use' : 'drawn right out'}.`
    } It is the tool’s own reckoning of this coil${setCircuit(set).assembly.tuning.length > 0 ? ' and capacitor' : ''}; as built it will be out by a little, so try it with a station you know before you glue.`,
  );
  const face = draw(marks, false);
  const mount = mountingSteps(set, marks, face);
  if (mount.length > 0) {
    flow.heading('To mount it', 30);
    flow.list(mount, 'number', size);
  }
  const list = reception.stations.filter((s) => s.dial);
  if (list.length > 0) {
    flow.heading('Where each station should be', 34);
    if (second) flow.para(TUNE_BOTH(second));
    const unit = (of: Pointer): string => (of.scale.kind === 'round' ? '' : ', mm');
    flow.table(
      [
        { title: 'Station', share: 4 },
        { title: 'kHz', share: 1.2, anchor: 'end' },
        { title: `${second ? second.mainTag : 'Scale'}${unit(marks)}`, share: 1.4, anchor: 'end' },
        ...(second ? [{ title: `${second.tag}${unit(second)}`, share: 1.4, anchor: 'end' } as const] : []),
        { title: second ? `${second.mainTag} as built` : 'As built, may be at', share: 2.4, anchor: 'end' },
        { title: 'Heard', share: 2 },
        { title: 'Found at', share: 1.6 },
      ],
      [...list]
        .sort((a, b) => a.dial!.position - b.dial!.position)
        .map((s) => [
          s.name,
          kHz(s.frequency),
          scaleText(marks, marks.at(s.dial!.position)),
          ...(second ? [scaleText(second, second.at(second.positionOf(s)))] : []),
          rangeText(set, marks, s.dial!),
          verdictWords[s.verdict],
          '………',
        ]),
      { size },
    );
  }
  if (second && own) {
    flow.heading(`The dial of ${second.tag}, the aerial circuit’s capacitor`, 128);
    flow.para(
      `Cut and mounted as the other. It holds while ${second.mainTag} is in tune; the closer the coils, the further it shifts.`,
    );
    draw(own, false);
  }
  flow.heading('The same dial, blank', 128);
  flow.para(
    `For your own marks: tune to a station whose frequency you know, put a pencil dot at the pointer, and write it in. Five or six stations are enough to draw the rest by eye.${second && sameScale(marks, second) ? ` Print this page twice: ${second.tag} has the same scale.` : ''}`,
  );
  draw(marks, true);
  if (second && !sameScale(marks, second)) draw({ ...marks, ...second, of: `${second.tag} ` }, true);
  return flow.finish('Dial at full size, with the stations’ marks, and a blank one to mark by hand.');
}

const TUNE_BOTH = ({ tag, mainTag }: AerialDial): string =>
  `Two capacitors to tune: ${mainTag}, the detector’s, first; then ${tag}, the aerial’s; then ${mainTag} once more. Part the coils until neighbours go, and tune both again.`;

const sameScale = (a: Pointer, b: Pointer): boolean =>
  JSON.stringify(a.scale) === JSON.stringify(b.scale) && a.moves === b.moves;

interface Face {
  readonly items: Item[];
  readonly w: number;
  readonly h: number;
  /** How far the face reaches below its middle, where it turns about one. */
  readonly below?: number;
}

function faceOf(marks: DialMarks, blank: boolean): Face {
  if (marks.scale.kind === 'straight') return straightFace(marks, marks.scale, blank);
  const { items, w, h, centre } = roundFace(marks, marks.scale.swing, blank);
  return { items, w, h, below: h - 1 - centre[1] };
}

/** Card or wood that is to be left round the face, mm. */
const RIM = 10;
const panelSize = (face: number): number => Math.ceil((face + 2 * RIM) / 5) * 5;

/** How the face comes to stand before what moves; nothing where nothing does. */
function mountingSteps(set: SetDescription, { scale, moves }: Pointer, face: Face): string[] {
  const panel = `${panelSize(face.w)} × ${panelSize(face.h)} mm`;
  const tuned = setCircuit(set).assembly.tuning.length > 0;
  if (tuned && set.tuning.kind === 'fixed') return [];
  if (scale.kind === 'straight')
    return [
      `Glue the face to a strip of thin wood or card, ${panel}${face.w > 180 ? ' (printed in parts: join them first)' : ''}, and screw the strip along the track of the ${moves}, close beside it.`,
      `Fix a pointer to the ${moves}: a wire, or a strip of clear plastic with a hair line scratched in, just clear of the scale. Shift the strip until it reads 0 at the ${scale.from}.`,
      `Where the ${scale.from} is at the right, turn the strip round, so that its 0 is there too: the figures then stand on their heads, but they hold.`,
    ];
  const mirrored = `The face is for a ${moves} that turns clockwise, seen from the front, as it goes from 0° to ${formatNumber(scale.swing, 3)}°. If yours goes the other way, let it stand on ${formatNumber(scale.swing, 3)}° with the ${openWords(set)} and take every reading of these sheets from ${formatNumber(scale.swing, 3)} (26° becomes ${formatNumber(scale.swing - 26, 3)}°); or prick the marks through the paper and write them on its back.`;
  const pointer = `Put on a pointer of wire, or of clear strip with a hair line, that reaches ${DEGREES + 3} mm from the middle`;
  if (set.tuning.kind === 'book' && set.arrangement.kind !== 'variometer')
    return [
      `Glue the face to a panel of thin plywood or card, ${panel} or larger, and fix that upright at the end of the hinge, the cross of the face on the hinge’s line. Nothing is drilled.`,
      `${pointer}, to the edge of the moving leaf, and bend it until it reads 0° with the leaves wide open. The pointer slot (dashed) is left uncut.`,
      mirrored,
    ];
  return [
    `Panel: thin plywood or stiff card, ${panel} or larger, upright; wider than the board does no harm. Screw it to the board’s front edge, or hold it under the nut of the ${set.arrangement.kind === 'variometer' ? 'spindle’s' : 'capacitor’s'} bush.`,
    `Measure how high the middle of the spindle is above the board’s top, and drill the panel there: ${SPINDLE} mm for a 6 mm spindle (wider where a bush comes through). The face reaches ${Math.ceil(face.below ?? 0)} mm below that hole: with a lower spindle let the panel hang down in front of the board’s edge.`,
    `Glue the face to the panel, its cross over the hole. ${pointer}, to the knob.`,
    'The pointer slot (dashed) is only for a pointer that sits behind the panel: cut it out, and a wire bent forward from the spindle shows through it. With a knob in front leave it whole.',
    mirrored,
  ];
}

const openWords = (set: SetDescription): string =>
  set.arrangement.kind === 'variometer'
    ? 'two coils opposing (the highest frequency)'
    : set.tuning.kind === 'book'
      ? 'leaves wide open (the highest frequency)'
      : 'vanes right out (the highest frequency)';

const scaleText = (marks: Pointer, value: number): string =>
  marks.scale.kind === 'round' ? `${value.toFixed(1)}°` : value.toFixed(1);

/** The engine gives a range in the capacitor's degrees; a straight scale has it in millimetres. */
function rangeText(
  set: SetDescription,
  marks: DialMarks,
  place: { range: readonly [number, number]; position: number; scale: number },
): string {
  const byCoil = set.arrangement.kind === 'slider' || set.arrangement.kind === 'variometer';
  const full = place.position > 0 ? place.scale / place.position : 0;
  const as = (scale: number): number =>
    marks.scale.kind === 'round' && !byCoil ? scale : full > 0 ? marks.at(Math.min(1, scale / full)) : 0;
  const [low, high] = [as(place.range[0]), as(place.range[1])];
  if (!(high > low)) return '—';
  return marks.scale.kind === 'round'
    ? `${Math.round(low)}–${Math.round(high)}°`
    : `${Math.round(low)}–${Math.round(high)}`;
}

const faceWords = (marks: DialMarks, blank: boolean): string =>
  `${blank ? 'Blank dial' : 'Dial'} for the ${marks.moves}: ${marks.stations
    .map((s) => `${s.name}, ${kHz(s.frequency)} kHz, at ${scaleText(marks, marks.at(s.position))}`)
    .join('; ')}.`;
