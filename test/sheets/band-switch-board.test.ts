import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { bandContacts } from '../../src/engine/built/band-contacts.ts';
import { receive } from '../../src/engine/reception/path/receive.ts';
import { turnSwitch } from '../../src/engine/set/band-switch.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readValue } from '../../src/engine/set/read.ts';
import { boardLayout } from '../../src/outputs/sheets/board/layout.ts';
import { boardParts } from '../../src/outputs/sheets/board/parts.ts';
import { switchedParts } from '../../src/outputs/sheets/board/switched-parts.ts';
import { lineText, netsOf, wiringOf } from '../../src/outputs/sheets/board/wiring.ts';
import { builtBoard, sheetsFor } from '../../src/outputs/sheets/index.ts';
import { bandSwitchSheetWords } from '../../src/outputs/words/index.ts';
import { boardScore } from '../support/board-score.ts';
import { clashes, namedAsOnBoard, switchTurned, wiringFaults } from './board-checks.ts';
import { untidy, wordsOn } from './on-paper.ts';

const example: Record<string, unknown> = JSON.parse(readFileSync(inRoot('examples/two-band.json'), 'utf8'));
const wire = { size: '0.3 mm', covering: 'enamel' };
const coil = (name: string, turns: number, more: object = {}): object => ({
  shape: 'solenoid',
  name,
  formerDiameter: '60 mm',
  turns,
  wire,
  ...more,
});

const [, longWave] = example.bands as readonly { readonly arrangement: object }[];
/** Example with wave traps in its aerial lead on each of its two bands, and those coils more. */
const trapped = (medium: readonly object[], long: readonly object[], ...coils: readonly object[]): object => ({
  coils: [...(example.coils as object[]), ...coils],
  arrangement: { ...(example.arrangement as object), traps: medium },
  bands: [
    { name: 'medium wave' },
    { name: 'long wave', arrangement: { ...longWave.arrangement, ...(long.length > 0 && { traps: long }) } },
  ],
});
const inLead = { kind: 'parallel', inductance: '180 µH', capacitance: '200 pF' };
const toEarth = { kind: 'series', inductance: '2.2 mH', capacitance: '270 pF' };
const beside = { kind: 'absorption', inductance: '200 µH', capacitance: '150 pF', coupling: '4 %' };
const fullWave = { kind: 'germanium', wiring: 'full-wave' };

/** Sets whose switch changes coils, taps, a part of one coil, capacitor or wave traps in the aerial lead, or both sides of a full-wave circuit. */
const SETS: Readonly<Record<string, object>> = {
  'two coils with taps': {},
  'a series capacitor for each band': {
    arrangement: { kind: 'series capacitor', coil: 'medium', seriesCapacitor: '150 pF', detectorTap: 18 },
    bands: [
      { name: 'medium wave' },
      {
        name: 'long wave',
        arrangement: { kind: 'series capacitor', coil: 'long', seriesCapacitor: '470 pF', detectorTap: 90 },
      },
    ],
  },
  'one series capacitor for both bands': {
    arrangement: { kind: 'series capacitor', coil: 'medium', seriesCapacitor: '150 pF' },
    bands: [
      { name: 'medium wave' },
      { name: 'long wave', arrangement: { kind: 'series capacitor', coil: 'long', seriesCapacitor: '150 pF' } },
    ],
  },
  'an aerial coil for each band': {
    coils: [coil('aerial M', 15), coil('medium', 60), coil('aerial L', 60), coil('long', 180)],
    arrangement: { kind: 'coupled', aerialCoil: 'aerial M', coil: 'medium', distance: '40 mm', detectorTap: 30 },
    bands: [
      { name: 'medium wave' },
      {
        name: 'long wave',
        arrangement: { kind: 'coupled', aerialCoil: 'aerial L', coil: 'long', distance: '40 mm', detectorTap: 80 },
      },
    ],
  },
  'three bands on one coil, the rest open': {
    coils: [coil('main', 160)],
    arrangement: { kind: 'tapped', coil: 'main', aerialTap: 10, detectorTap: 20, usedTurns: 50, unusedTurns: 'open' },
    bands: [
      { name: 'a' },
      { name: 'b', arrangement: { kind: 'tapped', coil: 'main', aerialTap: 30, detectorTap: 60 } },
      {
        name: 'c',
        arrangement: {
          kind: 'tapped',
          coil: 'main',
          aerialTap: 10,
          detectorTap: 20,
          usedTurns: 90,
          unusedTurns: 'open',
        },
      },
    ],
  },
  'a wave trap on one band': trapped([{ kind: 'parallel', coil: 'trap', capacitance: '200 pF' }], [], coil('trap', 40)),
  'other wave traps on each band, after one of both': trapped([inLead, toEarth], [inLead, beside]),
  'wave traps in the lead and to earth, with a capacitor': {
    arrangement: { kind: 'series capacitor', coil: 'medium', seriesCapacitor: '150 pF', traps: [toEarth] },
    bands: [
      { name: 'medium wave' },
      {
        name: 'long wave',
        arrangement: { kind: 'series capacitor', coil: 'long', seriesCapacitor: '150 pF', traps: [inLead, toEarth] },
      },
    ],
  },
  'a wave trap to earth on one of two direct bands': {
    arrangement: { kind: 'direct', coil: 'medium', traps: [toEarth] },
    bands: [{ name: 'medium wave' }, { name: 'long wave', arrangement: { kind: 'direct', coil: 'long' } }],
  },
  'full-wave with two coils': {
    detector: fullWave,
    arrangement: { kind: 'direct', coil: 'medium' },
    bands: [{ name: 'medium wave' }, { name: 'long wave', arrangement: { kind: 'direct', coil: 'long' } }],
  },
  'full-wave with part of one coil': {
    coils: [coil('main', 160)],
    detector: fullWave,
    arrangement: { kind: 'direct', coil: 'main', usedTurns: 60, unusedTurns: 'open' },
    bands: [{ name: 'a' }, { name: 'b', arrangement: { kind: 'direct', coil: 'main' } }],
  },
  'full-wave with the rest shorted': {
    coils: [coil('main', 160)],
    detector: fullWave,
    arrangement: { kind: 'direct', coil: 'main', usedTurns: 60, unusedTurns: 'shorted' },
    bands: [{ name: 'a' }, { name: 'b', arrangement: { kind: 'direct', coil: 'main' } }],
  },
  'full-wave with aerial coils': {
    detector: fullWave,
    coils: [coil('aerial M', 15), coil('medium', 60), coil('aerial L', 60), coil('long', 180)],
    arrangement: { kind: 'coupled', aerialCoil: 'aerial M', coil: 'medium', distance: '40 mm' },
    bands: [
      { name: 'medium wave' },
      { name: 'long wave', arrangement: { kind: 'coupled', aerialCoil: 'aerial L', coil: 'long', distance: '40 mm' } },
    ],
  },
  'the rest shorted': {
    coils: [coil('main', 160)],
    arrangement: {
      kind: 'tapped',
      coil: 'main',
      aerialTap: 10,
      detectorTap: 20,
      usedTurns: 50,
      unusedTurns: 'shorted',
    },
    bands: [
      { name: 'a' },
      { name: 'b', arrangement: { kind: 'tapped', coil: 'main', aerialTap: 30, detectorTap: 60 } },
    ],
  },
};

function read(name: string): SetDescription {
  const result = readValue({ ...example, ...SETS[name] });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.set;
}

describe.each(Object.keys(SETS))('%s', (name) => {
  const set = read(name);
  const parts = switchedParts(set);
  const { poles, bands } = bandContacts(set)!;
  const lines = wiringOf(netsOf(parts)).lines.map(lineText);

  test('the switch stands on the board, each contact once', () => {
    const [rotary, ...more] = parts.parts.filter(({ kind }) => kind === 'switch');
    expect(more).toEqual([]);
    expect(rotary.terminals.length).toBe(poles.length * (bands.length + 1));
    const terminals = parts.parts.flatMap((part) => part.terminals);
    expect(new Set(terminals).size).toBe(terminals.length);
  });

  test('turned to each band, the wires of the list make the circuit of that band', () => {
    bands.forEach((_, band) => {
      const board = namedAsOnBoard(boardParts(turnSwitch(set, band)), parts, band);
      expect(wiringFaults([...lines, ...switchTurned(poles.length, band)], board), bands[band]).toEqual([]);
      // With the switch between two ways a band does not work: the wires alone do not make the circuit.
      expect(wiringFaults(lines, board), `${bands[band]} without the switch`).not.toEqual([]);
    });
  });

  test('the board can be read', () => {
    const layout = boardLayout(set, parts);
    const { overParts, pastDots, offDots, overWords } = boardScore(layout);
    expect({ overParts, pastDots, offDots, overWords }).toEqual({
      overParts: 0,
      pastDots: 0,
      offDots: 0,
      overWords: 0,
    });
    expect(clashes(layout, parts.couplings)).toEqual([]);
  });

  test.each(['a4', 'letter'] as const)('its sheets are tidy on %s', (paper) => {
    const sheets = sheetsFor(set, set, receive(set, {}), { paper, only: ['glance', 'circuit', 'board', 'wiring'] });
    for (const page of sheets.flatMap(({ pages }) => pages)) expect(untidy(page.scene), page.scene.title).toEqual([]);
  });
});

const glanceOf = (set: SetDescription): string =>
  sheetsFor(set, set, receive(set, {}), { only: ['glance'] })
    .flatMap(({ pages }) => pages.flatMap(({ scene }) => wordsOn(scene).map(({ text }) => text)))
    .join(' ');

test('the series capacitors of all bands are in the list of parts', () => {
  const words = glanceOf(read('a series capacitor for each band'));
  for (const capacitor of ['“medium wave”', '“long wave”', '150 pF', '470 pF']) expect(words).toContain(capacitor);
});

test('the wave traps of all bands are in the list of parts and on the switch', () => {
  const set = read('other wave traps on each band, after one of both');
  const words = glanceOf(set);
  for (const part of ['Trap 1 capacitor', 'Trap 2 capacitor, for “medium wave”', 'Trap 2 capacitor, for “long wave”'])
    expect(words).toContain(part);
  expect(bandSwitchSheetWords.way(bandContacts(set)!.poles[0], 0)).toBe('coil “medium”, turn 9; trap 2 to earth');
  const [pole] = bandContacts(read('wave traps in the lead and to earth, with a capacitor'))!.poles;
  expect(bandSwitchSheetWords.way(pole, 1)).toBe('coil “long”, turn 225, through trap 1 and 150 pF; trap 2 to earth');
});

test('what of a full-wave coil is earthed on every band needs no contact', () => {
  const leads = (name: string) => bandContacts(read(name))!.poles.flatMap((pole) => pole.leads);
  expect(leads('full-wave with two coils')).not.toContain('earth');
  expect(leads('full-wave with part of one coil')).toContain('earth');
});

test('sets whose bands differ by more than the switch changes keep their wires to the builder', () => {
  const withOneCoil = (capacitance: string) => ({ kind: 'parallel', coil: 'trap', capacitance });
  for (const more of [
    trapped([withOneCoil('200 pF')], [withOneCoil('400 pF')], coil('trap', 40)),
    {
      coils: [coil('main', 160)],
      arrangement: { kind: 'direct', coil: 'main', usedTurns: 60, traps: [beside] },
      bands: [{ name: 'a' }, { name: 'b', arrangement: { kind: 'direct', coil: 'main' } }],
    },
  ]) {
    const result = readValue({ ...example, ...more });
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    expect(builtBoard(result.set).parts.parts.some(({ kind }) => kind === 'switch')).toBe(false);
    expect(glanceOf(result.set)).toBeTruthy();
  }
});
