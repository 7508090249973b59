import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { aerial } from '../../src/engine/kinds/aerials/aerial-schema.ts';
import { coil } from '../../src/engine/kinds/coils/coil-schema.ts';
import { detector } from '../../src/engine/kinds/detectors/detector-schema.ts';
import { earth } from '../../src/engine/kinds/earths/earth-schema.ts';
import { load } from '../../src/engine/kinds/loads/load-schema.ts';
import { tuning } from '../../src/engine/kinds/tunings/tuning-schema.ts';
import { spiderOutline } from '../../src/outputs/drawings/coil/spider.ts';
import { drawAerial, drawCapacitor, drawDetector, drawLoad } from '../../src/outputs/drawings/index.ts';
import { type Scene, sceneToSvg } from '../../src/outputs/scene/index.ts';
import { expectPicture } from '../support/picture.ts';
import { expectTidy } from '../support/tidy.ts';

const rod = v.parse(earth, { kind: 'rod', length: '1.2 m' });
const lead = v.parse(aerial, { kind: 'inverted-L', height: '8 m', length: '20 m' });
const wire = { size: '0.4 mm' };

const pictures: Record<string, () => Scene> = {
  'capacitor-variable': () =>
    drawCapacitor(v.parse(tuning, { kind: 'variable', maximum: '500 pF' }), { position: 0.35, part: 'tuning' }),
  'capacitor-vanes': () =>
    drawCapacitor(
      v.parse(tuning, {
        kind: 'vanes',
        outerRadius: '28 mm',
        gap: '0.5 mm',
        vanes: 21,
        law: 'straight-line frequency',
        minimum: '30 pF',
      }),
      { position: 0.7 },
    ),
  'capacitor-measured': () =>
    drawCapacitor(
      v.parse(tuning, {
        kind: 'measured',
        points: [
          { scale: '0°', capacitance: '15 pF' },
          { scale: '180°', capacitance: '500 pF' },
        ],
      }),
    ),
  'capacitor-foil': () =>
    drawCapacitor(v.parse(tuning, { kind: 'foil', length: '120 mm', width: '100 mm', thickness: '0.12 mm' }), {
      position: 0.6,
    }),
  'capacitor-tubes': () =>
    drawCapacitor(v.parse(tuning, { kind: 'tubes', length: '200 mm', innerDiameter: '25 mm', gap: '0.2 mm' }), {
      position: 0.4,
    }),
  'capacitor-book': () =>
    drawCapacitor(v.parse(tuning, { kind: 'book', length: '150 mm', width: '100 mm', thickness: '0.2 mm' }), {
      position: 0.5,
    }),
  'capacitor-fixed': () => drawCapacitor(v.parse(tuning, { kind: 'fixed', capacitance: '250 pF' })),
  'aerial-inverted-L': () => drawAerial(lead, rod),
  'aerial-T': () =>
    drawAerial(
      v.parse(aerial, { kind: 'T', height: '12 m', length: '40 m', wires: 2, spacing: '1.5 m' }),
      v.parse(earth, { kind: 'rods', length: '1.2 m', count: 3, spacing: '2 m' }),
    ),
  'aerial-vertical': () =>
    drawAerial(
      v.parse(aerial, { kind: 'vertical', height: '8 m' }),
      v.parse(earth, { kind: 'radials', count: 8, length: '8 m' }),
    ),
  'aerial-horizontal': () =>
    drawAerial(
      v.parse(aerial, { kind: 'horizontal', height: '3 m', length: '15 m' }),
      v.parse(earth, { kind: 'counterpoise', length: '10 m', height: '1 m' }),
    ),
  'aerial-sloping': () =>
    drawAerial(
      v.parse(aerial, { kind: 'sloping', height: '8 m', length: '15 m', farHeight: '2 m' }),
      v.parse(earth, { kind: 'plate', side: '0.6 m', depth: '0.8 m' }),
    ),
  'aerial-bent': () =>
    drawAerial(
      v.parse(aerial, {
        kind: 'bent',
        points: [
          [0, 0, 1],
          [0, 0, 3],
          [8, 0, 6],
          [8, 8, 6],
        ],
      }),
      v.parse(earth, { kind: 'buried wire', length: '10 m' }),
    ),
  'aerial-measured': () =>
    drawAerial(
      v.parse(aerial, { kind: 'measured', capacitance: '200 pF', effectiveHeight: '5 m' }),
      v.parse(earth, { kind: 'measured', resistance: '80 Ω' }),
    ),
  'aerial-frame': () => drawAerial(v.parse(aerial, { kind: 'frame', side: '0.8 m', turns: 16, wire }), rod),
  'aerial-frame-spiral': () =>
    drawAerial(
      v.parse(aerial, {
        kind: 'frame',
        side: '0.6 m',
        turns: 14,
        winding: 'spiral',
        outline: 'square',
        pitch: '8 mm',
        wire,
      }),
      rod,
    ),
  'aerial-rod': () =>
    drawAerial(
      v.parse(aerial, {
        kind: 'ferrite rod',
        length: '160 mm',
        diameter: '9.5 mm',
        turns: 55,
        wire: { size: '0.3 mm' },
        winding: '30 mm',
        position: 0.6,
      }),
      rod,
    ),
  'detector-galena': () => drawDetector(v.parse(detector, { kind: 'galena' })),
  'detector-pair': () => drawDetector(v.parse(detector, { kind: 'mineral', mineral: 'zincite-bornite' })),
  'detector-diodes': () => drawDetector(v.parse(detector, { kind: 'germanium', wiring: 'full-wave' })),
  'detector-valve': () => drawDetector(v.parse(detector, { kind: 'valve' })),
  'load-phones': () => drawLoad(v.parse(load, { kind: 'phones', transformer: { ratio: 10 } })),
  'load-earpiece': () => drawLoad(v.parse(load, { kind: 'crystal earpiece', resistor: '68 kΩ' })),
  'load-amplifier': () => drawLoad(v.parse(load, { kind: 'amplifier' })),
};

test.each(Object.keys(pictures))('%s', async (name) => {
  const scene = pictures[name]();
  expectTidy(scene);
  await expectPicture(sceneToSvg(scene, { colours: 'day' }), `drawings/${name}`);
});

describe('sizes on paper are the sizes of the thing', () => {
  test('an aerial 20 m long is 20 m × the scale', () => {
    const scene = drawAerial(lead, rod);
    const svg = sceneToSvg(scene);
    const top = 20e3 * scene.drawnAt!;
    const lines = [...svg.matchAll(/<line x1="([-\d.]+)" y1="([-\d.]+)" x2="([-\d.]+)" y2="([-\d.]+)"/g)].map((m) =>
      Math.hypot(+m[3] - +m[1], +m[4] - +m[2]),
    );
    expect(Math.min(...lines.map((l) => Math.abs(l - top)))).toBeLessThan(0.002);
  });

  test('the slots of a spider’s disc stand at equal angles from the hub’s own radius', () => {
    const { outline, hub, rim } = spiderOutline(
      v.parse(coil, { shape: 'spider', name: 'web', turns: 50, innerDiameter: '45 mm', wire }) as never,
    );
    const radii = outline.map(([x, y]) => Math.hypot(x, y));
    expect(hub).toBeCloseTo(22.5, 9);
    expect(Math.max(...radii)).toBeCloseTo(rim, 9);
    const roots = outline.filter((_, i) => radii[i] < hub * 1.01);
    expect(roots).toHaveLength(18);
    const middles = Array.from({ length: 9 }, (_, k) => {
      const [a, b] = [roots[2 * k], roots[2 * k + 1]];
      return (Math.atan2(a[1] + b[1], a[0] + b[0]) * 180) / Math.PI;
    });
    middles.forEach((angle, k) => {
      expect(((((angle - 40 * k) % 360) + 540) % 360) - 180).toBeCloseTo(0, 6);
    });
  });
});
