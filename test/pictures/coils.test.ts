import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { coil as schema } from '../../src/engine/kinds/coils/coil-schema.ts';
import { drawCoil } from '../../src/outputs/drawings/index.ts';
import { type Scene, sceneToSvg } from '../../src/outputs/scene/index.ts';
import type { TapName } from '../../src/outputs/words/index.ts';
import { expectPicture } from '../support/picture.ts';
import { expectTidy } from '../support/tidy.ts';

const enamel = { size: '26 SWG', covering: 'enamel' } as const;
const COILS: Record<string, unknown> = {
  solenoid: { shape: 'solenoid', formerDiameter: '63 mm', turns: 72, wire: enamel },
  'solenoid-few': {
    shape: 'solenoid',
    formerDiameter: '80 mm',
    turns: 12.5,
    wire: { size: '2 mm', covering: 'bare' },
    former: 'air',
    pitch: '5 mm',
  },
  multilayer: {
    shape: 'multilayer',
    formerDiameter: '50 mm',
    turnsPerLayer: 50,
    layers: 4,
    wire: { size: '32 SWG', covering: 'double cotton' },
  },
  'bank-wound': {
    shape: 'bank-wound',
    formerDiameter: '50 mm',
    turns: 60,
    layers: 3,
    wire: { size: '0.6 mm', covering: 'double cotton' },
  },
  spiral: { shape: 'spiral', turns: 30, innerDiameter: '50 mm', wire: enamel, pitch: '1 mm' },
  spider: { shape: 'spider', turns: 50, innerDiameter: '45 mm', wire: enamel },
  'spider-over-two': {
    shape: 'spider',
    turns: 40,
    innerDiameter: '40 mm',
    slots: 13,
    over: 2,
    wire: { size: '0.5 mm', covering: 'double cotton' },
  },
  basket: { shape: 'basket', turns: 55, pegCircle: '75 mm', wire: enamel },
  toroid: { shape: 'core', turns: 60, perTurnSquared: '50 nH', wire: enamel },
  'pot-core': { shape: 'core', turns: 40, perTurnSquared: '250 nH', form: 'pot core', wire: enamel },
  measured: { shape: 'measured', inductance: '200 µH', q: 120, at: '1 MHz' },
};

const made = (name: string) => v.parse(schema, { name, ...(COILS[name] as object) });
const TAPS: { name: TapName; turn: number }[] = [
  { name: 'aerial', turn: 10 },
  { name: 'detector', turn: 25 },
];

describe.each(Object.keys(COILS))('coil: %s', (name) => {
  test('as drawn', async () => {
    const scene: Scene = drawCoil(made(name), { taps: name === 'measured' ? [] : TAPS, part: 'coils.0' });
    expectTidy(scene);
    await expectPicture(sceneToSvg(scene, { colours: 'day' }), `drawings/coil-${name}`);
  });
});

test('a former of 63 mm drawn full size is 63.0 mm high', () => {
  const svg = sceneToSvg(drawCoil(made('solenoid'), { drawnAt: 1 }), { size: 'true' });
  expect(svg).toMatch(/height="63" fill="var\(--card/);
});
