import { khz } from '../../plots/words.ts';
import { type Box, overlap, textBox } from '../../scene/boxes.ts';
import { arc, circle, line, path, polar, text } from '../../scene/build.ts';
import type { Item, Point, Scene, TextItem } from '../../scene/scene.ts';
import { shorten, textWidth } from '../../scene/text-width.ts';
import { drawing, PLAIN, THIN } from '../paper.ts';
import { type DialData, type DialMark, dialMarks, dialScale } from './marks.ts';

export interface DialFace extends DialData {
  readonly shape?: 'round' | 'straight';
  /** Of the whole sheet, mm; default 150. */
  readonly width?: number;
  /** Reading that the pointer stands at. */
  readonly pointer?: number;
  /** Index of the station to show as chosen. */
  readonly chosen?: number;
  /** Only degrees: to be marked by hand. */
  readonly blank?: boolean;
  /** Also wavelengths in metres. */
  readonly metres?: boolean;
  /** Which way the scale rises; default clockwise. */
  readonly turns?: 'clockwise' | 'anticlockwise';
  /** Cross and ring where the spindle goes. */
  readonly drill?: boolean;
  /** Radius of the degree scale, or length of a straight one, mm; default what fits the width. */
  readonly size?: number;
}

const LETTERS = 2.8;
const SMALL = 2.5;

export function dialWords(data: DialData): string {
  const scale = dialScale(data);
  const stations = dialMarks(data, ['station'])
    .sort((a, b) => a.scale - b.scale)
    .map((s) => `${s.text} at ${s.scale.toFixed(1)}°`);
  return `Scale of ${Math.round(scale.swing)}° from ${khz(scale.frequencyAt(0))} to ${khz(scale.frequencyAt(scale.swing))}.${stations.length > 0 ? ` ${stations.join(', ')}.` : ''}`;
}

/** The dial at full size: every mark stands at its own angle (or share of the length), to the drawing's last digit. */
export function drawDial(face: DialFace): Scene {
  return face.shape === 'straight' ? straightDial(face) : roundDial(face);
}

/**
 * Angle on paper of a reading, degrees clockwise from the right. The middle of the scale is straight up; a scale of
 * 180° lies along the horizontal.
 */
export const paperAngle = (scale: number, swing: number, turns: DialFace['turns'] = 'clockwise'): number =>
  turns === 'clockwise' ? 270 + (scale - swing / 2) : 270 - (scale - swing / 2);

const marksOf = (face: DialFace): DialMark[] =>
  dialMarks(
    face,
    face.blank ? ['degrees'] : ['degrees', 'kHz', 'station', ...(face.metres ? (['metres'] as const) : [])],
  );

function roundDial(face: DialFace): Scene {
  const { width = 150, turns = 'clockwise', blank = false } = face;
  const { swing } = dialScale(face);
  const marks = marksOf(face);
  const stations = marks.filter((m) => m.kind === 'station');
  const nameRoom =
    blank || stations.length === 0 ? 8 : Math.min(42, Math.max(...stations.map((s) => textWidth(s.text, LETTERS))) + 8);
  const radius = face.size ?? Math.max(24, width / 2 - nameRoom);
  const sheetWidth = Math.max(width, 2 * (radius + nameRoom));
  // Below the middle only as far as the scale reaches round.
  const below = Math.max(8, radius * -Math.cos((Math.min(360, swing) * Math.PI) / 360) + 8);
  const centre: Point = [sheetWidth / 2, radius + nameRoom];
  const height = centre[1] + Math.max(below, face.drill ? 10 : 8);
  const at = (scale: number, r: number): Point => polar(centre, r, paperAngle(scale, swing, turns));
  const [from, to] = [paperAngle(0, swing, turns), paperAngle(swing, swing, turns)];
  const ring = (r: number, width = PLAIN): Item =>
    path(arc(centre, r, Math.min(from, to), Math.max(from, to)), { stroke: 'ink', width });
  const rings = { degrees: radius, kHz: radius - 10, metres: radius - 22 };
  const items: Item[] = [ring(rings.degrees)];
  const written: Box[] = [];
  const write = (item: TextItem): void => {
    const box = textBox(item);
    if (written.some((other) => overlap(box, other, 0.7))) return;
    written.push(box);
    items.push(item);
  };
  const bySize = [...marks].sort((a, b) => b.size - a.size);
  for (const m of bySize) {
    if (m.kind === 'station') continue;
    const r = rings[m.kind];
    const length = [1.4, 2.2, 3.2][m.size];
    items.push(
      line(at(m.scale, r - length), at(m.scale, r), {
        stroke: m.kind === 'degrees' ? 'soft' : 'ink',
        width: m.size === 2 ? PLAIN : THIN,
      }),
    );
    if (m.text) {
      // Its nearer edge keeps clear of the mark, whichever way the mark points.
      const a = (paperAngle(m.scale, swing, turns) * Math.PI) / 180;
      const size = m.kind === 'degrees' ? SMALL : LETTERS;
      const reach = (Math.abs(Math.cos(a)) * textWidth(m.text, size) + Math.abs(Math.sin(a)) * 0.8 * size) / 2;
      const p = at(m.scale, r - length - 0.8 - reach);
      write({
        kind: 'text',
        at: p,
        text: m.text,
        size: m.kind === 'degrees' ? SMALL : LETTERS,
        anchor: 'middle',
        sits: 'middle',
        role: m.kind === 'degrees' ? 'soft' : 'ink',
      });
    }
  }
  if (!blank) {
    items.push(ring(rings.kHz));
    write(
      text([centre[0], centre[1] - rings.kHz + 9], 'kHz', SMALL, {
        anchor: 'middle',
        sits: 'middle',
        role: 'soft',
      }),
    );
  } else items.push(ring(rings.kHz, THIN), ring(rings.metres, THIN));
  if (face.metres) {
    items.push(ring(rings.metres));
    write(
      text([centre[0], centre[1] - rings.metres + 9], 'metres', SMALL, {
        anchor: 'middle',
        sits: 'middle',
        role: 'soft',
      }),
    );
  }
  items.push(
    ...stationNames(
      stations,
      face,
      (scale, r) => at(scale, r),
      (scale) => paperAngle(scale, swing, turns),
      radius,
    ),
  );
  if (face.pointer !== undefined)
    items.push(
      line(at(face.pointer, 4), at(face.pointer, radius + 1), { stroke: 'accent', width: 0.6, title: 'pointer' }),
    );
  items.push(circle(centre, 3.2, { fill: face.drill ? 'paper' : 'ink', stroke: 'ink', width: PLAIN }));
  if (face.drill)
    items.push(
      line([centre[0] - 6, centre[1]], [centre[0] + 6, centre[1]], { stroke: 'ink', width: THIN }),
      line([centre[0], centre[1] - 6], [centre[0], centre[1] + 6], { stroke: 'ink', width: THIN }),
    );
  return drawing({ width: sheetWidth, height, drawnAt: 1 }, blank ? 'Blank dial' : 'Dial', dialWords(face), items);
}

/** Names outside the scale along the radius, spread where they crowd; the mark itself stays where it is. */
function stationNames(
  stations: readonly DialMark[],
  face: DialFace,
  at: (scale: number, r: number) => Point,
  angleOf: (scale: number) => number,
  radius: number,
): Item[] {
  const order = stations.map((s, index) => ({ ...s, index, place: s.scale })).sort((a, b) => a.scale - b.scale);
  const outer = radius + 5;
  const gap = ((LETTERS * 1.12) / outer) * (180 / Math.PI);
  spread(order, gap, 0, face.swing ?? 180);
  return order.flatMap((s) => {
    const role = s.index === face.chosen ? 'accent' : 'ink';
    const angle = angleOf(s.place) % 360;
    // Read from the left on the left half, from the right on the right half, never upside down.
    const left = angle > 90 && angle < 270;
    return [
      line(at(s.scale, radius), at(s.scale, radius + 2), {
        stroke: role,
        width: PLAIN * 1.3,
        title: `${s.text}, ${s.scale.toFixed(1)}°`,
      }),
      line(at(s.scale, radius + 2), at(s.place, outer - 0.6), { stroke: role, width: THIN }),
      text(at(s.place, outer), shorten(s.text, LETTERS, 36), LETTERS, {
        anchor: left ? 'end' : 'start',
        sits: 'middle',
        turn: left ? angle - 180 : angle,
        role,
        bold: s.index === face.chosen,
      }),
    ] as Item[];
  });
}

/** Move places apart to a least distance, each as little as can be, all within the ends. */
function spread(list: { place: number }[], gap: number, low: number, high: number): void {
  const room = Math.min(gap, list.length > 1 ? (high - low) / (list.length - 1) : gap);
  for (let round = 0; round < 200; round++) {
    let moved = false;
    for (let i = 1; i < list.length; i++) {
      const short = room - (list[i].place - list[i - 1].place);
      if (short > 1e-6) {
        list[i - 1].place -= short / 2;
        list[i].place += short / 2;
        moved = true;
      }
    }
    for (const item of list) item.place = Math.min(high, Math.max(low, item.place));
    if (!moved) return;
  }
  for (let i = 1; i < list.length; i++) list[i].place = Math.max(list[i].place, list[i - 1].place + room);
  for (let i = list.length - 2; i >= 0; i--) list[i].place = Math.min(list[i].place, list[i + 1].place - room);
}

function straightDial(face: DialFace): Scene {
  const { width = 150, turns = 'clockwise', blank = false } = face;
  const { swing } = dialScale(face);
  const marks = marksOf(face);
  const stations = marks.filter((m) => m.kind === 'station');
  const length = face.size ?? width - 16;
  const sheetWidth = Math.max(width, length + 16);
  const left = (sheetWidth - length) / 2;
  const x = (scale: number): number => left + ((turns === 'clockwise' ? scale : swing - scale) / swing) * length;
  // Names stand on end over the scale.
  const names =
    blank || stations.length === 0 ? 6 : Math.min(36, Math.max(...stations.map((s) => textWidth(s.text, LETTERS)))) + 9;
  const levels = { kHz: names + 1, degrees: names + 19, metres: names + 28 };
  const items: Item[] = [];
  const written: Box[] = [];
  const rows: ('kHz' | 'degrees' | 'metres')[] = ['kHz', 'degrees', ...(face.metres ? (['metres'] as const) : [])];
  for (const kind of rows) {
    const y = levels[kind];
    items.push(line([left, y], [left + length, y], { stroke: 'ink', width: PLAIN }));
    items.push(
      text([left - 2, y + 1], kind === 'degrees' ? '°' : kind === 'kHz' ? '' : 'm', SMALL, {
        anchor: 'end',
        role: 'soft',
      }),
    );
  }
  for (const m of [...marks].sort((a, b) => b.size - a.size)) {
    if (m.kind === 'station') continue;
    const y = levels[m.kind];
    // kHz hang under their line, degrees stand on theirs: pointer and hand-drawn marks go between.
    const down = m.kind === 'kHz' ? 1 : -1;
    const tick = [1.4, 2.2, 3.2][m.size];
    items.push(
      line([x(m.scale), y], [x(m.scale), y + down * tick], {
        stroke: m.kind === 'degrees' ? 'soft' : 'ink',
        width: m.size === 2 ? PLAIN : THIN,
      }),
    );
    if (!m.text) continue;
    const item = text([x(m.scale), y + down * (tick + 1.9)], m.text, m.kind === 'degrees' ? SMALL : LETTERS, {
      anchor: 'middle',
      sits: 'middle',
      role: m.kind === 'degrees' ? 'soft' : 'ink',
    });
    const box = textBox(item);
    if (written.some((other) => overlap(box, other, 0.7))) continue;
    written.push(box);
    items.push(item);
  }
  const order = stations.map((s, index) => ({ ...s, index, place: x(s.scale) })).sort((a, b) => a.place - b.place);
  spread(order, LETTERS * 1.15, left, left + length);
  for (const s of order) {
    const role = s.index === face.chosen ? 'accent' : 'ink';
    items.push(
      line([x(s.scale), levels.kHz], [x(s.scale), levels.kHz - 2], {
        stroke: role,
        width: PLAIN * 1.3,
        title: `${s.text}, ${s.scale.toFixed(1)}°`,
      }),
      line([x(s.scale), levels.kHz - 2], [s.place, levels.kHz - 5.4], { stroke: role, width: THIN }),
      text([s.place, levels.kHz - 6], shorten(s.text, LETTERS, 36), LETTERS, {
        sits: 'middle',
        turn: -90,
        role,
        bold: s.index === face.chosen,
      }),
    );
  }
  if (face.pointer !== undefined)
    items.push(
      line([x(face.pointer), levels.kHz - 4], [x(face.pointer), levels.degrees + 1], {
        stroke: 'accent',
        width: 0.6,
        title: 'pointer',
      }),
    );
  const height = (face.metres ? levels.metres : levels.degrees) + 5;
  return drawing({ width: sheetWidth, height, drawnAt: 1 }, blank ? 'Blank dial' : 'Dial', dialWords(face), items);
}
