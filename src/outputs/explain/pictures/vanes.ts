import { inside, overlap, textBox } from '../../scene/boxes.ts';
import type { TextItem } from '../../scene/scene.ts';
import type { TunerId } from '../../words/index.ts';
import { pictureTexts } from '../../words/index.ts';
import { resonance } from '../model/settings.ts';
import type { Pen } from '../stage/pen.ts';
import { type MovingPicture, ownStation, type PictureBox, type PictureFacts, stationName } from './facts.ts';

/** Seconds for the pointer's way there and back. */
const TURN = 16;

/** Where the hand has turned the vanes to: slow at both ends. */
const positionAt = (seconds: number): number => 0.5 - 0.5 * Math.cos((2 * Math.PI * seconds) / TURN);

const within = (f: number, ends: readonly number[]): boolean => f >= Math.min(...ends) && f <= Math.max(...ends);
const texts = () => pictureTexts.vanes;

const at = ({ dial }: PictureFacts, position: number) => {
  const i = Math.max(1, dial.findIndex((d) => d.position >= position) || 1);
  const a = dial[i - 1];
  const b = dial[Math.min(i, dial.length - 1)];
  const t = b.position > a.position ? Math.min(1, Math.max(0, (position - a.position) / (b.position - a.position))) : 0;
  const mix = (x: number, y: number) => x + (y - x) * t;
  return {
    frequency: mix(a.frequency, b.frequency),
    loadedQ: mix(a.loadedQ, b.loadedQ),
    capacitance:
      a.capacitance === undefined || b.capacitance === undefined ? undefined : mix(a.capacitance, b.capacitance),
  };
};

/** So many of the other stations are named. */
const NAMED = 3;

function factsOf(facts: PictureFacts) {
  const { dial, stations, tuner, waves } = facts;
  const { carrier, loadedQ } = waves.spec;
  const ends = dial.map((d) => d.frequency);
  const inRange = stations.filter((s) => within(s.frequency, ends));
  const own = ownStation(facts);
  return {
    tuner,
    lowest: Math.min(...ends),
    highest: Math.max(...ends),
    stationsInRange: inRange.length,
    station: stationName(facts),
    carrier,
    bandwidth: carrier / loadedQ,
    others: inRange
      .filter((s) => s !== own)
      .sort((a, b) => b.emf - a.emf)
      .slice(0, NAMED)
      .map(({ name, frequency }) => ({
        name,
        frequency,
        attenuation: -20 * Math.log10(resonance(loadedQ, carrier, frequency)),
      })),
  };
}

export const vanesPicture: MovingPicture = {
  id: 'vanes',
  title: () => texts().title,
  about: (facts) => texts().about(factsOf(facts)),
  description: (facts) => texts().description(factsOf(facts)),
  speed: () => texts().speed,
  captioned: true,
  seconds: () => TURN,
  still(facts) {
    // On the station, on the way in.
    const { carrier } = facts.waves.spec;
    const miss = (t: number) => Math.abs(at(facts, positionAt(t)).frequency - carrier);
    const moments = Array.from({ length: 800 }, (_, k) => (k / 1600) * TURN);
    return moments.reduce((best, t) => (miss(t) < miss(best) ? t : best), 0);
  },
  paint(pen, facts, seconds, box, letters) {
    const position = positionAt(seconds);
    const now = loadedAt(facts, at(facts, position));
    const wide = box.w > 1.3 * box.h;
    const left: PictureBox = wide ? { ...box, w: box.w * 0.36 } : { ...box, h: box.h * 0.45 };
    const right: PictureBox = wide
      ? { ...box, x: box.x + box.w * 0.38, w: box.w * 0.62 }
      : { ...box, y: box.y + box.h * 0.47, h: box.h * 0.53 };
    TUNERS[facts.tuner](pen, left, position, letters);
    const degrees = HAS_ANGLE[facts.tuner] ? position * facts.swing : undefined;
    const capacitance = HAS_CAPACITANCE[facts.tuner] ? now.capacitance : undefined;
    pen.text(
      left.x + left.w / 2,
      left.y + left.h - letters * 0.6,
      texts().setting(degrees, capacitance),
      letters * 1.15,
      { anchor: 'middle', bold: true },
    );
    band(pen, right, facts, now, letters);
  },
};

/**
 * On the wanted station the detector loads the circuit as its reception says; far from it, where little reaches the
 * detector, as the dial says. Between, in proportion to what gets through.
 */
function loadedAt({ waves, dial }: PictureFacts, here: ReturnType<typeof at>): ReturnType<typeof at> {
  const { carrier, loadedQ } = waves.spec;
  const far = dial.reduce((a, b) =>
    Math.abs(b.frequency - carrier) < Math.abs(a.frequency - carrier) ? b : a,
  ).loadedQ;
  const passed = resonance(loadedQ, here.frequency, carrier);
  return { ...here, loadedQ: 1 / Math.max(1 / here.loadedQ + (1 / loadedQ - 1 / far) * passed, 1e-4) };
}

/** Two sheets sliding over each other. */
function sheets(pen: Pen, box: PictureBox, position: number): void {
  const w = box.w * 0.5;
  const h = box.h * 0.36;
  const y = box.y + box.h * 0.28;
  const x = box.x + box.w * 0.04;
  pen.rect(x, y, w, h, 'metal', 0.75);
  pen.rect(x + (1 - position) * w * 0.92, y + h * 0.12, w, h, 'copper', 0.6);
}

/** Turns of a coil; those beyond `inUse` are pale. */
function turns(pen: Pen, box: PictureBox, inUse: number) {
  const cx = box.x + box.w / 2;
  const cy = box.y + box.h * 0.46;
  const w = box.w * 0.76;
  const h = Math.min(box.h * 0.4, w * 0.5);
  for (let k = 0; k <= 22; k++) {
    const x = cx - w / 2 + (w * k) / 22;
    pen.line(x, cy - h / 2, x, cy + h / 2, 'copper', 3, k / 22 > inUse ? 0.35 : 1);
  }
  return { cx, cy, w, h };
}

/** A coil with its contact. */
function slider(pen: Pen, box: PictureBox, position: number, letters: number): void {
  const { cx, cy, w, h } = turns(pen, box, position);
  const x = cx - w / 2 + w * position;
  pen.line(cx - w / 2, cy - h * 0.75, cx + w / 2, cy - h * 0.75, 'metal', 4);
  pen.polygon([x - letters * 0.7, x + letters * 0.7, x], [cy - h * 0.72, cy - h * 0.72, cy - h * 0.5], 3, 'ink');
}

/** One coil turning inside another. */
function variometer(pen: Pen, box: PictureBox, position: number): void {
  const { cx, cy, h } = turns(pen, box, 1);
  const a = Math.PI * (0.08 + 0.84 * (1 - position));
  const r = h * 0.42;
  for (let k = -3; k <= 3; k++) {
    const off = (k / 3) * r * 0.6;
    const [dx, dy] = [Math.cos(a) * r, Math.sin(a) * r];
    const [ox, oy] = [-Math.sin(a) * off, Math.cos(a) * off];
    pen.line(cx + ox - dx, cy + oy - dy, cx + ox + dx, cy + oy + dy, 'ink', 3);
  }
}

function meshing(pen: Pen, box: PictureBox, position: number): void {
  const r = Math.min(box.w * 0.44, box.h * 0.4);
  const cx = box.x + box.w / 2;
  const cy = box.y + box.h * 0.46;
  const half = (turn: number): [number[], number[]] => {
    const xs: number[] = [];
    const ys: number[] = [];
    for (let k = 0; k <= 40; k++) {
      const a = turn + (k / 40) * Math.PI;
      xs.push(cx + r * Math.cos(a));
      ys.push(cy + r * Math.sin(a));
    }
    return [xs, ys];
  };
  // Fixed vanes below the spindle; the rotor comes down over them.
  const [fx, fy] = half(0);
  pen.polygon(fx, fy, fx.length, 'metal', 0.75);
  const turn = Math.PI * (1 - position);
  const [mx, my] = half(-turn);
  pen.polygon(mx, my, mx.length, 'copper', 0.6);
  pen.polyline([...mx, mx[0]], [...my, my[0]], mx.length + 1, 'copper', 2);
  pen.circle(cx, cy, r * 0.08, { fill: 'ink' });
  pen.line(cx, cy, cx + r * 1.08 * Math.cos(-turn), cy + r * 1.08 * Math.sin(-turn), 'ink', 2);
}

type PaintTuner = (pen: Pen, box: PictureBox, position: number, letters: number) => void;
const TUNERS: Readonly<Record<TunerId, PaintTuner>> = {
  vanes: meshing,
  foil: sheets,
  tubes: sheets,
  book: sheets,
  slider,
  variometer,
};
/** Whether the setting is an angle, and whether a capacitance goes with it. */
const HAS_ANGLE: Readonly<Record<TunerId, boolean>> = {
  vanes: true,
  foil: false,
  tubes: false,
  book: false,
  slider: false,
  variometer: false,
};
const HAS_CAPACITANCE: Readonly<Record<TunerId, boolean>> = {
  vanes: true,
  foil: true,
  tubes: true,
  book: true,
  slider: false,
  variometer: false,
};

/** Rows of names over the curve. */
const NAME_ROWS = 4;
const NAME_ROW = 1.35;

/** Where a frequency and a share lie in the picture of the band. */
function bandScale(box: PictureBox, { dial }: PictureFacts, letters: number) {
  const ends = [dial[0].frequency, dial[dial.length - 1].frequency];
  const from = Math.min(...ends) * 0.93;
  const to = Math.max(...ends) * 1.07;
  const left = box.x + letters;
  const right = box.x + box.w - letters;
  const floor = box.y + box.h - letters * 2.8;
  const names = box.y + letters * 2;
  const roof = names + letters * NAME_ROW * NAME_ROWS + letters * 0.4;
  return {
    from,
    to,
    left,
    right,
    floor,
    names,
    roof,
    x: (f: number): number => left + ((f - from) / (to - from)) * (right - left),
    y: (share: number): number => floor - share * (floor - roof),
  };
}
type BandScale = ReturnType<typeof bandScale>;
type Tuned = ReturnType<typeof at>;

/** The resonance curve over the stations of the band. */
function band(pen: Pen, box: PictureBox, facts: PictureFacts, now: Tuned, letters: number): void {
  const scale = bandScale(box, facts, letters);
  const { left, right, floor, from, to, x, y } = scale;
  const seen = facts.stations.filter((s) => x(s.frequency) >= left && x(s.frequency) <= right);
  const strongest = Math.max(...facts.stations.map((s) => s.emf), 1e-12);
  const tall = (emf: number) => Math.sqrt(emf / strongest);
  pen.line(left, floor, right, floor, 'soft', 1);
  for (const s of seen) {
    const passed = resonance(now.loadedQ, now.frequency, s.frequency);
    pen.line(x(s.frequency), floor, x(s.frequency), y(tall(s.emf)), 'faint', 5);
    pen.line(x(s.frequency), floor, x(s.frequency), y(tall(s.emf) * passed), 'accent', 5);
  }
  resonanceCurve(pen, scale, now);
  stationNames(pen, facts, seen, scale, (emf) => y(tall(emf)), now, letters);
  pen.text(
    (left + right) / 2,
    box.y + letters * 1.3,
    texts().resonance(now.frequency, now.frequency / now.loadedQ),
    letters * 1.15,
    { anchor: 'middle', bold: true },
  );
  for (const f of [from * 1.08, (from + to) / 2, to * 0.94])
    pen.text(x(f), floor + letters * 1.5, texts().mark(f), letters * 0.92, { role: 'soft', anchor: 'middle' });
  pen.text(right, floor + letters * 2.6, texts().unit, letters * 0.92, { role: 'soft', anchor: 'end' });
}

function resonanceCurve(pen: Pen, { from, to, x, y }: BandScale, now: Tuned): void {
  const n = 260;
  const xs: number[] = [];
  const ys: number[] = [];
  for (let k = 0; k <= n; k++) {
    const f = from + ((to - from) * k) / n;
    xs.push(x(f));
    ys.push(y(resonance(now.loadedQ, now.frequency, f)));
  }
  // The top itself, which may fall between two points of a sharp curve.
  const top = xs.findIndex((px) => px > x(now.frequency));
  if (top > 0) {
    xs.splice(top, 0, x(now.frequency));
    ys.splice(top, 0, y(1));
  }
  pen.polyline(xs, ys, xs.length, 'copper', 2.5);
}

/** The wanted one's name is sure of its room, then the strongest; none moves while the curve goes by. */
function stationNames(
  pen: Pen,
  { waves }: PictureFacts,
  seen: PictureFacts['stations'],
  { left, right, names, roof, x }: BandScale,
  topOf: (emf: number) => number,
  now: Tuned,
  letters: number,
): void {
  const isWanted = (f: number) => Math.abs(f - waves.spec.carrier) < 100;
  const order = [...seen].sort(
    (a, b) => Number(isWanted(b.frequency)) - Number(isWanted(a.frequency)) || b.emf - a.emf,
  );
  const placed = namesOver(
    order.map((s) => ({ name: s.name, x: x(s.frequency) })),
    { x: left, y: names, w: right - left, h: roof - names },
    letters,
  );
  placed.forEach((item, i) => {
    if (!item) return;
    const s = order[i];
    const [px, py] = item.at;
    pen.line(x(s.frequency), py + letters * 0.3, x(s.frequency), topOf(s.emf), 'soft', 0.8, 0.6);
    const isTuned = resonance(now.loadedQ, now.frequency, s.frequency) > 0.6;
    pen.text(px, py, item.text, item.size, {
      anchor: item.anchor,
      bold: isTuned,
      role: isTuned ? 'accent' : 'ink',
      rim: true,
    });
  });
}

/**
 * Names in rows over their bars, each joined to its own by a line straight down; the first ones are sure of their room.
 * A name goes where it bars the way down from the rows over it for as few others as can be.
 * @returns where each goes, undefined where there is no room.
 */
export function namesOver(
  all: readonly { readonly name: string; readonly x: number }[],
  box: PictureBox,
  letters: number,
): (TextItem | undefined)[] {
  const taken: PictureBox[] = [];
  const floor = box.y + box.h;
  return all.map(({ name, x }, i) => {
    const choices = Array.from({ length: NAME_ROWS }, (_, row) =>
      (['middle', 'start', 'end'] as const).map((anchor) => {
        const at = [x, floor - letters * (0.5 + NAME_ROW * row)] as const;
        const item: TextItem = { kind: 'text', text: name, size: letters, bold: true, anchor, at };
        const words = textBox(item);
        const line: PictureBox = { x: x - 1, y: words.y + words.h, w: 2, h: floor - words.y - words.h };
        const barred = all.slice(i + 1).filter((o) => o.x > words.x - 2 && o.x < words.x + words.w + 2).length;
        return { item, words, line, cost: barred * (NAME_ROWS - 1 - row) };
      }),
    ).flat();
    const free = choices.filter(
      ({ words, line }) =>
        inside(words, box) && ![words, line].some((part) => taken.some((t) => overlap(part, t, letters * 0.15))),
    );
    if (free.length === 0) return undefined;
    const best = free.reduce((a, b) => (b.cost < a.cost ? b : a));
    taken.push(best.words, best.line);
    return best.item;
  });
}
