import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { setCircuit } from '../../src/engine/built/set-circuit.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readText, readValue } from '../../src/engine/set/read.ts';
import { BODY } from '../../src/outputs/drawings/circuit/symbols.ts';
import { circuitDiagram, drawCircuit } from '../../src/outputs/drawings/index.ts';
import { overlap, textBoxes } from '../../src/outputs/scene/boxes.ts';
import { sceneToSvg } from '../../src/outputs/scene/index.ts';
import { BASE, SETS } from '../support/every-arrangement.ts';
import { disagreements } from '../support/nets.ts';
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

describe('what the set works into', () => {
  test.each([
    ['phones', 'phones'],
    ['moving-coil phones', 'phones'],
    ['crystal earpiece', 'earpiece'],
    ['amplifier', 'amplifier'],
  ] as const)('%s: the symbol and the description say so, and name no other', (kind, name) => {
    const read = readValue({ ...BASE, ...SETS.direct, load: { kind } });
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const named = circuitDiagram(read.set)
      .symbols.filter((s) => s.at === 'load')
      .map((s) => s.name);
    const { description } = drawCircuit(read.set);
    for (const one of ['phones', 'earpiece', 'amplifier']) {
      expect(named.includes(one), one).toBe(one === name);
      expect(new RegExp(`\\b${one} (\\(|from)`).test(description), one).toBe(one === name);
    }
  });
});

describe('every arrangement', () => {
  test.each(Object.keys(SETS))('%s', async (name) => {
    const read = readValue({ ...BASE, ...SETS[name] });
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
  const read = readValue({ ...BASE, ...SETS.coupled });
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
