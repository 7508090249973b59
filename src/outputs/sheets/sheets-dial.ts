import type { Reception } from '../../engine/reception/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { formatNumber } from '../../engine/units/format.ts';
import { arc, circle, line, path, polar, rect, text } from '../scene/build.ts';
import type { Item, Point } from '../scene/scene.ts';
import { shorten, textWidth } from '../scene/text-width.ts';
import { type DialMarks, dialMarks } from './dial-marks.ts';
import { Flow } from './flow.ts';
import type { PaperName, Sheet } from './page.ts';

/** Of a round dial, mm: the face is cut along the outermost. */
const CUT = 86;
const NAMES = [56.5, 84.5] as const;
const DEGREES = 51;
const KILOHERTZ = 41;
const METRES = 31;
/** Of the usual spindle, mm. */
const SPINDLE = 6.5;
const LETTERS = 2.5;

export function dialSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const marks = dialMarks(set, reception);
  const flow = new Flow({ id: 'dial', title: 'Dial', set: set.name, paper, fullSize: true });
  const round = marks.scale.kind === 'round';
  const face = (blank: boolean): void => {
    if (marks.scale.kind === 'round') {
      const { items, w, h } = roundFace(marks, marks.scale.swing, blank);
      flow.template(items, { w, h }, faceWords(marks, blank));
    } else {
      const { items, w, h } = straightFace(marks, marks.scale.travel, blank);
      flow.template(items, { w, h }, faceWords(marks, blank));
    }
  };
  flow.para(
    round
      ? `Full size. Cut along the outer line, drill the middle for the spindle (${SPINDLE} mm for a 6 mm one), glue the face to card and fix it so that the pointer stands on 0° with the ${openWords(set)}. The scale is the tool’s own reckoning of this coil and capacitor; as built it will be out by a little, so try it with a station you know before you glue.`
      : `Full size. Lay the scale along the travel of the ${marks.moves}, its 0 where the ${marks.moves} is ${set.arrangement.kind === 'slider' ? 'at the end with the fewest turns in use' : 'drawn right out'}. It is the tool’s own reckoning; as built it will be out by a little, so try it with a station you know before you glue.`,
  );
  face(false);
  const list = reception.stations.filter((s) => s.dial);
  if (list.length > 0) {
    flow.heading('Where each station should be', 30);
    flow.table(
      [
        { title: 'Station', share: 4 },
        { title: 'kHz', share: 1.2, anchor: 'end' },
        { title: round ? 'Scale' : 'Scale, mm', share: 1.4, anchor: 'end' },
        { title: 'As built, may be at', share: 2.4, anchor: 'end' },
        { title: 'Heard', share: 2 },
        { title: 'Found at', share: 1.6 },
      ],
      [...list]
        .sort((a, b) => a.dial!.position - b.dial!.position)
        .map((s) => [
          s.name,
          formatNumber(s.frequency / 1e3, 5),
          scaleText(marks, marks.at(s.dial!.position)),
          rangeText(set, marks, s.dial!),
          s.heard,
          '………',
        ]),
    );
  }
  flow.heading('The same dial, blank', 128);
  flow.para(
    'For your own marks: tune to a station whose frequency you know, put a pencil dot at the pointer, and write it in. Five or six stations are enough to draw the rest by eye.',
  );
  face(true);
  return flow.finish('Dial at full size, with the stations’ marks, and a blank one to mark by hand.');
}

const openWords = (set: SetDescription): string =>
  set.arrangement.kind === 'variometer'
    ? 'two coils opposing (the highest frequency)'
    : set.tuning.kind === 'book'
      ? 'leaves wide open (the highest frequency)'
      : 'vanes right out (the highest frequency)';

const scaleText = (marks: DialMarks, value: number): string =>
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
    .map((s) => `${s.name}, ${formatNumber(s.frequency / 1e3, 5)} kHz, at ${scaleText(marks, marks.at(s.position))}`)
    .join('; ')}.`;

/** Seen from the front, the scale runs clockwise over the top; the canvas angle of a reading. */
export const canvasAngle = (reading: number, swing: number): number => 270 - swing / 2 + reading;

export function roundFace(
  marks: DialMarks,
  swing: number,
  blank: boolean,
): { items: Item[]; w: number; h: number; centre: Point } {
  const low = swing > 180 ? CUT * Math.sin(((swing - 180) / 2) * (Math.PI / 180)) : 0;
  const w = 2 * CUT + 2;
  const h = CUT + Math.max(low, 12) + 4;
  const centre: Point = [w / 2, CUT + 2];
  const items: Item[] = [];
  const from = canvasAngle(0, swing);
  const to = canvasAngle(swing, swing);
  const angle = (p: number): number => canvasAngle(marks.at(p), swing);
  const foot = h - 1;
  items.push(
    path(
      swing <= 180
        ? [
            ['M', centre[0] - CUT, centre[1]],
            ['A', CUT, false, true, centre[0] + CUT, centre[1]],
            ['L', centre[0] + CUT, foot],
            ['L', centre[0] - CUT, foot],
            ['Z'],
          ]
        : arc(centre, CUT, 180 - (swing - 180) / 2 - 1, 360 + (swing - 180) / 2 + 1),
      { stroke: 'ink', width: 0.3, title: 'cut here' },
    ),
    circle(centre, SPINDLE / 2, { stroke: 'ink', width: 0.25, title: 'drill for the spindle' }),
    line([centre[0] - 6, centre[1]], [centre[0] + 6, centre[1]], { stroke: 'ink', width: 0.15 }),
    line([centre[0], centre[1] - 6], [centre[0], centre[1] + 6], { stroke: 'ink', width: 0.15 }),
    // Where a pointer that stands behind the panel shows through.
    path(arc(centre, 17, from, to), { stroke: 'soft', width: 0.2, dash: [1.5, 1] }),
    path(arc(centre, 20, from, to), { stroke: 'soft', width: 0.2, dash: [1.5, 1] }),
    text([centre[0], centre[1] - 9], 'pointer slot', 2.1, { anchor: 'middle', role: 'soft' }),
    text([centre[0] + 7, centre[1] + 8], `drill ${SPINDLE} mm`, 2.1, { role: 'soft' }),
  );
  const ring = (radius: number, words: string): void => {
    items.push(path(arc(centre, radius, from, to), { stroke: 'ink', width: 0.25 }));
    // A little before the scale begins, clear of its first figure.
    const p = polar(centre, radius, from - (8.4 * 180) / (Math.PI * radius));
    items.push(text(p, words, 2.2, { anchor: 'middle', role: 'soft' }));
  };
  const tick = (radius: number, length: number, a: number, width = 0.18, title?: string): void => {
    items.push(
      line(polar(centre, radius, a), polar(centre, radius + length, a), { stroke: 'ink', width, cap: 'butt', title }),
    );
  };
  const figure = (radius: number, a: number, words: string): void => {
    items.push(text(polar(centre, radius, a), words, LETTERS, { anchor: 'middle', turn: a + 90 }));
  };
  ring(DEGREES, 'degrees');
  const fine = swing > 200 ? 2 : 1;
  for (let d = 0; d <= swing + 1e-9; d += fine)
    tick(DEGREES, d % 10 === 0 ? 3 : d % 5 === 0 ? 2.2 : 1.2, canvasAngle(d, swing), d % 10 === 0 ? 0.25 : 0.15);
  for (let d = 0; d <= swing + 1e-9; d += 10) figure(DEGREES - 3.4, canvasAngle(d, swing), `${d}`);
  ring(KILOHERTZ, 'kHz');
  if (!blank) {
    figures(
      marks.kilohertz.map((m) => ({ a: angle(m.position), value: Math.round(m.frequency / 1e3) })),
      [100, 50, 20, 10, 5],
      KILOHERTZ,
      tick,
      figure,
      'kHz',
    );
    ring(METRES, 'metres');
    figures(
      marks.metres.map((m) => ({ a: angle(m.position), value: m.wavelength })),
      [100, 50, 20, 10, 5],
      METRES,
      tick,
      figure,
      'm',
    );
    for (const { at, reading, name } of spreadOut(marks, swing)) {
      const exact = canvasAngle(reading, swing);
      const shown = canvasAngle(at, swing);
      items.push(
        line(polar(centre, DEGREES, exact), polar(centre, DEGREES + 4.2, exact), {
          stroke: 'ink',
          width: 0.45,
          cap: 'butt',
          title: `station ${name}`,
        }),
        line(polar(centre, DEGREES + 4.2, exact), polar(centre, NAMES[0] - 0.4, shown), { stroke: 'ink', width: 0.18 }),
        radialText(centre, shown, name),
      );
    }
  }
  return { items, w, h, centre };
}

/** Words outward from the rim, never upside down. */
function radialText(centre: Point, a: number, name: string): Item {
  const words = shorten(name, LETTERS, NAMES[1] - NAMES[0]);
  const turned = ((a % 360) + 360) % 360;
  const leftward = turned > 90 && turned < 270;
  return text(polar(centre, NAMES[0], a), words, LETTERS, {
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
  const kept = order.length <= most ? order : order.filter((s) => s.heard !== 'not heard').slice(0, most);
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

/** Ticks at every mark, figures at the finest round step that leaves room between them. */
function figures(
  list: readonly { a: number; value: number }[],
  steps: readonly number[],
  radius: number,
  tick: (radius: number, length: number, a: number, width?: number, title?: string) => void,
  figure: (radius: number, a: number, words: string) => void,
  unit: string,
): void {
  // A tick closer than half a millimetre to its neighbour is a smear.
  let last = Number.NaN;
  for (const { a, value } of [...list].sort((p, q) => p.a - q.a)) {
    const major = value % 100 === 0;
    const near = Math.abs(a - last) * (Math.PI / 180) * radius < 0.55;
    if (near && !major) continue;
    tick(radius, major ? 3 : value % 50 === 0 ? 2.4 : 1.3, a, major ? 0.3 : 0.15, `${value} ${unit}`);
    last = a;
  }
  const taken: { a: number; half: number }[] = [];
  const degrees = (mm: number): number => (mm / (radius - 3.4)) * (180 / Math.PI);
  for (const step of steps)
    for (const { a, value } of list) {
      if (value % step !== 0) continue;
      const half = degrees(textWidth(`${value}`, LETTERS) / 2 + 0.8);
      if (taken.some((t) => Math.abs(t.a - a) < t.half + half)) continue;
      taken.push({ a, half });
      figure(radius - 3.4, a, `${value}`);
    }
}

export function straightFace(
  marks: DialMarks,
  travel: number,
  blank: boolean,
): { items: Item[]; w: number; h: number; left: number } {
  const left = 12;
  const w = travel + 2 * left;
  const names = 40;
  const y = names + 8;
  const h = y + 32;
  const items: Item[] = [rect(0, 0, w, h, { stroke: 'ink', width: 0.3, title: 'cut here' })];
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
  items.push(text([left, h - 1.6], 'mm from the open end, then kHz', 2.1, { role: 'soft' }));
  const base = y + 14;
  items.push(line([x(0), base], [x(travel), base], { stroke: 'ink', width: 0.25, cap: 'butt' }));
  if (!blank) {
    let last = Number.NaN;
    for (const m of [...marks.kilohertz].sort((a, b) => a.position - b.position)) {
      const at = x(marks.at(m.position));
      const value = Math.round(m.frequency / 1e3);
      const major = value % 100 === 0;
      if (Math.abs(at - last) < 0.55 && !major) continue;
      items.push(
        line([at, base], [at, base + (major ? 3.4 : value % 50 === 0 ? 2.6 : 1.5)], {
          stroke: 'ink',
          width: major ? 0.3 : 0.15,
          cap: 'butt',
          title: `${value} kHz`,
        }),
      );
      last = at;
    }
    const taken: { x: number; half: number }[] = [];
    for (const step of [100, 50, 20, 10])
      for (const m of marks.kilohertz) {
        const value = Math.round(m.frequency / 1e3);
        if (value % step !== 0) continue;
        const at = x(marks.at(m.position));
        const half = textWidth(`${value}`, LETTERS) / 2 + 0.8;
        if (at - half < 1 || at + half > w - 1 || taken.some((t) => Math.abs(t.x - at) < t.half + half)) continue;
        taken.push({ x: at, half });
        items.push(text([at, base + 7], `${value}`, LETTERS, { anchor: 'middle' }));
      }
    const gap = LETTERS * 1.3;
    const list = marks.stations
      .map((s) => ({ name: s.name, exact: x(marks.at(s.position)), at: x(marks.at(s.position)) }))
      .slice(0, Math.floor(w / gap) - 1);
    for (let i = 1; i < list.length; i++) list[i].at = Math.max(list[i].at, list[i - 1].at + gap);
    for (let i = list.length - 1; i >= 0; i--)
      list[i].at = Math.min(list[i].at, i === list.length - 1 ? w - 3 : list[i + 1].at - gap);
    for (const s of list)
      items.push(
        line([s.exact, y], [s.exact, y - 3], { stroke: 'ink', width: 0.45, cap: 'butt', title: `station ${s.name}` }),
        line([s.exact, y - 3], [s.at, y - 6.6], { stroke: 'ink', width: 0.18 }),
        text([s.at + LETTERS * 0.35, y - 7.4], shorten(s.name, LETTERS, names - 2), LETTERS, { turn: -90 }),
      );
  }
  return { items, w, h, left };
}
