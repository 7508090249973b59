import { setCircuit } from '../../../engine/built/set-circuit.ts';
import { tunedBy } from '../../../engine/kinds/arrangements/tuned-by.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import type { Item } from '../../scene/scene.ts';
import { dialMounting, dialSheetWords as dialSheetText, verdictWords } from '../../words/index.ts';
import { fewestPages } from '../paper/fewest-pages.ts';
import { Flow } from '../paper/flow.ts';
import type { PageLayout, PaperName, Sheet } from '../paper/page.ts';
import { type AerialDial, aerialDial, aerialDialMarks } from './aerial-dial.ts';
import { DEGREES, roundFace, SPINDLE, straightFace } from './dial-face.ts';
import { type DialMarks, dialMarks, dialTicks, type Pointer } from './dial-marks.ts';
import { kHz } from './words.ts';

/** Of another band than the set stands on: its name, and its place in the list. */
interface OtherBand {
  readonly name: string;
  readonly index: number;
}

export function dialSheet(set: SetDescription, reception: Reception, paper: PaperName, band?: OtherBand): Sheet {
  const ticks = dialTicks(set, reception);
  const marks = dialMarks(set, reception, ticks);
  const second = aerialDial(set);
  const own = second && aerialDialMarks(ticks, reception, second);
  return fewestPages((layout) => dialPages(set, reception, { marks, second, own, band }, paper, layout));
}

interface Dials {
  readonly marks: DialMarks;
  readonly second?: AerialDial;
  /** The marks of the second. */
  readonly own?: DialMarks;
  readonly band?: OtherBand;
}

function dialPages(
  set: SetDescription,
  reception: Reception,
  dials: Dials,
  paper: PaperName,
  layout: PageLayout,
): Sheet {
  const { marks, second, own, band } = dials;
  const flow = new Flow({
    id: 'dial',
    title: band ? dialSheetText.titleOnBand(band.name) : dialSheetText.title,
    file: band && `dial-band-${band.index + 1}`,
    set: set.name,
    paper,
    layout,
  });
  const { headings } = dialSheetText;
  flow.para(
    dialSheetText.intro({
      mover: marks.moves,
      start: marks.scale.kind === 'straight' ? marks.scale.from : undefined,
      tag: second?.mainTag,
      withCapacitor: hasTuning(set),
    }),
  );
  const face = putFace(flow, marks);
  if (marks.folds.length > 0) flow.para(dialSheetText.folds(marks.folds));
  const mount = mountingSteps(set, marks, face);
  if (mount.length > 0) {
    flow.heading(headings.mount, 30);
    flow.list(mount, 'number', layout.size);
  }
  stationTable(flow, set, reception, dials);
  if (second && own) {
    flow.heading(headings.second(second.tag), flow.fullSizeNeed(128));
    flow.para(dialSheetText.second(second.mainTag));
    putFace(flow, own);
  }
  const isShared = second !== undefined && sameScale(marks, second);
  flow.heading(headings.blank, flow.fullSizeNeed(128));
  flow.para(isShared ? dialSheetText.blankTwice(second.tag) : dialSheetText.blank);
  putBlank(flow, marks);
  if (second && !isShared) putBlank(flow, { ...marks, ...second });
  return flow.finish(dialSheetText.description);
}

const hasTuning = (set: SetDescription): boolean => setCircuit(set).assembly.tuning.length > 0;

function putFace(flow: Flow, marks: DialMarks): Face {
  const face = faceOf(marks, false);
  const stations = marks.stations.map((s) => ({ ...s, reading: scaleText(marks, marks.at(s.position)) }));
  flow.template(face.items, face, dialSheetText.alt.marked({ mover: marks.moves, tag: marks.tag, stations }));
  return face;
}

function putBlank(flow: Flow, marks: DialMarks): void {
  const face = faceOf(marks, true);
  flow.template(face.items, face, dialSheetText.alt.blank({ mover: marks.moves, tag: marks.tag }));
}

/** Where each station should be on the scale or, of a set with two dials, on both. */
function stationTable(flow: Flow, set: SetDescription, reception: Reception, { marks, second }: Dials): void {
  const list = reception.stations.flatMap((station) => (station.dial ? [{ station, place: station.dial }] : []));
  if (list.length === 0) return;
  const { columns, headings } = dialSheetText;
  flow.heading(headings.stations, 34);
  if (second) flow.para(dialSheetText.tuneBoth(second));
  const titleOf = ({ scale }: Pointer, tag: string | undefined): string => {
    if (scale.kind === 'round') return tag ?? columns.scale;
    return tag === undefined ? columns.scaleMm : columns.tagMm(tag);
  };
  flow.table(
    [
      { title: columns.station, share: 4 },
      { title: columns.kHz, share: 1.2, anchor: 'end' },
      { title: titleOf(marks, second?.mainTag), share: 1.4, anchor: 'end' },
      ...(second ? [{ title: titleOf(second, second.tag), share: 1.4, anchor: 'end' } as const] : []),
      { title: second ? columns.tagAsBuilt(second.mainTag) : columns.asBuilt, share: 2.4, anchor: 'end' },
      { title: columns.heard, share: 2 },
      { title: columns.foundAt, share: 1.6 },
    ],
    list
      .sort((a, b) => a.place.position - b.place.position)
      .map(({ station, place }) => [
        station.name,
        kHz(station.frequency),
        scaleText(marks, marks.at(place.position)),
        ...(second ? [scaleText(second, second.at(second.positionOf(station)))] : []),
        rangeText(set, marks, place),
        verdictWords[station.verdict],
        '………',
      ]),
  );
}

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
  const panel = { width: panelSize(face.w), height: panelSize(face.h) };
  if (hasTuning(set) && set.tuning.kind === 'fixed') return [];
  if (scale.kind === 'straight')
    return [
      face.w > ONE_PAGE ? dialMounting.stripInParts(panel, moves) : dialMounting.strip(panel, moves),
      dialMounting.stripPointer(moves, scale.from),
      dialMounting.stripTurned(scale.from),
    ];
  const mirrored = dialMounting.mirrored(moves, scale.swing);
  if (moves === 'leaf') return [dialMounting.hingePanel(panel), dialMounting.hingePointer(POINTER), mirrored];
  return [
    moves === 'rotor' ? dialMounting.panelBySpindle(panel) : dialMounting.panelByCapacitor(panel),
    dialMounting.drill({ hole: SPINDLE, below: Math.ceil(face.below ?? 0) }),
    dialMounting.glue(POINTER),
    dialMounting.slot,
    mirrored,
  ];
}

/** A face wider than this, mm, is printed in parts. */
const ONE_PAGE = 180;
/** A pointer reaches over the line of degrees, mm. */
const POINTER = DEGREES + 3;

const scaleText = (marks: Pointer, value: number): string =>
  marks.scale.kind === 'round' ? `${value.toFixed(1)}°` : value.toFixed(1);

/** The engine gives a range in the capacitor's degrees; a straight scale has it in millimetres. */
function rangeText(
  set: SetDescription,
  marks: DialMarks,
  place: { range?: readonly [number, number]; position: number; scale: number },
): string {
  const byCoil = tunedBy(set.arrangement) !== 'capacitor';
  const full = place.position > 0 ? place.scale / place.position : 0;
  const as = (scale: number): number =>
    marks.scale.kind === 'round' && !byCoil ? scale : full > 0 ? marks.at(Math.min(1, scale / full)) : 0;
  const { range = [place.scale, place.scale] } = place;
  const [low, high] = [as(range[0]), as(range[1])];
  if (!(high > low)) return '—';
  return marks.scale.kind === 'round'
    ? `${Math.round(low)}–${Math.round(high)}°`
    : `${Math.round(low)}–${Math.round(high)}`;
}
