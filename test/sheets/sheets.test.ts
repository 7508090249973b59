import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { bandContacts } from '../../src/engine/built/band-contacts.ts';
import { setCircuit } from '../../src/engine/built/set-circuit.ts';
import { tuningModel } from '../../src/engine/kinds/models.ts';
import { receive } from '../../src/engine/reception/path/receive.ts';
import { receiver } from '../../src/engine/reception/path/receive-station.ts';
import type { Reception } from '../../src/engine/reception/path/types.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText, readValue } from '../../src/engine/set/read.ts';
import type { Point } from '../../src/outputs/scene/scene.ts';
import { boardLayout } from '../../src/outputs/sheets/board/layout.ts';
import { boardParts } from '../../src/outputs/sheets/board/parts.ts';
import { over } from '../../src/outputs/sheets/board/route.ts';
import { switchedParts } from '../../src/outputs/sheets/board/switched-parts.ts';
import { lineText } from '../../src/outputs/sheets/board/wiring.ts';
import { type Page, SHEET_IDS, type Sheet, sheetsFor } from '../../src/outputs/sheets/index.ts';
import { templates } from '../../src/outputs/sheets/pages/capacitor-sheet.ts';
import { codesOf, GOES_ON, textLines, textSheet } from '../../src/outputs/sheets/pages/text-sheet.ts';
import { BASE, SETS } from '../support/every-arrangement.ts';
import { someSet } from '../support/random-sets.ts';
import { clashes, namedAsOnBoard, switchTurned, wiringDisagreements, wiringFaults } from './board-checks.ts';
import { placedOn, untidy, wordsOn } from './on-paper.ts';
import { scanned } from './scanned.ts';

/** What `textLines` wrote, back as JSON. */
const fromLines = (lines: readonly string[]): string =>
  lines.map((l) => (l.endsWith(GOES_ON) ? l.slice(0, -1) : `${l}\n`)).join('');

const STATIONS = [
  { name: 'Saltmarsh Radio', frequency: '603 kHz', power: '50 kW', distance: '38 km' },
  { name: 'The Lantern Service', frequency: '909 kHz', power: '140 kW', distance: '64 km' },
  { name: 'Tollgate Community of the Upper Valley', frequency: '918 kHz', power: '1 kW', distance: '9 km' },
  { name: 'Quayside', frequency: '1458 kHz', power: '2 kW', distance: '14 km' },
];

const read = (value: object): { written: unknown; set: SetDescription } => {
  const result = readValue({ ...BASE, place: { name: 'Little Withy', stations: STATIONS }, ...value });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result;
};

const wire = { size: '26 SWG' };
/** Parts that the sets of all arrangements do not have. */
const PARTS: Record<string, object> = {
  spider: {
    coils: [{ shape: 'spider', name: 'web', innerDiameter: '50 mm', turns: 60, slots: 11, wire }],
    arrangement: { kind: 'tapped', coil: 'web', aerialTap: 15 },
    tuning: { kind: 'vanes', outerRadius: '30 mm', gap: '0.5 mm', vanes: 23, law: 'straight-line frequency' },
  },
  basket: {
    coils: [{ shape: 'basket', name: 'basket', pegCircle: '80 mm', turns: 55, wire }],
    arrangement: { kind: 'direct', coil: 'basket', detectorTap: 30 },
    tuning: { kind: 'tubes', length: '200 mm', innerDiameter: '18 mm', gap: '0.2 mm' },
  },
  spiral: {
    coils: [{ shape: 'spiral', name: 'flat', innerDiameter: '60 mm', turns: 40, pitch: '1.2 mm', wire }],
    arrangement: { kind: 'direct', coil: 'flat' },
    tuning: { kind: 'book', length: '120 mm', width: '90 mm', thickness: '0.1 mm' },
  },
  core: {
    coils: [{ shape: 'core', name: 'ring', turns: 60, perTurnSquared: '55 nH', wire }],
    arrangement: { kind: 'direct', coil: 'ring' },
    tuning: {
      kind: 'measured',
      points: [
        { scale: '0°', capacitance: '20 pF' },
        { scale: '270°', capacitance: '400 pF' },
      ],
    },
  },
  long: {
    coils: [{ shape: 'solenoid', name: 'long one', formerDiameter: '90 mm', turns: 180, pitch: '2 mm', wire }],
    arrangement: { kind: 'slider', coil: 'long one', fewest: 20 },
  },
  banks: {
    coils: [
      { shape: 'bank-wound', name: 'banks', formerDiameter: '50 mm', turns: 120, layers: 3, wire },
      { shape: 'measured', name: 'old one', inductance: '180 µH', q: 90, at: '1 MHz' },
    ],
    arrangement: { kind: 'coupled', coil: 'banks', aerialCoil: 'old one', coupling: '10 %' },
    tuning: { kind: 'fixed', capacitance: '220 pF' },
    detector: { kind: 'valve' },
    load: { kind: 'amplifier', supply: 'mains' },
  },
  foil: {
    arrangement: { kind: 'direct', coil: 'main' },
    tuning: { kind: 'foil', length: '300 mm', width: '250 mm', thickness: '0.1 mm', sheets: 3 },
  },
  wide: {
    arrangement: { kind: 'direct', coil: 'main' },
    tuning: { kind: 'variable', maximum: '500 pF', swing: '270°' },
  },
};

interface Case {
  readonly written: unknown;
  readonly set: SetDescription;
  readonly reception: Reception;
  readonly sheets: readonly Sheet[];
}

const examples = readdirSync(inRoot('examples')).filter((f) => f.endsWith('.json'));
const NAMES = [...examples, ...Object.keys(SETS), ...Object.keys(PARTS)];
const cases = new Map<string, Case>();
const made = (name: string): Case => cases.get(name)!;

beforeAll(() => {
  for (const name of NAMES) {
    let result: { written: unknown; set: SetDescription };
    if (examples.includes(name)) {
      const file = readText(readFileSync(inRoot('examples', name), 'utf8'));
      if (!file.ok) throw new Error(`${name} does not read`);
      result = file;
    } else result = read(SETS[name] ?? PARTS[name]);
    const reception = receive(result.set, {});
    const paper = name.length % 2 === 0 ? 'a4' : 'letter';
    cases.set(name, { ...result, reception, sheets: sheetsFor(result.written, result.set, reception, { paper }) });
  }
});

const pagesOf = (name: string): { sheet: Sheet; page: Page }[] =>
  made(name).sheets.flatMap((sheet) => sheet.pages.map((page) => ({ sheet, page })));

describe.each(NAMES)('%s', (name) => {
  test('no words are cut off or lie over others', () => {
    for (const { page } of pagesOf(name)) expect(untidy(page.scene), page.scene.title).toEqual([]);
  });

  test('every sheet has its words, and every full-size page its ruler and square', () => {
    const ids = made(name).sheets.map((s) => s.id);
    for (const id of SHEET_IDS) if (id !== 'capacitor' && id !== 'coil') expect(ids).toContain(id);
    for (const { sheet, page } of pagesOf(name)) {
      const words = wordsOn(page.scene).map((w) => w.text);
      expect(words.join(' ')).not.toMatch(/undefined|NaN|Infinity|\[object/);
      expect(page.blocks.flatMap((b) => b.items)).toEqual(page.scene.items);
      const isRuled = words.some((w) => w.startsWith('Print at 100 %'));
      expect(isRuled, page.scene.title).toBe(page.scene.drawnAt === 1);
      if (!isRuled) continue;
      expect(sheet.fullSize).toBe(true);
      const placed = placedOn(page.scene.items);
      const ruler = placed.find((p) => p.item.title === 'test ruler')!;
      const square = placed.find((p) => p.item.title === 'test square')!;
      if (ruler.item.kind !== 'line' || square.item.kind !== 'rect') throw new Error('no ruler');
      const [a, b] = [ruler.put(ruler.item.from), ruler.put(ruler.item.to)];
      expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(100, 9);
      expect([square.item.w * square.scale, square.item.h * square.scale]).toEqual([20, 20]);
    }
  });

  test('nothing drawn leaves the paper', () => {
    const outside: string[] = [];
    for (const { page } of pagesOf(name)) {
      const { width, height, title } = page.scene;
      if (page.blocks.some((b) => /Part \d/.test(b.alt ?? ''))) continue;
      for (const { item, put } of placedOn(page.scene.items)) {
        if (item.kind !== 'line' && item.kind !== 'rect') continue;
        const points: Point[] =
          item.kind === 'line'
            ? [item.from, item.to]
            : [
                [item.x, item.y],
                [item.x + item.w, item.y + item.h],
              ];
        for (const [x, y] of points.map(put))
          if (!(x > 2 && y > 2 && x < width - 2 && y < height - 2)) outside.push(`${title}: ${x}, ${y}`);
      }
    }
    expect(outside).toEqual([]);
  });

  test('the printed wiring list reads back to the circuit', () => {
    const sheet = made(name).sheets.find((s) => s.id === 'wiring')!;
    const lines = sheet.pages
      .flatMap((p) => p.blocks)
      .filter((b) => b.items.some((i) => i.kind === 'rect'))
      .map((b) => b.items.flatMap((i) => (i.kind === 'text' ? [i.text] : [])).join(' '))
      .map((words) => /^\d+ (.* → .*?) \d+ mm/.exec(words)![1]);
    const { set } = made(name);
    const [board, switched] = [boardParts(set), switchedParts(set)];
    const contacts = bandContacts(set);
    if (contacts && switched.parts.some(({ kind }) => kind === 'switch')) {
      const { poles, standing } = contacts;
      const turned = [...lines, ...switchTurned(poles.length, standing)];
      expect(wiringFaults(turned, namedAsOnBoard(board, switched, standing))).toEqual([]);
    } else expect(wiringDisagreements(lines, board)).toEqual([]);
  });

  test('the marks of the dial stand where the engine has them', () => {
    const { set, reception, sheets } = made(name);
    const page = sheets.find((s) => s.id === 'dial')!.pages[0];
    const network = receiver(setCircuit(set));
    const placed = placedOn(page.scene.items).filter(
      (p) => p.item.kind === 'line' && /^(station |\d+ kHz)/.test(p.item.title ?? ''),
    );
    const spindle = placedOn(page.scene.items).find((p) => p.item.title === 'drill for the spindle');
    if (spindle?.item.kind !== 'circle') return;
    const centre = spindle.put(spindle.item.centre);
    const byCoil = set.arrangement.kind === 'variometer';
    const model = tuningModel(set.tuning);
    const swing = byCoil ? 180 : model.swing;
    for (const { item, put } of placed) {
      if (item.kind !== 'line') continue;
      const p = put(item.to);
      // Clockwise from straight down the left side, so that the middle of the swing is at the top.
      const angle = (Math.atan2(p[1] - centre[1], p[0] - centre[0]) * 180) / Math.PI;
      const reading = (((angle - (270 - swing / 2)) % 360) + 360) % 360;
      const station = reception.stations.find((s) => `station ${s.name}` === item.title);
      const frequency = station?.frequency ?? Number.parseFloat(item.title!) * 1e3;
      const position = station?.dial?.position ?? network.network.at(frequency).peak(network.smallConductance).position;
      const expected =
        station?.dial && !byCoil ? station.dial.scale : byCoil ? 180 * position : model.angleAt(position);
      expect(Math.abs(reading - expected), item.title).toBeLessThan(0.1);
    }
    if (reception.stations.some((s) => s.dial)) expect(placed.length).toBeGreaterThan(5);
  });

  test('parts stand clear of one another, the detector by what it takes its signal from', () => {
    const { set } = made(name);
    const parts = boardParts(set);
    const layout = boardLayout(set, parts);
    expect(clashes(layout, parts.couplings)).toEqual([]);
    for (const { print, at } of layout.placed) {
      expect(at[0] - print.w / 2).toBeGreaterThan(-1);
      expect(at[0] + print.w / 2).toBeLessThan(layout.width + 1);
    }
    expect(layout.lengths.length).toBe(layout.wiring.lines.length);
  });

  test('no wire lies over a part that it does not join', () => {
    const { set } = made(name);
    const { placed, wiring, ways } = boardLayout(set, boardParts(set));
    wiring.lines.forEach(({ from, to }, i) => {
      for (const { part, print, at, turn } of placed) {
        if (part.terminals.includes(from) || part.terminals.includes(to)) continue;
        const body = { at, turn, w: print.w, h: print.h };
        const lies = ways[i].slice(1).reduce((sum, p, k) => sum + over(ways[i][k], p, body), 0);
        expect(lies, `${from} → ${to} over ${part.tag}`).toBeLessThan(0.5);
      }
    });
  });
});

describe('sets by chance', () => {
  test('every sheet is drawn, tidy, for whatever reads', () => {
    let seen = 0;
    fc.assert(
      fc.property(someSet, (set) => {
        if (!set) return;
        seen++;
        for (const sheet of sheetsFor(set, set, receive(set, {}), {}))
          for (const page of sheet.pages) expect(untidy(page.scene), page.scene.title).toEqual([]);
        const parts = boardParts(set);
        const layout = boardLayout(set, parts);
        expect(wiringDisagreements(layout.wiring.lines.map(lineText), parts)).toEqual([]);
        expect(clashes(layout, parts.couplings)).toEqual([]);
      }),
      { numRuns: 24, seed: 5, endOnFailure: true },
    );
    expect(seen).toBeGreaterThan(10);
  });
});

describe('templates', () => {
  const area = (points: readonly Point[]): number =>
    Math.abs(
      points.reduce(
        (sum, p, i) => sum + p[0] * points[(i + 1) % points.length][1] - points[(i + 1) % points.length][0] * p[1],
        0,
      ),
    ) / 2;

  test.each(['semicircular', 'square-law', 'straight-line frequency', 'logarithmic'])(
    'a %s vane has the area its capacitance needs',
    (law) => {
      const { set } = read({
        arrangement: { kind: 'direct', coil: 'main' },
        tuning: {
          kind: 'vanes',
          outerRadius: '30 mm',
          innerRadius: '8 mm',
          gap: '0.5 mm',
          vanes: 23,
          law,
          minimum: '15 pF',
          stray: '0 pF',
        },
      });
      if (set.tuning.kind !== 'vanes') throw new Error('not of vanes');
      const vane = templates(set.tuning)[0].items.find((i) => i.kind === 'polyline' && i.title === 'moving vane');
      if (vane?.kind !== 'polyline') throw new Error('no vane');
      // NBS Circular 74: C = ε₀(N − 1)A/t, above what is left with the vanes out; the boss round the spindle meshes nothing.
      const { min, max } = tuningModel(set.tuning);
      const expected = (((max - min) * 0.5e-3) / (8.8541878128e-12 * 22)) * 1e6;
      expect(Math.abs((area(vane.points) - Math.PI * 8 ** 2) / expected - 1)).toBeLessThan(0.005);
    },
  );

  test('foil is as large as described', () => {
    const { set } = made('foil');
    if (set.tuning.kind !== 'foil') throw new Error('not of foil');
    const sheet = templates(set.tuning)[0].items.find((i) => i.kind === 'rect');
    expect(sheet?.kind === 'rect' && [sheet.w, sheet.h].sort((a, b) => a - b).map((x) => +x.toFixed(6))).toEqual([
      250, 300,
    ]);
  });

  test('a winding’s strip is as long as the winding, its taps in place', () => {
    const { sheets } = made('tapped-doubler');
    const coil = sheets.find((s) => s.file === 'coil-main')!;
    const placed = coil.pages.flatMap((p) => placedOn(p.scene.items)).filter((p) => p.item.kind === 'line');
    const x = (title: string): number => {
      const found = placed.find((p) => p.item.title === title)!;
      return found.item.kind === 'line' ? found.put(found.item.from)[0] : Number.NaN;
    };
    const length = x('end') - x('start');
    // 72 turns of 26 SWG enamelled wire, close: between 0.47 and 0.54 mm each.
    expect(length).toBeGreaterThan(72 * 0.47);
    expect(length).toBeLessThan(72 * 0.54);
    expect((x('20') - x('start')) / length).toBeCloseTo(20 / 72, 6);
    expect((x('45') - x('start')) / length).toBeCloseTo(45 / 72, 6);
  });
});

describe('the set as text', () => {
  test.each(NAMES)('%s reads back from its printed lines', (name) => {
    const { written, sheets } = made(name);
    const lines = sheets
      .find((s) => s.id === 'text')!
      .pages.flatMap((p) => p.blocks)
      .filter((b) => b.tag === 'P' && b.items.length === 1 && b.items[0].kind === 'text' && b.items[0].size === 2.5)
      .map((b) => (b.items[0].kind === 'text' ? b.items[0].text : ''));
    expect(JSON.parse(fromLines(lines))).toEqual(JSON.parse(JSON.stringify(written)));
  });

  test('a recording is left out', () => {
    const written = { format: 'faintwave-set-1', name: 'a set' };
    const recorded = { ...written, recording: { name: 'me', rate: 8000, samples: 'A'.repeat(100_000) } };
    const [plain, other] = [written, recorded].map((one) => textSheet(one, 'a set', 'a4'));
    expect(other.pages).toHaveLength(plain.pages.length);
    expect(JSON.stringify(other)).toBe(JSON.stringify(plain));
  });

  test('long words go on in the next line', () => {
    const value = { notes: `${'a word '.repeat(80)}"quoted" \\ and ünïcödé ${'x'.repeat(300)}` };
    const lines = textLines(JSON.stringify(value), 180);
    expect(lines.some((l) => l.endsWith(GOES_ON))).toBe(true);
    expect(JSON.parse(fromLines(lines))).toEqual(value);
  });

  test.each(NAMES)('%s is read back from its printed codes by a reader of such codes', (name) => {
    const { written, sheets } = made(name);
    const codes = sheets
      .find((s) => s.id === 'text')!
      .pages.flatMap((p) => p.blocks)
      .filter((b) => b.tag === 'Figure');
    expect(codes.length).toBeGreaterThan(0);
    expect(JSON.parse(codes.map((code) => scanned(code.items)).join(''))).toEqual(JSON.parse(JSON.stringify(written)));
  });

  test('one code where it fits, then several, none where nobody would scan so many', () => {
    expect(codesOf('{"a":1}').map((c) => c.size)).toEqual([21]);
    const most = codesOf(`"${'é'.repeat(480)}"`);
    expect(most.map((c) => c.size)).toEqual([177]);
    const two = codesOf(`"${'é'.repeat(490)}"`);
    expect(two).toHaveLength(2);
    for (const { size } of two) expect(size).toBeLessThan(most[0].size - 20);
    expect(codesOf(`"${'x'.repeat(20_000)}"`)).toEqual([]);
  });
});
