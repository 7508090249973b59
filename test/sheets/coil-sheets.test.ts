import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { coilModel } from '../../src/engine/kinds/models.ts';
import { receive } from '../../src/engine/reception/path/receive.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText, readValue } from '../../src/engine/set/read.ts';
import { frameParts } from '../../src/outputs/drawings/aerial/frame-parts.ts';
import { coilFromEnd } from '../../src/outputs/drawings/aerial/loop.ts';
import { placeInPile } from '../../src/outputs/drawings/coil/cheek.ts';
import { type CoilOf, SPARE } from '../../src/outputs/drawings/coil/drawn.ts';
import type { Item } from '../../src/outputs/scene/scene.ts';
import { type Sheet, type SheetOptions, sheetsFor } from '../../src/outputs/sheets/index.ts';
import { capacitorMaterials, capacitorSteps, homeMade } from '../../src/outputs/sheets/pages/capacitor-making.ts';
import { templates } from '../../src/outputs/sheets/pages/capacitor-sheet.ts';
import { cheekTemplates, spiderTemplate, stripTemplate } from '../../src/outputs/sheets/pages/coil-templates.ts';
import { loopWire } from '../../src/outputs/sheets/pages/loop-sheet.ts';
import { cutLength } from '../../src/outputs/words/figures.ts';
import { BASE } from '../support/every-arrangement.ts';
import { placedOn, untidy, wordsOn } from './on-paper.ts';

const example = (name: string): SetDescription => {
  const file = readText(readFileSync(inRoot('examples', `${name}.json`), 'utf8'));
  if (!file.ok) throw new Error(`${name} does not read`);
  return file.set;
};
const STATIONS = [{ name: 'Saltmarsh Radio', frequency: '603 kHz', power: '50 kW', distance: '38 km' }];
const read = (value: object): SetDescription => {
  const result = readValue({ ...BASE, place: { name: 'Little Withy', stations: STATIONS }, ...value });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.set;
};
const sheetsOf = (set: SetDescription, options: SheetOptions = {}): readonly Sheet[] =>
  sheetsFor(set, set, receive(set, {}), options);
const coilSheet = (set: SetDescription): Sheet => sheetsOf(set, { only: ['coil'] })[0];
const wordsOf = (sheet: Sheet): string => sheet.pages.flatMap((p) => wordsOn(p.scene).map((w) => w.text)).join(' ');
const titled = (items: readonly Item[], title: string | RegExp): Item[] =>
  placedOn(items)
    .map((p) => p.item)
    .filter((i) => (typeof title === 'string' ? i.title === title : title.test(i.title ?? '')));

const wire = { size: '32 SWG' };
const pile = (more: object): CoilOf<'multilayer'> =>
  ({
    shape: 'multilayer',
    name: 'pile',
    formerDiameter: 0.05,
    turnsPerLayer: 40,
    layers: 4,
    wire: { size: 0.274e-3, covering: 'double cotton', metal: 'copper' },
    former: 'card',
    ...more,
  }) as CoilOf<'multilayer'>;

test('a coil of a band that the switch is not on is wound with its own taps', () => {
  const sheets = sheetsOf(example('two-band'), { only: ['coil'] }).map(wordsOf);
  const long = sheets.find((words) => words.includes('“long”') || words.includes('Coil long'));
  expect(long).toContain('tap 45');
  expect(long).toContain('tap 90');
});

describe('a pile of layers', () => {
  const holes = (coil: CoilOf<'multilayer'>): string[][] =>
    cheekTemplates(coil, []).map((c) =>
      titled(c.items, /^hole for the (start|end)$/).map((i) => i.title!.replace('hole for the ', '')),
    );

  test('its cheeks fit the tube and reach beyond the last layer', () => {
    const coil = pile({});
    for (const { items } of cheekTemplates(coil, [])) {
      const [rim] = titled(items, 'cheek');
      const [hole] = titled(items, 'hole for the tube');
      if (rim.kind !== 'circle' || hole.kind !== 'circle') throw new Error('no rings');
      expect(2 * hole.radius).toBeCloseTo(50, 9);
      expect(2 * rim.radius).toBeGreaterThan(coilModel(coil).outerDiameter * 1e3 + 6);
    }
  });

  test('the end leaves at the cheek of the start after an even number of layers, at the other after an odd one', () => {
    expect(holes(pile({ layers: 4 }))).toEqual([['start', 'end'], []]);
    expect(holes(pile({ layers: 3 }))).toEqual([['start'], ['end']]);
  });

  test('a tap is led to the nearer cheek, and its notch is there', () => {
    const coil = pile({});
    expect(placeInPile(coil, 70)).toMatchObject({ layer: 2, turnInLayer: 30, nearer: 'start', buried: true });
    expect(placeInPile(coil, 50)).toMatchObject({ layer: 2, turnInLayer: 10, nearer: 'other', buried: true });
    expect(placeInPile(coil, 160)).toMatchObject({ layer: 4, turnInLayer: 40, nearer: 'start', buried: false });
    const [first, other] = cheekTemplates(coil, [
      { name: 'detector', turn: 70 },
      { name: 'aerial', turn: 50 },
    ]);
    expect(titled(first.items, /^notch/).map((i) => i.title)).toEqual(['notch for the tap at 70']);
    expect(titled(other.items, /^notch/).map((i) => i.title)).toEqual(['notch for the tap at 50']);
  });

  test('the sheet lists and draws the cheeks, and says how tap and ends leave', () => {
    const sheet = coilSheet(example('long-wave-foil'));
    const words = wordsOf(sheet);
    for (const part of ['Cheeks', 'insulating sleeve', 'the next layer goes over it', 'back at the cheek it began by'])
      expect(words).toContain(part);
    expect(sheet.pages.flatMap((p) => titled(p.scene.items, 'cheek'))).toHaveLength(4 + 2);
  });
});

describe('a tube', () => {
  const set = example('medium-wave-galena');
  const coil = set.coils[0] as CoilOf<'solenoid'>;
  const length = coilModel(coil).windingLength * 1e3;

  test('is as long on the sheet as on the board, and its strip as long as it', () => {
    const { w } = stripTemplate(coil, coilModel(coil), []);
    expect(w).toBeCloseTo(length + 2 * SPARE, 9);
    expect(wordsOf(coilSheet(set))).toContain(`Cut the tube ${Math.round(w)} mm long`);
  });

  test('has holes for its two ends only; a tap is a line', () => {
    const { items } = stripTemplate(coil, coilModel(coil), [{ name: 'aerial', turn: 11 }]);
    const circles = items.filter((i) => i.kind === 'circle');
    expect(circles.map((c) => Math.round(c.centre[0]))).toEqual([
      4,
      4,
      Math.round(length + 12),
      Math.round(length + 12),
    ]);
    expect(titled(items, '11').map((i) => i.kind)).toEqual(['line']);
  });

  test('has an end, not a finish', () => {
    const words = wordsOf(coilSheet(set));
    expect(words).not.toMatch(/\bfinish\b/);
    expect(words).toMatch(/\bend\b/);
  });
});

test('a spider’s template has the holes for both ends and names its taps', () => {
  const set = example('spider-coil-earpiece');
  const coil = set.coils[0] as CoilOf<'spider'>;
  const { items, h } = spiderTemplate(coil, [{ name: 'aerial', turn: 14 }]);
  const from = (title: string): number => {
    const [item] = titled(items, title);
    if (item?.kind !== 'circle') throw new Error(`no ${title}`);
    return Math.hypot(item.centre[0] - h / 2, item.centre[1] - h / 2);
  };
  const hub = (coil.innerDiameter * 1e3) / 2;
  expect(from('hole for the start')).toBeLessThan(hub);
  expect(from('hole for the end')).toBeGreaterThan((coilModel(coil).outerDiameter * 1e3) / 2);
  expect(from('tap 14, aerial')).toBeGreaterThan(hub);
  expect(items.some((i) => i.kind === 'text' && i.text === 'tap 14, aerial')).toBe(true);
});

test('a tally that fits a page stands on one', () => {
  for (const name of ['long-wave-foil', 'spider-coil-earpiece', 'slider-set']) {
    const turns = coilModel(example(name).coils[0]).turns;
    const boxes = coilSheet(example(name)).pages.map(
      (p) => placedOn(p.scene.items).filter(({ item }) => item.kind === 'rect' && item.w === 5 && item.h === 5).length,
    );
    expect(
      boxes.filter((n) => n > 0),
      name,
    ).toEqual([turns]);
  }
});

describe('a frame', () => {
  const set = example('frame-aerial');
  if (set.aerial.kind !== 'frame') throw new Error('no frame');
  const { aerial } = set;

  test('has laths along its diagonals, and one gap less than turns', () => {
    const parts = frameParts(aerial);
    expect(parts.lath).toBeCloseTo(0.9 * Math.SQRT2 + 0.02, 9);
    expect(parts.depth).toBeCloseTo(7 * 0.008, 9);
    expect(frameParts({ ...aerial, outline: 'round' }).lath).toBeCloseTo(0.92, 9);
    expect(frameParts({ ...aerial, winding: 'spiral' }).notch).toBeCloseTo(0.008 * Math.SQRT2, 9);
    expect(frameParts({ ...aerial, turns: 8.5 }).wires).toBe(9);
  });

  test('its sheet, its drawing and the parts list agree', () => {
    const sheets = sheetsOf(set);
    const words = wordsOf(sheets.find((s) => s.id === 'coil')!);
    expect(words).toContain('56 mm from the first to the last');
    expect(words).toMatch(/(^| )56 mm( |$)/);
    expect(words).toContain(`Wire to cut ${cutLength(loopWire(set))}`);
    expect(
      sheets
        .filter((s) => s.id !== 'coil')
        .map(wordsOf)
        .join(' '),
    ).toContain(cutLength(loopWire(set)));
    expect(words).toContain('flexible insulated wires');
  });
});

test('a rod’s coil is placed from the rod’s end, on sheet and drawing, as the engine has it', () => {
  const set = example('ferrite-rod-valve-diode');
  if (set.aerial.kind !== 'ferrite rod') throw new Error('no rod');
  // 0.3 of the way that the coil can go: (200 − 30)/2 mm.
  expect(coilFromEnd(set.aerial)).toBeCloseTo(0.1 - 0.3 * 0.085, 9);
  expect(coilFromEnd({ ...set.aerial, position: -1 })).toBeCloseTo(0.015, 9);
  const words = wordsOf(coilSheet(set));
  expect(words).toContain('74.5 mm from the nearer end');
  expect(words.match(/74\.5 mm/g)!.length).toBeGreaterThan(2);
  expect(words).toContain('shorted turn');
});

describe('home-made capacitors', () => {
  const KINDS: Record<string, object> = {
    foil: { kind: 'foil', length: '90 mm', width: '40 mm', thickness: '0.12 mm', dielectric: 'waxed paper' },
    'pile of foils': { kind: 'foil', length: '60 mm', width: '40 mm', thickness: '0.1 mm', sheets: 5 },
    plates: { kind: 'plates', length: '90 mm', width: '80 mm', thickness: '0.5 mm', sheets: 4 },
    tubes: { kind: 'tubes', length: '200 mm', innerDiameter: '18 mm', gap: '0.2 mm' },
    'tubes in air': { kind: 'tubes', length: '200 mm', innerDiameter: '18 mm', gap: '0.5 mm', dielectric: 'air' },
    book: { kind: 'book', length: '120 mm', width: '90 mm', thickness: '0.1 mm' },
    vanes: { kind: 'vanes', outerRadius: '30 mm', gap: '0.5 mm', vanes: 23 },
  };
  /** What a step may speak of, and what it then needs. */
  const PARTS =
    /\b(base|foil|card|guide|stop|handle|pressing board|rubber band|weight|spacer|spindle|rod|end plate|washer|screw|paper fastener|collar|stiff paper|cradle|tape|wedge|stranded|flexible)s?\b/gi;

  test.each(Object.keys(KINDS))('%s: all that its steps speak of is listed', (name) => {
    const { tuning } = read({ arrangement: { kind: 'direct', coil: 'main' }, tuning: KINDS[name] });
    if (!homeMade(tuning)) throw new Error('bought');
    const listed = capacitorMaterials(tuning).flat().join(' ').toLowerCase();
    const steps = capacitorSteps(tuning)
      .flatMap(({ lines }) => lines)
      .join(' ');
    for (const [, part] of steps.matchAll(PARTS)) expect(listed, part).toContain(part.toLowerCase());
    expect(steps).toMatch(/clamp/i);
    expect(
      templates(tuning)
        .map((t) => t.words)
        .join(' '),
    ).not.toMatch(/^air\b|\bair,/i);
  });
});

describe('all of it is tidy', () => {
  const direct = (coil: object): object => ({
    coils: [coil],
    arrangement: { kind: 'tapped', coil: 'x', aerialTap: 11, detectorTap: 45 },
  });
  const loop = (aerial: object, kind: string): object => ({ aerial, coils: [], arrangement: { kind, detectorTap: 3 } });
  const LOTS: Record<string, object> = {
    'odd pile': direct({ shape: 'multilayer', name: 'x', formerDiameter: '20 mm', turnsPerLayer: 30, layers: 3, wire }),
    'spaced pile': direct({
      shape: 'multilayer',
      name: 'x',
      formerDiameter: '90 mm',
      turnsPerLayer: 30,
      layers: 2,
      layerSpacing: '2 mm',
      wire: { size: '0.4 mm', covering: 'bare' },
    }),
    'small spider': direct({ shape: 'spider', name: 'x', innerDiameter: '12 mm', turns: 50.5, slots: 5, wire }),
    'wide spider': direct({
      shape: 'spider',
      name: 'x',
      innerDiameter: '110 mm',
      turns: 60,
      slots: 41,
      wire: { size: '0.6 mm' },
    }),
    'spaced spiral': direct({ shape: 'spiral', name: 'x', innerDiameter: '30 mm', turns: 46, pitch: '1 mm', wire }),
    'short tube': direct({
      shape: 'solenoid',
      name: 'x',
      formerDiameter: '100 mm',
      turns: 50,
      wire: { size: '0.1 mm', strands: 7 },
    }),
    'round frame': loop({ kind: 'frame', outline: 'round', side: '0.4 m', turns: 30, wire, pitch: '6 mm' }, 'frame'),
    'round spiral frame': loop(
      { kind: 'frame', outline: 'round', side: '1.4 m', turns: 9.5, wire, winding: 'spiral' },
      'frame',
    ),
    'square spiral frame': loop({ kind: 'frame', side: '0.6 m', turns: 14, wire, winding: 'spiral' }, 'frame'),
    'deep frame': loop({ kind: 'frame', side: '2 m', turns: 30, wire, pitch: '12 mm' }, 'frame'),
    'rod in the middle': loop(
      { kind: 'ferrite rod', length: '100 mm', diameter: '8 mm', turns: 40, wire: { size: '1 mm' }, winding: '30 mm' },
      'ferrite rod',
    ),
    'rod at its end': loop(
      { kind: 'ferrite rod', length: '160 mm', diameter: '10 mm', turns: 40, wire, winding: '20 mm', position: -1 },
      'ferrite rod',
    ),
    'air plates': {
      arrangement: { kind: 'direct', coil: 'main' },
      tuning: { kind: 'plates', length: '90 mm', width: '80 mm', thickness: '0.5 mm', sheets: 4 },
    },
  };

  test.each(Object.keys(LOTS))('%s', (name) => {
    const set = read(LOTS[name]);
    const reception = receive(set, {});
    for (const paper of ['a4', 'letter'] as const) {
      const sheets = sheetsFor(set, set, reception, { paper, only: ['coil', 'capacitor'] });
      expect(sheets.length).toBeGreaterThan(0);
      for (const sheet of sheets) {
        for (const page of sheet.pages) expect(untidy(page.scene), page.scene.title).toEqual([]);
        expect(wordsOf(sheet)).not.toMatch(/undefined|NaN|Infinity|\[object|−\d+ mm|-\d+ mm/);
      }
    }
  });
});
