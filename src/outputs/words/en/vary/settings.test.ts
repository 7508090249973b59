import { describe, expect, it } from 'vitest';
import type { AdjustmentCode, AdjustmentId } from '../../../../engine/kinds/adjustment.ts';
import type { Change } from '../../../../engine/vary/question.ts';
import { settingsWords } from './settings.ts';

const TRAP = { kind: 'parallel', stops: 'Radio Beech', coil: 'trap' };
const litz = { size: 7e-5, strands: 60 };

/** Each change with what it was and becomes, SI, and its words: a code without a row does not compile. */
const ROWS: Readonly<Record<AdjustmentCode, readonly (readonly [from: unknown, to: unknown, words: string])[]>> = {
  turns: [
    [1, 1.6, 'More turns on every winding, taps in proportion'],
    [72, 40, 'Fewer turns on every winding, taps in proportion'],
  ],
  'arrangement.aerialTap': [
    [11, 20, 'Aerial tap at 20 turns (now 11)'],
    [2, 1, 'Aerial tap at 1 turn (now 2)'],
  ],
  'arrangement.detectorTap': [
    [18, 13.5, 'Detector tap at 13.5 turns (now 18)'],
    [undefined, 13, 'Detector tap at 13 turns'],
  ],
  'arrangement.usedTurns': [[52, 48, '48 turns of the coil in use (now 52)']],
  'arrangement.seriesCapacitor': [
    [1e-10, 4.7e-11, 'Series capacitor of 47 pF (now 100 pF) in the aerial lead'],
    [undefined, 4.7e-11, 'Series capacitor of 47 pF in the aerial lead'],
  ],
  'arrangement.parallelCapacitor': [[1e-10, 2.2e-10, 'Capacitor of 220 pF (now 100 pF) across the coil']],
  'arrangement.distance': [[0.05, 0.12, 'Distance of the coils 120 mm (now 50 mm)']],
  'arrangement.coupling': [[0.05, 0.02, 'Coupling coefficient 2 % (now 5 %)']],
  'arrangement.traps': [
    [undefined, TRAP, 'A wave trap for Radio Beech: coil of 80 turns on a 40 mm tube, in the aerial lead'],
    [
      undefined,
      { ...TRAP, kind: 'series' },
      'A wave trap for Radio Beech: coil of 80 turns on a 40 mm tube, across aerial and earth',
    ],
    [
      undefined,
      { ...TRAP, kind: 'absorption' },
      'A wave trap for Radio Beech: coil of 80 turns on a 40 mm tube, loosely coupled to the coil',
    ],
  ],
  'aerial.height': [[8, 12, 'A higher aerial: 12 m (now 8 m)']],
  'aerial.length': [[20, 30, 'A longer aerial: 30 m (now 20 m)']],
  'aerial.side': [[0.8, 1.2, 'A larger frame: 1.2 m (now 800 mm), 13 turns']],
  'aerial.direction': [[undefined, 130, 'Frame or rod turned to 130°']],
  'aerial.wire': [[{ size: 3e-4 }, litz, 'Litz wire of 60 strands of 0.07 mm']],
  'aerial.turns': [
    [55, 80, 'More turns on the frame or rod: 80 (now 55)'],
    [55, 40, 'Fewer turns on the frame or rod: 40 (now 55)'],
  ],
  'coil.turnsPerLayer': [
    [40, 50, 'More turns in each layer of the coil: 50 (now 40)'],
    [40, 30, 'Fewer turns in each layer of the coil: 30 (now 40)'],
  ],
  'coil.turns': [
    [56, 70, 'More turns on the coil: 70 (now 56)'],
    [56, 40, 'Fewer turns on the coil: 40 (now 56)'],
  ],
  'coil.wire': [[{ size: 3e-4 }, { size: 5e-4 }, 'Thicker wire: 0.5 mm (now 0.3 mm)']],
  'coil.former': [['card', 'styrene', 'A former of styrene (now card)']],
  'tuning.trimmer': [[undefined, 1e-10, 'Capacitor of 100 pF across the tuning capacitor']],
  'tuning.kind': [['foil', { maximum: '500 pF' }, 'A bought tuning capacitor of 500 pF']],
  'tuning.maximum': [[3.65e-10, 5e-10, 'A larger tuning capacitor: 500 pF (now 365 pF)']],
  'earth.kind': [['rod', { count: 3, spacing: '1.5 m' }, 'Earth rods: three like this one, 1.5 m apart']],
  'earth.resistance': [[80, 40, 'A better earth: 40 Ω (now 80 Ω)']],
  'earth.count': [[2, 3, 'More earth rods or wires: 3 (now 2)']],
  'earth.length': [[1.2, 1.8, 'A larger earth: 1.8 m (now 1.2 m)']],
  'earth.side': [[0.5, 0.75, 'A larger earth: 750 mm (now 500 mm)']],
  'detector.spot': [['fair', 'good', 'A good spot on the crystal']],
  'detector.kind': [['silicon', { kind: 'germanium' }, 'A germanium diode']],
  'detector.bias': [[undefined, 0.15, 'A bias of 150 mV']],
  'load.make': [['magnetic', 'balanced armature', 'Balanced-armature phones']],
  'load.transformer.ratio': [
    [undefined, 12, 'A transformer of 12 to 1'],
    [8, 12, 'A transformer of 12 to 1 (now 8 to 1)'],
  ],
  'load.resistor': [[100e3, 68e3, 'A resistor of 68 kΩ (now 100 kΩ) across the earpiece']],
};

const idOf = (code: string): AdjustmentId => code.replace(/^coil\./, 'coils[2].') as AdjustmentId;
const change = (adjustment: AdjustmentId, key: string, to: unknown): Change => ({
  adjustment,
  part: 'aerial',
  path: ['aerial', key],
  from: undefined,
  to,
  effort: 'rewind',
});

describe('each change in words', () => {
  for (const [code, rows] of Object.entries(ROWS))
    it.each(rows)(`${code}: %j to %j`, (from, to, words) => {
      const adjustment = idOf(code);
      const changes = [
        change('aerial.turns', 'turns', 99),
        change(adjustment, 'side', to),
        change(adjustment, 'turns', 13),
      ];
      const coil = { ...change(adjustment, '', { formerDiameter: '40 mm', turns: 80 }), path: ['coils', 1] };
      const also = code === 'aerial.side' ? changes : code === 'arrangement.traps' ? [coil] : [];
      expect(settingsWords({ settings: [{ adjustment, from, to }], changes: also })).toBe(words);
    });

  it('lists several', () => {
    const settings = [
      { adjustment: idOf('arrangement.aerialTap'), from: 11, to: 20 },
      { adjustment: idOf('detector.spot'), from: 'fair', to: 'good' },
    ];
    expect(settingsWords({ settings, changes: [] })).toBe(
      'Aerial tap at 20 turns (now 11); A good spot on the crystal',
    );
  });
});
