import { line, path, polyline, rect, text } from '../../scene/build.ts';
import type { Item, PathSegment, Point, Role, Scene } from '../../scene/scene.ts';
import { type GlossaryId, termPictureWords as words } from '../../words/index.ts';

/** px. */
const WIDTH = 190;
const HEIGHT = 92;
const LETTERS = 12;
/** Of the ground on which curves and bars stand. */
const FLOOR = 80;
const TOP = 10;

const label = (at: Point, words: string, role: Role = 'ink', anchor: 'start' | 'middle' | 'end' = 'start'): Item =>
  text(at, words, LETTERS, { role, anchor, sits: 'middle', rim: true });

const axis = (from = 8, to = WIDTH - 8): Item => line([from, FLOOR], [to, FLOOR], { stroke: 'soft', width: 1 });

/** Evenly spaced from `from` to `to`, both with them. */
const spread = (from: number, to: number, count = 60): readonly number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

/** Height of the resonance of a single circuit, relative to its own maximum. @param off from resonance, as a share of it */
const resonance = (q: number, off: number): number => 1 / Math.hypot(1, 2 * q * off);

/** Of resonance on each side, as a share of it. */
const SPAN = 0.05;
const curve = (q: number, tall: number): readonly Point[] =>
  spread(-SPAN, SPAN, 90).map((off) => [
    WIDTH / 2 + (off / SPAN) * (WIDTH / 2 - 10),
    FLOOR - tall * resonance(q, off) * (FLOOR - TOP),
  ]);

function decibel(): readonly Item[] {
  const bars = [0, -6, -12, -20];
  const room = (WIDTH - 16) / bars.length;
  return [
    axis(),
    ...bars.flatMap((level, i): Item[] => {
      const height = (FLOOR - TOP - 16) * 10 ** (level / 20);
      const x = 8 + i * room;
      return [
        rect(x + 8, FLOOR - height, room - 16, height, { fill: 'copper' }),
        label([x + room / 2, FLOOR - height - 9], words.decibel.bar(level), 'ink', 'middle'),
      ];
    }),
  ];
}

const q = (): readonly Item[] => [
  axis(),
  polyline(curve(40, 1 / 3), { stroke: 'ink', width: 2, dash: [6, 3] }),
  polyline(curve(120, 1), { stroke: 'copper', width: 2 }),
  label([WIDTH / 2 + 10, TOP + 8], words.q.high, 'copper'),
  label([WIDTH / 2 + 34, FLOOR - 26], words.q.low),
];

function bandwidth(): readonly Item[] {
  const Q = 60;
  const half = (1 / (2 * Q) / SPAN) * (WIDTH / 2 - 10);
  const y = FLOOR - (FLOOR - TOP) * Math.SQRT1_2;
  const [left, right] = [WIDTH / 2 - half, WIDTH / 2 + half];
  return [
    axis(),
    polyline(curve(Q, 1), { stroke: 'copper', width: 2 }),
    line([8, y], [WIDTH - 8, y], { stroke: 'soft', width: 1, dash: [3, 3] }),
    ...[left, right].map((x) => line([x, y], [x, FLOOR], { stroke: 'ink', width: 1.5 })),
    line([left, FLOOR - 5], [right, FLOOR - 5], { stroke: 'ink', width: 2 }),
    label([8, y - 9], words.bandwidth.below, 'soft'),
    label([right + 6, FLOOR - 10], words.bandwidth.width),
  ];
}

function lossTangent(): readonly Item[] {
  const delta = (14 * Math.PI) / 180;
  const long = FLOOR - TOP - 4;
  const foot: Point = [50, FLOOR];
  const tip: Point = [foot[0] + long * Math.sin(delta), foot[1] - long * Math.cos(delta)];
  const arc = 46;
  return [
    line(foot, [WIDTH - 70, FLOOR], { stroke: 'ink', width: 2 }),
    label([WIDTH - 64, FLOOR - 1], words.lossTangent.voltage),
    line(foot, [foot[0], FLOOR - long], { stroke: 'soft', width: 1, dash: [3, 3] }),
    line(foot, tip, { stroke: 'copper', width: 2 }),
    label([tip[0] + 6, tip[1] + 6], words.lossTangent.current, 'copper'),
    path(
      [
        ['M', foot[0], foot[1] - arc],
        ['A', arc, false, true, foot[0] + arc * Math.sin(delta), foot[1] - arc * Math.cos(delta)],
      ],
      { stroke: 'ink', width: 1.2 },
    ),
    label([foot[0] - 6, foot[1] - arc - 6], words.lossTangent.angle, 'ink', 'end'),
  ];
}

/** Current of a junction relative to its saturation current. @param volts @param n its ideality */
const junction = (volts: number, n: number): number => Math.expm1(volts / (n * 0.0258));

function ideality(): readonly Item[] {
  const most = 0.16;
  const top = junction(most / 2, 1);
  const x = (volts: number): number => 14 + (volts / most) * (WIDTH - 60);
  const drawn = (n: number, end: number): readonly Point[] =>
    spread(0, end).map((volts) => [x(volts), FLOOR - (junction(volts, n) / top) * (FLOOR - TOP - 4)]);
  return [
    axis(),
    line([14, TOP], [14, FLOOR], { stroke: 'soft', width: 1 }),
    polyline(drawn(1, most / 2), { stroke: 'copper', width: 2 }),
    polyline(drawn(2, most), { stroke: 'ink', width: 2, dash: [6, 3] }),
    label([x(most / 2) - 6, TOP + 8], words.ideality.one, 'copper', 'end'),
    label([x(most) + 6, TOP + 8], words.ideality.two),
  ];
}

function zeroBiasResistance(): readonly Item[] {
  const n = 1.2;
  const [from, to] = [-0.08, 0.062];
  const scale = 9;
  const x = (volts: number): number => 16 + ((volts - from) / (to - from)) * (WIDTH - 60);
  const middle = 58;
  const slope = 1 / (n * 0.0258);
  const at = (volts: number, current: number): Point => [x(volts), middle - current * scale];
  return [
    line([8, middle], [WIDTH - 8, middle], { stroke: 'soft', width: 1 }),
    line([x(0), TOP], [x(0), HEIGHT - 6], { stroke: 'soft', width: 1 }),
    polyline(
      spread(from, to).map((volts) => at(volts, junction(volts, n))),
      { stroke: 'copper', width: 2 },
    ),
    line(at(-0.06, -0.06 * slope), at(0.075, 0.075 * slope), { stroke: 'ink', width: 1.5, dash: [5, 3] }),
    label([x(0.075) - 6, middle - 8], words.zeroBiasResistance.slope),
    label([x(0) - 5, middle + 10], words.zeroBiasResistance.at, 'soft', 'end'),
  ];
}

function effectiveHeight(): readonly Item[] {
  const tall = FLOOR - TOP - 4;
  const foot = 40;
  const wide = 34;
  return [
    axis(),
    line([foot, FLOOR], [foot, FLOOR - tall], { stroke: 'copper', width: 3 }),
    polyline(
      [
        [foot, FLOOR],
        [foot + wide, FLOOR],
        [foot, FLOOR - tall],
      ],
      { closed: true, fill: 'card', stroke: 'soft', width: 1 },
    ),
    label([foot - 6, FLOOR - tall + 8], words.effectiveHeight.wire, 'ink', 'end'),
    label([foot + wide, FLOOR - 16], words.effectiveHeight.current, 'soft'),
    line([142, FLOOR], [142, FLOOR - tall / 2], { stroke: 'ink', width: 3 }),
    label([148, FLOOR - tall / 2 + 6], words.effectiveHeight.effective),
  ];
}

function selfCapacitance(): readonly Item[] {
  const turns = 6;
  const pitch = 20;
  const left = (WIDTH - turns * pitch) / 2;
  const y = 52;
  const winding: PathSegment[] = [['M', left, y]];
  for (let i = 0; i < turns; i++) winding.push(['A', pitch / 2, false, true, left + (i + 1) * pitch, y]);
  const right = left + turns * pitch;
  const middle = WIDTH / 2;
  const low = 76;
  const soft = { stroke: 'ink', width: 1.5, dash: [4, 3] } as const;
  return [
    line([8, y], [left, y], { stroke: 'copper', width: 2 }),
    path(winding, { stroke: 'copper', width: 2 }),
    line([right, y], [WIDTH - 8, y], { stroke: 'copper', width: 2 }),
    line([left - 8, y], [left - 8, low], soft),
    line([left - 8, low], [middle - 4, low], soft),
    line([middle + 4, low], [right + 8, low], soft),
    line([right + 8, low], [right + 8, y], soft),
    ...[middle - 4, middle + 4].map((x) => line([x, low - 10], [x, low + 10], { stroke: 'ink', width: 2 })),
  ];
}

type Pictured = keyof typeof words;
const PICTURES: Readonly<Record<Pictured, () => readonly Item[]>> = {
  decibel,
  q,
  bandwidth,
  lossTangent,
  ideality,
  zeroBiasResistance,
  effectiveHeight,
  selfCapacitance,
};

/** Terms that another's picture shows too. */
const SHOWN_BY: Readonly<Partial<Record<GlossaryId, Pictured>>> = {
  loadedQ: 'q',
  unloadedQ: 'q',
  resonance: 'bandwidth',
  characteristic: 'zeroBiasResistance',
};

const isPictured = (id: string): id is Pictured => Object.hasOwn(PICTURES, id);

/**
 * A small picture of what a term means, drawn from its formula.
 * @returns a scene, 190 × 92 px, with what it shows in words; undefined for a term without one
 */
export function termPicture(id: GlossaryId): Scene | undefined {
  const of = isPictured(id) ? id : SHOWN_BY[id];
  if (of === undefined) return undefined;
  const { title, text: description } = words[of];
  return { unit: 'px', width: WIDTH, height: HEIGHT, title, description, items: PICTURES[of]() };
}
