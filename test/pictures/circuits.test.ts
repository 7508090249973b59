import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { setCircuit } from '../../src/engine/circuit/set-circuit.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText, readValue } from '../../src/engine/set/read.ts';
import { BODY } from '../../src/outputs/drawings/circuit/symbols.ts';
import { circuitDiagram, disagreements, drawCircuit } from '../../src/outputs/drawings/index.ts';
import { overlap, textBoxes } from '../../src/outputs/scene/boxes.ts';
import { sceneToSvg } from '../../src/outputs/scene/index.ts';
import { expectPicture } from '../support/picture.ts';
import { someSet } from '../support/random-sets.ts';
import { expectTidy } from '../support/tidy.ts';

const circuitOf = (set: SetDescription) => setCircuit(set).assembly.circuitAt(0.5);

/** Bodies stand apart from one another and from all words. */
function expectApart(set: SetDescription): void {
  const diagram = circuitDiagram(set);
  const bodies = diagram.symbols
    .filter((s) => s.kind !== 'transformer')
    .map((s) => {
      const [w, h] = s.kind === 'inductor' && s.arches ? [6 * s.arches, 7] : BODY[s.kind];
      const upright = Math.abs(s.turn) === 90;
      const [hw, hh] = upright ? [h, w] : [w, h];
      const [dx, dy] =
        s.kind === 'amplifier' ? [15, 0] : s.kind === 'aerial' ? [0, -15] : s.kind === 'earth' ? [0, 10] : [0, 0];
      return { name: s.name, box: { x: s.centre[0] + dx - hw, y: s.centre[1] + dy - hh, w: 2 * hw, h: 2 * hh } };
    });
  bodies.forEach((a, i) => {
    for (const b of bodies.slice(i + 1))
      expect(overlap(a.box, b.box, -0.5), `${a.name} stands in ${b.name}`).toBe(false);
  });
  for (const words of textBoxes(drawCircuit(set).items))
    for (const b of bodies) expect(overlap(words.box, b.box, -1), `"${words.text}" lies over ${b.name}`).toBe(false);
}

const examples = readdirSync(inRoot('examples')).filter((f) => f.endsWith('.json'));

describe('examples', () => {
  test.each(examples)('%s: the diagram shows exactly its circuit', async (file) => {
    const read = readText(readFileSync(inRoot('examples', file), 'utf8'));
    if (!read.ok) throw new Error('does not read');
    expect(disagreements(circuitDiagram(read.set), circuitOf(read.set))).toEqual([]);
    const scene = drawCircuit(read.set);
    expectTidy(scene);
    expectApart(read.set);
    await expectPicture(sceneToSvg(scene, { colours: 'day' }), `circuits/example-${file.replace('.json', '')}`);
  });
});

const wire = { size: '26 SWG' };
const base = {
  format: 'faintwave-set/1',
  name: 'Shown',
  place: { name: 'Somewhere', stations: [] },
  aerial: { kind: 'inverted-L', height: '8 m', length: '20 m' },
  earth: { kind: 'rod', length: '1.2 m' },
  coils: [
    { shape: 'solenoid', name: 'main', formerDiameter: '63 mm', turns: 72, wire },
    { shape: 'solenoid', name: 'aerial coil', formerDiameter: '63 mm', turns: 20, wire },
  ],
  tuning: { kind: 'variable', maximum: '500 pF', minimum: '15 pF' },
  detector: { kind: 'galena' },
  load: { kind: 'phones' },
};
const trap = (kind: string) => ({ kind, inductance: '150 µH', capacitance: '200 pF' });
const SETS: Record<string, object> = {
  direct: { arrangement: { kind: 'direct', coil: 'main' } },
  'tapped-doubler': {
    arrangement: { kind: 'tapped', coil: 'main', aerialTap: 20, detectorTap: 45 },
    detector: { kind: 'germanium', wiring: 'doubler' },
  },
  'full-wave': {
    arrangement: { kind: 'tapped', coil: 'main', aerialTap: 50 },
    detector: { kind: 'schottky', wiring: 'full-wave' },
  },
  coupled: {
    arrangement: { kind: 'coupled', coil: 'main', aerialCoil: 'aerial coil', detectorTap: 40 },
    load: { kind: 'crystal earpiece', resistor: '68 kΩ' },
  },
  'two-circuits': {
    arrangement: {
      kind: 'two circuits',
      coil: 'main',
      aerialCoil: 'aerial coil',
      aerialTap: 8,
      aerialTuning: { kind: 'variable', maximum: '400 pF' },
    },
    load: { kind: 'amplifier', couplingCapacitor: '0.1 µF', loadResistor: '47 kΩ' },
  },
  slider: { arrangement: { kind: 'slider', coil: 'main', fewest: 10, detectorTap: 30 } },
  variometer: {
    arrangement: { kind: 'variometer', coil: 'main', rotor: 'aerial coil', parallelCapacitor: '100 pF' },
    detector: { kind: 'mineral', mineral: 'carborundum', bias: '0.8 V' },
  },
  frame: { aerial: { kind: 'frame', side: '0.8 m', turns: 16, wire }, arrangement: { kind: 'frame', detectorTap: 8 } },
  'ferrite-rod': {
    aerial: { kind: 'ferrite rod', length: '160 mm', diameter: '9.5 mm', turns: 55, wire, winding: '30 mm' },
    arrangement: { kind: 'ferrite rod' },
  },
  traps: {
    arrangement: {
      kind: 'tapped',
      coil: 'main',
      aerialTap: 20,
      traps: [trap('parallel'), trap('series'), trap('absorption')],
    },
  },
  'valve-transformer': {
    arrangement: { kind: 'series capacitor', coil: 'main', seriesCapacitor: '100 pF', detectorTap: 50 },
    detector: { kind: 'valve', bias: '0.1 V' },
    load: {
      kind: 'moving-coil phones',
      transformer: { ratio: 12 },
      equalizer: { resistance: '10 kΩ', capacitance: '0.1 µF' },
    },
  },
  elements: {
    arrangement: {
      kind: 'elements',
      elements: [
        { kind: 'capacitor', name: 'in', from: 'aerial', to: 'first', capacitance: '100 pF' },
        { kind: 'coil', name: 'L1', from: 'first', to: 'earth', coil: 'main' },
        { kind: 'tuning', name: 'tuning', from: 'first', to: 'earth' },
        { kind: 'capacitor', name: 'link', from: 'first', to: 'second', capacitance: '5 pF' },
        { kind: 'inductor', name: 'L2', from: 'second', to: 'earth', inductance: '200 µH' },
        { kind: 'mutual', name: 'M', first: 'L1', second: 'L2', mutual: '4 µH' },
        { kind: 'detector', name: 'detector', from: 'second', to: 'out' },
      ],
    },
  },
};

describe('every arrangement', () => {
  test.each(Object.keys(SETS))('%s', async (name) => {
    const read = readValue({ ...base, ...SETS[name] });
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const set = read.set;
    const scene = drawCircuit(set);
    await expectPicture(sceneToSvg(scene, { colours: 'day' }), `circuits/${name}`);
    expect(disagreements(circuitDiagram(set), circuitOf(set))).toEqual([]);
    expectTidy(scene);
    expectApart(set);
  });
});

describe('any set', () => {
  test('the diagram shows exactly its circuit, with nothing over anything else', () => {
    let drawn = 0;
    fc.assert(
      fc.property(someSet, (set) => {
        if (!set) return;
        drawn++;
        expect(disagreements(circuitDiagram(set), circuitOf(set))).toEqual([]);
        expectApart(set);
        expectTidy(drawCircuit(set));
      }),
      { numRuns: 250, seed: 7 },
    );
    expect(drawn).toBeGreaterThan(125);
  });
});

test('a wire cut or moved is found out', () => {
  const read = readValue({ ...base, ...SETS.coupled });
  if (!read.ok) throw new Error('does not read');
  const diagram = circuitDiagram(read.set);
  const circuit = circuitOf(read.set);
  diagram.wires.forEach((_, i) => {
    const cut = { ...diagram, wires: diagram.wires.filter((_, k) => k !== i), dots: [] };
    expect(disagreements(cut, circuit), `without wire ${i}`).not.toEqual([]);
  });
  const turned = {
    ...diagram,
    symbols: diagram.symbols.map((s) => (s.name === 'detector' ? { ...s, terminals: [...s.terminals].reverse() } : s)),
  };
  expect(disagreements(turned, circuit)).not.toEqual([]);
});
