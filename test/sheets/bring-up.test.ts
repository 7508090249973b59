import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { builtSet } from '../../src/engine/built/built-set.ts';
import { setCircuit } from '../../src/engine/built/set-circuit.ts';
import { soundReadings } from '../../src/engine/faults/sound-readings.ts';
import { usedTurns } from '../../src/engine/kinds/arrangements/used-turns.ts';
import { isLoop } from '../../src/engine/kinds/loops.ts';
import { ofHundred } from '../../src/engine/reception/detection/crystal-survey.ts';
import { receive } from '../../src/engine/reception/path/receive.ts';
import { receiver } from '../../src/engine/reception/path/receive-station.ts';
import type { Reception, Verdict } from '../../src/engine/reception/path/types.ts';
import { turnSwitch } from '../../src/engine/set/band-switch.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText, readValue } from '../../src/engine/set/read.ts';
import { receiveRanged } from '../../src/engine/uncertainty/receive-ranged.ts';
import { boardParts } from '../../src/outputs/sheets/board/parts.ts';
import { type Sheet, type SheetId, sheetsFor } from '../../src/outputs/sheets/index.ts';
import { aerialDial } from '../../src/outputs/sheets/pages/aerial-dial.ts';
import { bringUpSteps } from '../../src/outputs/sheets/pages/bring-up-steps.ts';
import { faultsOf } from '../../src/outputs/sheets/pages/faults.ts';
import { resistanceOnMeter } from '../../src/outputs/sheets/pages/resistance-on-meter.ts';
import { bringUpStep, faultCautionTexts, faultRow } from '../../src/outputs/words/index.ts';
import { BASE, SETS } from '../support/every-arrangement.ts';
import { placedOn, wordsOn } from './on-paper.ts';

const STATIONS = [
  { name: 'Saltmarsh Radio', frequency: '603 kHz', power: '50 kW', distance: '38 km' },
  { name: 'The Lantern Service', frequency: '909 kHz', power: '140 kW', distance: '64 km' },
  { name: 'Quayside', frequency: '1458 kHz', power: '2 kW', distance: '14 km' },
];

interface Case {
  readonly set: SetDescription;
  readonly reception: Reception;
  readonly sheets: readonly Sheet[];
}

const MINE: readonly SheetId[] = ['glance', 'dial', 'bring-up', 'cautions', 'handout'];
const examples = readdirSync(inRoot('examples')).filter((f) => f.endsWith('.json'));
const NAMES = [...examples, ...Object.keys(SETS)];
const cases = new Map<string, Case>();
const made = (name: string): Case => cases.get(name)!;

beforeAll(() => {
  for (const name of NAMES) {
    const result = examples.includes(name)
      ? readText(readFileSync(inRoot('examples', name), 'utf8'))
      : readValue({ ...BASE, place: { name: 'Little Withy', stations: STATIONS }, ...SETS[name] });
    if (!result.ok) throw new Error(`${name} does not read`);
    const reception = receive(result.set, {});
    cases.set(name, {
      set: result.set,
      reception,
      sheets: sheetsFor(result.written, result.set, reception, { only: MINE }),
    });
  }
});

const readingsOf = (set: SetDescription) => soundReadings(builtSet(set), {});
const sheetOf = (name: string, id: SheetId): Sheet => made(name).sheets.find((s) => s.id === id)!;
const textOf = (sheet: Sheet): string => sheet.pages.flatMap((p) => wordsOn(p.scene).map((w) => w.text)).join(' ');

describe.each(NAMES)('%s', (name) => {
  test('no heading stands alone at the foot of a page', () => {
    for (const id of ['dial', 'bring-up', 'cautions', 'handout'] as const)
      for (const { blocks, scene } of sheetOf(name, id).pages) {
        const isRuler = (b: (typeof blocks)[number]): boolean =>
          b.alt?.startsWith('Test ruler') ||
          b.items.some((i) => i.kind === 'text' && i.text.startsWith('Print at 100 %'));
        const flowing = blocks.filter((b) => !isRuler(b));
        const last = flowing.map((b) => b.tag).lastIndexOf('H2');
        if (last >= 0)
          expect(
            flowing.slice(last + 1).some((b) => b.tag === 'P' || b.tag === 'Figure'),
            scene.title,
          ).toBe(true);
      }
  });

  test('only what the set has is looked for when it is silent', () => {
    const { set } = made(name);
    const words = faultsOf(set)
      .map(({ symptom, causes }) => faultRow(symptom, causes)[1])
      .join(' ');
    const { parts } = boardParts(set);
    const amplified = set.load.kind === 'amplifier';
    expect(/phones/.test(words)).toBe(/phones/.test(set.load.kind));
    expect(/earpiece/.test(words)).toBe(set.load.kind === 'crystal earpiece');
    expect(/amplifier/.test(words)).toBe(amplified);
    expect(/by-pass/.test(words)).toBe(set.load.bypass > 0);
    if (set.detector.kind !== 'galena' && set.detector.kind !== 'mineral') expect(words).not.toMatch(/whisker|spot/);
    if (set.detector.kind !== 'valve') expect(words).not.toMatch(/heater|valve/);
    if (isLoop(set.aerial)) expect(words).not.toMatch(/earth|lead-in|trap for/);
    if (!parts.some((p) => p.kind === 'variable')) expect(words).not.toMatch(/vanes|capacitor smaller/);
    if (!parts.some((p) => p.terminals.some((t) => / tap /.test(t)))) expect(words).not.toMatch(/taps counted/);
    for (const tag of words.match(/\b[A-Z]\d+\b/g) ?? [])
      expect([...parts.map((p) => p.tag), 'P1', 'P2'], words).toContain(tag);
  });

  test('a station is heard alike on every sheet', () => {
    const { set, reception } = made(name);
    // A band switch: the bring-up sheet has a list of each band.
    const onBands = set.bands ? set.bands.map((_, band) => receive(turnSwitch(set, band))) : [reception];
    for (const id of ['glance', 'dial', 'bring-up'] as const) {
      const rows = sheetOf(name, id).pages.flatMap((p) =>
        p.blocks.map((b) => b.items.flatMap((i) => (i.kind === 'text' ? [i.text] : []))),
      );
      for (const s of reception.stations) {
        const found = rows.filter((row) => row[0] === s.name && row.length > 4);
        const verdicts = id === 'bring-up' ? onBands.map(({ stations }) => stations[s.index].verdict) : [s.verdict];
        for (const row of found)
          expect(
            row.filter((text) => verdicts.includes(text as Verdict)),
            `${id}: ${s.name}`,
          ).toHaveLength(1);
      }
    }
  });

  test('every winding has its resistance, as its wire has it', () => {
    const { set, reception } = made(name);
    const steps = bringUpSteps(set, reception, readingsOf(set));
    const read = new Map(steps.flatMap((s) => (s.code === 'coil-resistance' ? [[s.coil, s.resistance] as const] : [])));
    set.coils.forEach(({ name: coil, shape }, i) => {
      const R = reception.parts.coils[i].dcResistance;
      if (shape === 'measured' || !Number.isFinite(R)) return;
      const made = setCircuit(set).coils[i];
      const { used, rest } = usedTurns(set.arrangement, made.turns);
      // Turns that the wiring shorts are not in the way of a meter on the coil's ends.
      const share = i === 0 && rest === 'shorted' ? made.wireShare(0, used) : 1;
      expect(read.get(coil)! / (share * R), coil).toBeCloseTo(1, 1);
    });
    const loop = steps.find((s) => s.code === 'loop-resistance');
    expect(loop !== undefined).toBe(isLoop(set.aerial));
    if (loop) expect(loop.resistance / setCircuit(set).loop!.dcResistance).toBeCloseTo(1, 1);
  });

  test('how it works is told on one page', () => {
    expect(sheetOf(name, 'handout').pages).toHaveLength(1);
  });

  test('the volume is spoken of once, and only where there is one', () => {
    const words = textOf(sheetOf(name, 'cautions'));
    expect(words.match(/volume/g)?.length ?? 0).toBe(made(name).set.load.kind === 'amplifier' ? 1 : 0);
    expect(words).not.toMatch(/\bHT\b/);
    expect(/accumulator/i.test(words)).toBe(made(name).set.detector.kind === 'valve');
  });
});

test('the sheet of a coil and the first trial give it one resistance, between the same limits', () => {
  for (const name of ['medium-wave-galena.json', 'slider-set.json', 'long-wave-foil.json']) {
    const { set, reception } = made(name);
    const [coils, trial] = (['coil', 'bring-up'] as const).map((id) =>
      sheetsFor({}, set, reception, { only: [id] })
        .map(textOf)
        .join(' '),
    );
    const figure = /[\d.]+ k?Ω \([\d.]+–[\d.]+\)(?= by an ordinary meter)/.exec(coils)![0];
    expect(trial, name).toContain(figure);
  }
});

test('a low resistance is read with the meter’s leads subtracted, on both sheets', () => {
  const { set, reception } = made('medium-wave-galena.json');
  const [coil] = sheetsFor({}, set, reception, { only: ['coil'] });
  expect(textOf(coil)).toContain('with the reading of its leads touched together subtracted');
  expect(textOf(sheetOf('medium-wave-galena.json', 'bring-up'))).toContain('touch the meter’s leads together first');
  const fine = resistanceOnMeter(20);
  expect(fine.leads).toBe('within');
  expect(fine.low).toBeCloseTo(18.4, 9);
  expect(fine.high).toBeCloseTo(21.9, 9);
});

test('what a meter shows of a crystal is said to depend on the meter, and its highest range is warned of', () => {
  const text = textOf(sheetOf('medium-wave-galena.json', 'bring-up'));
  expect(text).toContain('this depends on the meter');
  expect(text).toContain(faultCautionTexts['no-high-ohm-range']);
  expect(textOf(sheetOf('medium-wave-germanium-amplifier.json', 'bring-up'))).not.toContain('highest resistance range');
});

describe('two circuits tuned by hand', () => {
  test('the second capacitor is set where the detector gets most', () => {
    const { set, reception } = made('two-tuned-circuits.json');
    const dial = aerialDial(set)!;
    const { network } = receiver(setCircuit(set));
    for (const s of reception.stations) {
      const other = dial.positionOf(s);
      const view = network.at(s.frequency);
      const level = (at: number): number => view.level(1 / s.detectorInputResistance, s.dial!.position, at);
      expect(level(other)).toBeGreaterThan(level(other - 0.02));
      expect(level(other)).toBeGreaterThan(level(other + 0.02));
    }
  });

  test('both are tested, and both have a dial', () => {
    const { set, reception } = made('two-tuned-circuits.json');
    const steps = bringUpSteps(set, reception, readingsOf(set));
    expect(steps.flatMap((s) => (s.code === 'capacitor-insulation' ? [s.tag] : [])).sort()).toEqual(['C1', 'C2']);
    const acts = steps.map((s) => bringUpStep(s).act);
    for (const tag of ['C1', 'C2']) expect(acts.some((a) => a.startsWith(`Take one wire off ${tag},`))).toBe(true);
    expect(acts.some((a) => /^Set C1 to \d+° and C2 to \d+°/.test(a))).toBe(true);
    const titles = sheetOf('two-tuned-circuits.json', 'dial').pages.flatMap((p) =>
      placedOn(p.scene.items).map((i) => i.item.title ?? ''),
    );
    expect(titles).toContain('C2 station Quayside');
  });

  test('one dial where the two are turned by one knob', () => {
    const { set } = made('two-tuned-circuits.json');
    if (set.arrangement.kind !== 'two circuits') throw new Error('not of two circuits');
    expect(aerialDial({ ...set, arrangement: { ...set.arrangement, ganged: true } })).toBeUndefined();
    expect(aerialDial(made('medium-wave-galena.json').set)).toBeUndefined();
  });
});

test('what a hot cathode sends without a station is told from what the station adds', () => {
  const { set } = made('ferrite-rod-valve-diode.json');
  const fact = bringUpSteps(set, receiveRanged(set), readingsOf(set)).find((s) => s.code === 'standing-voltage')!;
  expect(fact.from).toBe('cathode');
  expect(fact.change).toBeCloseTo(fact.voltage - fact.standing, 12);
  expect(bringUpStep(fact).expect).toMatch(
    /^About 2\d\d mV with no station, from the hot cathode\. With the station 3\d\d mV, that is \d\d mV more \(/,
  );
});

test('a crystal is tried with one wire off, and by the spot that the sheets are calculated with', () => {
  for (const [name, spot] of [
    ['two-tuned-circuits.json', 'good'],
    ['medium-wave-galena.json', 'fair'],
  ] as const) {
    const { set, reception } = made(name);
    const fact = bringUpSteps(set, reception, readingsOf(set)).find((s) => s.code === 'crystal')!;
    expect(fact.spot?.quality).toBe(spot);
    expect(fact.spot?.others.map(({ quality }) => quality)).not.toContain(spot);
    const step = bringUpStep(fact);
    expect(step.act).toMatch(/^Take one wire off D1\./);
    expect(step.expect).toContain(`calculated with a ${spot} spot`);
  }
});

test('shares of a hundred add up to a hundred', () => {
  expect(ofHundred([0.628, 0.202, 0.126, 0.04, 0.004])).toEqual([63, 20, 12, 4, 1]);
  expect(ofHundred([1, 1, 1])).toEqual([34, 33, 33]);
  expect(ofHundred([0.995, 0.001, 0.001, 0.001, 0.002])).toEqual([96, 1, 1, 1, 1]);
  expect(ofHundred([0, 0])).toEqual([0, 0]);
  expect(ofHundred([0.5, 0, 0.5])).toEqual([50, 0, 50]);
});

test('a slow carrier is drawn whole, without beats between its crests and the columns of the drawing', () => {
  const page = sheetOf('long-wave-foil.json', 'handout').pages[0];
  const bands = placedOn(page.scene.items).flatMap(({ item, put }) =>
    item.kind === 'polyline' && item.closed && item.points.length > 200 ? [item.points.map(put)] : [],
  );
  // The programme's own trace is a line, so the first outline is the carrier's.
  const [carrier] = bands;
  const tuned = carrier.slice(0, carrier.length / 2);
  const zero = (Math.min(...carrier.map((p) => p[1])) + Math.max(...carrier.map((p) => p[1]))) / 2;
  const near = tuned.slice(0, Math.floor(tuned.length / 20)).map((p) => zero - p[1]);
  expect(Math.min(...near) / Math.max(...near)).toBeGreaterThan(0.85);
});
