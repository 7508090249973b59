import { isHeard } from '../../../engine/reception/verdict.ts';
import { withinTurn } from '../../../engine/units/angle.ts';
import { arc, circle, line, path, pointAtAngle, rect, text } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { shorten, textWidth } from '../../scene/text-width.ts';
import { dialFace } from '../../words/index.ts';
import type { DialMarks, PointerScale } from './dial-marks.ts';

/** Of a round dial, mm: the face is cut along the outermost. */
const CUT = 86;
const NAMES = [56.5, 84.5] as const;
export const DEGREES = 51;
const KILOHERTZ = 41;
const METRES = 29.5;
/** Of the usual spindle, mm. */
export const SPINDLE = 6.5;
const LETTERS = 2.5;

/** Seen from the front, the scale runs clockwise over the top; the canvas angle of a reading. */
const canvasAngle = (reading: number, swing: number): number => 270 - swing / 2 + reading;

/** A round scale as it lies on the paper. */
interface Round {
  readonly centre: Point;
  readonly swing: number;
  /** Canvas angles of its two ends. */
  readonly from: number;
  readonly to: number;
}

export function roundFace(
  marks: DialMarks,
  swing: number,
  blank: boolean,
): { items: Item[]; w: number; h: number; centre: Point } {
  const low = swing > 180 ? CUT * Math.sin(((swing - 180) / 2) * (Math.PI / 180)) : 0;
  const w = 2 * CUT + 2;
  const h = CUT + Math.max(low, 12) + 4;
  const centre: Point = [w / 2, CUT + 2];
  const round: Round = { centre, swing, from: canvasAngle(0, swing), to: canvasAngle(swing, swing) };
  const items = [
    ...outline(round, h - 1),
    ...degreeScale(round),
    ...ring(round, KILOHERTZ, 'kHz'),
    ...(blank ? [] : foldsOnRing(round, marks)),
    ...(blank ? [] : [...frequencyScales(round, marks), ...stationMarks(round, marks)]),
  ];
  return { items, w, h, centre };
}

/** What is cut and drilled. */
function outline({ centre: [x, y], swing, from, to }: Round, foot: number): Item[] {
  const centre: Point = [x, y];
  return [
    path(
      swing <= 180
        ? [['M', x - CUT, y], ['A', CUT, false, true, x + CUT, y], ['L', x + CUT, foot], ['L', x - CUT, foot], ['Z']]
        : arc(centre, CUT, 180 - (swing - 180) / 2 - 1, 360 + (swing - 180) / 2 + 1),
      { stroke: 'ink', width: 0.3, title: dialFace.cutHere },
    ),
    circle(centre, SPINDLE / 2, { stroke: 'ink', width: 0.25, title: dialFace.drillHere }),
    line([x - 6, y], [x + 6, y], { stroke: 'ink', width: 0.15 }),
    line([x, y - 6], [x, y + 6], { stroke: 'ink', width: 0.15 }),
    // Where a pointer that stands behind the panel shows through.
    path(arc(centre, 17, from, to), { stroke: 'soft', width: 0.2, dash: [1.5, 1] }),
    path(arc(centre, 20, from, to), { stroke: 'soft', width: 0.2, dash: [1.5, 1] }),
    text([x, y - 9], dialFace.slot, 2.1, { anchor: 'middle', role: 'soft' }),
    text([x + 7, y + 8], dialFace.drill(SPINDLE), 2.1, { role: 'soft' }),
  ];
}

/** Of the dashed line along a stretch that cannot be read, from the scale's own line, mm. */
const FOLD_AWAY = 1.6;
const FOLD = { stroke: 'ink', width: 0.7, dash: [1.2, 0.8] } as const;

const foldsOnRing = ({ centre, swing }: Round, marks: DialMarks): Item[] =>
  marks.folds.map(({ lowest, highest, ends }) => {
    const [from, to] = ends.map((p) => canvasAngle(marks.at(p), swing)).sort((a, b) => a - b);
    return path(arc(centre, KILOHERTZ + FOLD_AWAY, from, to), { ...FOLD, title: dialFace.fold(lowest, highest) });
  });

/** The line of a scale, with its unit a little before it begins, clear of its first figure. */
const ring = ({ centre, from, to }: Round, radius: number, unit: string): Item[] => [
  path(arc(centre, radius, from, to), { stroke: 'ink', width: 0.25 }),
  text(pointAtAngle(centre, radius, from - (8.4 * 180) / (Math.PI * radius)), unit, 2.2, {
    anchor: 'middle',
    role: 'soft',
  }),
];

const tick = ({ centre }: Round, radius: number, length: number, a: number, width: number, title?: string): Item =>
  line(pointAtAngle(centre, radius, a), pointAtAngle(centre, radius + length, a), {
    stroke: 'ink',
    width,
    cap: 'butt',
    title,
  });

const figure = ({ centre }: Round, radius: number, a: number, words: string): Item =>
  text(pointAtAngle(centre, radius, a), words, LETTERS, { anchor: 'middle', turn: a + 90 });

function degreeScale(round: Round): Item[] {
  const { swing } = round;
  const items = ring(round, DEGREES, dialFace.degrees);
  const fine = swing > 200 ? 2 : 1;
  for (let d = 0; d <= swing + 1e-9; d += fine) {
    const length = d % 10 === 0 ? 3 : d % 5 === 0 ? 2.2 : 1.2;
    items.push(tick(round, DEGREES, length, canvasAngle(d, swing), d % 10 === 0 ? 0.25 : 0.15));
  }
  for (let d = 0; d <= swing + 1e-9; d += 10) items.push(figure(round, DEGREES - 3.4, canvasAngle(d, swing), `${d}`));
  return items;
}

/** Ticks and figures in kilohertz and in metres. */
function frequencyScales(round: Round, marks: DialMarks): Item[] {
  const { centre, swing } = round;
  const items: Item[] = [];
  const angle = (p: number): number => canvasAngle(marks.at(p), swing);
  const onRing = (radius: number, title: (value: number, tag?: string) => string): Pick<Track, 'mm' | 'tick'> => ({
    mm: (radius * Math.PI) / 180,
    tick: (a, length, width, value) => items.push(tick(round, radius, length, a, width, title(value, marks.tag))),
  });
  figures(
    marks.kilohertz.map((m) => ({ at: angle(m.position), value: Math.round(m.frequency / 1e3) })),
    {
      ...onRing(KILOHERTZ, dialFace.kilohertzLine),
      // Along the radius they stand twice as close as across it.
      figure: (a, words) => items.push(inward(centre, KILOHERTZ - 0.9, a, words)),
      half: () => CLOSEST,
    },
  );
  items.push(...ring(round, METRES, dialFace.metres));
  figures(
    marks.metres.map((m) => ({ at: angle(m.position), value: m.wavelength })),
    {
      ...onRing(METRES, dialFace.metresLine),
      figure: (a, words) => items.push(figure(round, METRES - 3.4, a, words)),
      half: (words) => ((textWidth(words, LETTERS) / 2 + 0.8) / (METRES - 3.4)) * (180 / Math.PI),
    },
  );
  return items;
}

/** Each station's line, and its name outward from the rim. */
const stationMarks = ({ centre, swing }: Round, marks: DialMarks): Item[] =>
  spreadOut(marks, swing).flatMap(({ at, reading, name }) => {
    const exact = canvasAngle(reading, swing);
    const shown = canvasAngle(at, swing);
    return [
      line(pointAtAngle(centre, DEGREES, exact), pointAtAngle(centre, DEGREES + 4.2, exact), {
        stroke: 'ink',
        width: 0.45,
        cap: 'butt',
        title: dialFace.stationLine(name, marks.tag),
      }),
      line(pointAtAngle(centre, DEGREES + 4.2, exact), pointAtAngle(centre, NAMES[0] - 0.4, shown), {
        stroke: 'ink',
        width: 0.18,
      }),
      radialText(centre, shown, name),
    ];
  });

/** Words outward from the rim, never upside down. */
function radialText(centre: Point, a: number, name: string): Item {
  const words = shorten(name, LETTERS, NAMES[1] - NAMES[0]);
  const turned = withinTurn(a);
  const leftward = turned > 90 && turned < 270;
  return text(pointAtAngle(centre, NAMES[0], a), words, LETTERS, {
    turn: leftward ? a - 180 : a,
    anchor: leftward ? 'end' : 'start',
    sits: 'middle',
    bold: false,
  });
}

/** Stations' names side by side: where they would lie over one another they are moved along the rim. */
function spreadOut(marks: DialMarks, swing: number): { at: number; reading: number; name: string }[] {
  const gap = (LETTERS * 1.3 * 180) / (Math.PI * NAMES[0]);
  const most = Math.floor(swing / gap);
  const order = marks.stations.map((s) => ({ reading: marks.at(s.position), name: s.name, heard: s.heard, at: 0 }));
  const kept = order.length <= most ? order : order.filter((s) => isHeard(s.heard)).slice(0, most);
  const list = kept.sort((a, b) => a.reading - b.reading);
  for (const s of list) s.at = s.reading;
  // Push apart, then bring back within the scale from its far end.
  for (let i = 1; i < list.length; i++) list[i].at = Math.max(list[i].at, list[i - 1].at + gap);
  const end = swing - gap / 4;
  for (let i = list.length - 1; i >= 0; i--) {
    const limit = i === list.length - 1 ? end : list[i + 1].at - gap;
    if (list[i].at > limit) list[i].at = limit;
  }
  return list;
}

/** Figures from the rim inward, never upside down. */
function inward(centre: Point, radius: number, a: number, words: string): Item {
  const turned = withinTurn(a);
  const leftward = turned > 90 && turned < 270;
  return text(pointAtAngle(centre, radius, a), words, LETTERS, {
    turn: leftward ? a - 180 : a,
    anchor: leftward ? 'start' : 'end',
    sits: 'middle',
  });
}

/** Half of what figures along the radius need, degrees: by their inner ends, where they come closest. */
const CLOSEST = ((LETTERS * 1.2) / 2 / (KILOHERTZ - 0.9 - 4 * 0.64 * LETTERS)) * (180 / Math.PI);

/** A line that ticks and figures stand along, by degrees or by millimetres. */
interface Track {
  /** Millimetres to a unit of it. */
  readonly mm: number;
  readonly tick: (at: number, length: number, width: number, value: number) => unknown;
  readonly figure: (at: number, words: string) => unknown;
  /** How much of it half a figure covers. */
  readonly half: (words: string) => number;
}

/** Figures at the finest round step that leaves room between them, ticks at every mark that stands clear. */
function figures(list: readonly { at: number; value: number }[], { mm, tick, figure, half }: Track): void {
  const taken: { at: number; half: number; value: number }[] = [];
  for (const step of [100, 50, 20, 10, 5])
    for (const { at, value } of list) {
      if (value % step !== 0) continue;
      const own = half(`${value}`);
      if (taken.some((t) => Math.abs(t.at - at) < t.half + own)) continue;
      taken.push({ at, half: own, value });
      figure(at, `${value}`);
    }
  const figured = new Set(taken.map((t) => t.value));
  // A tick closer than half a millimetre to its neighbour is a smear.
  let last = Number.NaN;
  for (const { at, value } of [...list].sort((p, q) => p.at - q.at)) {
    const major = value % 100 === 0;
    if (Math.abs(at - last) * mm < 0.55 && !major && !figured.has(value)) continue;
    tick(at, major ? 3 : value % 50 === 0 ? 2.4 : 1.3, major ? 0.3 : 0.15, value);
    last = at;
  }
}

export function straightFace(
  marks: DialMarks,
  { travel, from }: Extract<PointerScale, { kind: 'straight' }>,
  blank: boolean,
): { items: Item[]; w: number; h: number; left: number } {
  const left = 12;
  const w = travel + 2 * left;
  const names = 40;
  const y = names + 8;
  const h = y + 32;
  const items: Item[] = [rect(0, 0, w, h, { stroke: 'ink', width: 0.3, title: dialFace.cutHere })];
  const x = (reading: number): number => left + reading;
  items.push(line([x(0), y], [x(travel), y], { stroke: 'ink', width: 0.25, cap: 'butt' }));
  for (let mm = 0; mm <= travel + 1e-9; mm++) {
    items.push(
      line([x(mm), y], [x(mm), y + (mm % 10 === 0 ? 3.4 : mm % 5 === 0 ? 2.4 : 1.3)], {
        stroke: 'ink',
        width: 0.15,
        cap: 'butt',
      }),
    );
    if (mm % 10 === 0) items.push(text([x(mm), y + 6.6], `${mm}`, LETTERS, { anchor: 'middle' }));
  }
  items.push(text([left, h - 1.6], dialFace.straightScale(from), 2.1, { role: 'soft' }));
  const base = y + 14;
  items.push(line([x(0), base], [x(travel), base], { stroke: 'ink', width: 0.25, cap: 'butt' }));
  if (!blank) {
    for (const { lowest, highest, ends } of marks.folds) {
      const [from, to] = ends.map((p) => x(marks.at(p)));
      const at = base + FOLD_AWAY;
      items.push(line([from, at], [to, at], { ...FOLD, title: dialFace.fold(lowest, highest) }));
    }
    figures(
      marks.kilohertz.map((m) => ({ at: x(marks.at(m.position)), value: Math.round(m.frequency / 1e3) })),
      {
        mm: 1,
        tick: (at, length, width, value) =>
          items.push(
            line([at, base], [at, base + length], {
              stroke: 'ink',
              width,
              cap: 'butt',
              title: dialFace.kilohertzLine(value, marks.tag),
            }),
          ),
        figure: (at, words) =>
          items.push(text([at + LETTERS * 0.35, base + 4.2], words, LETTERS, { anchor: 'end', turn: -90 })),
        half: () => (LETTERS * 1.2) / 2,
      },
    );
    const gap = LETTERS * 1.3;
    const list = marks.stations
      .map((s) => ({ name: s.name, exact: x(marks.at(s.position)), at: x(marks.at(s.position)) }))
      .slice(0, Math.floor(w / gap) - 1);
    for (let i = 1; i < list.length; i++) list[i].at = Math.max(list[i].at, list[i - 1].at + gap);
    for (let i = list.length - 1; i >= 0; i--)
      list[i].at = Math.min(list[i].at, i === list.length - 1 ? w - 3 : list[i + 1].at - gap);
    for (const s of list)
      items.push(
        line([s.exact, y], [s.exact, y - 3], {
          stroke: 'ink',
          width: 0.45,
          cap: 'butt',
          title: dialFace.stationLine(s.name, marks.tag),
        }),
        line([s.exact, y - 3], [s.at, y - 6.6], { stroke: 'ink', width: 0.18 }),
        text([s.at + LETTERS * 0.35, y - 7.4], shorten(s.name, LETTERS, names - 2), LETTERS, { turn: -90 }),
      );
  }
  return { items, w, h, left };
}
