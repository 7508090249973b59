import fc from 'fast-check';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { readValue } from '../../src/engine/set/read.ts';

/** Anything a person may name: sensible names mostly, some nasty ones. */
const traps = fc.array(
  fc.record({
    kind: fc.constantFrom('series', 'parallel', 'absorption'),
    inductance: fc.constant('150 µH'),
    capacitance: fc.constantFrom('100 pF', '220 pF'),
  }),
  { maxLength: 3 },
);
const turns = fc.integer({ min: 1, max: 100 });
const seriesCapacitor = fc.option(fc.constantFrom('47 pF', '330 pF'), { nil: undefined });
const detectorTap = fc.option(turns, { nil: undefined });
const placing = { distance: fc.constantFrom('0 mm', '60 mm'), tilt: fc.constantFrom(0, 45) };

const arrangement = fc.oneof(
  fc.record({ kind: fc.constant('direct'), coil: fc.constant('main'), detectorTap, traps }),
  fc.record({
    kind: fc.constant('series capacitor'),
    coil: fc.constant('main'),
    seriesCapacitor: fc.constant('100 pF'),
    detectorTap,
    traps,
  }),
  fc.record({
    kind: fc.constant('tapped'),
    coil: fc.constant('main'),
    aerialTap: turns,
    seriesCapacitor,
    detectorTap,
    traps,
  }),
  fc.record({
    kind: fc.constant('coupled'),
    coil: fc.constant('main'),
    aerialCoil: fc.constant('second'),
    seriesCapacitor,
    detectorTap,
    traps,
    ...placing,
  }),
  fc.record({
    kind: fc.constant('two circuits'),
    coil: fc.constant('main'),
    aerialCoil: fc.constant('second'),
    aerialTap: fc.option(fc.integer({ min: 1, max: 40 }), { nil: undefined }),
    aerialTuning: fc.option(fc.constant({ kind: 'variable', maximum: '400 pF' }), { nil: undefined }),
    seriesCapacitor,
    detectorTap,
    traps,
    ...placing,
  }),
  fc.record({
    kind: fc.constant('slider'),
    coil: fc.constant('main'),
    detectorTap,
    fewest: fc.integer({ min: 1, max: 90 }),
    parallelCapacitor: fc.constantFrom('0 pF', '100 pF'),
    traps,
  }),
  fc.record({
    kind: fc.constant('variometer'),
    coil: fc.constant('main'),
    rotor: fc.constant('second'),
    parallelCapacitor: fc.constantFrom('0 pF', '100 pF'),
    traps,
  }),
  fc.record({
    kind: fc.constant('frame'),
    detectorTap: fc.option(fc.integer({ min: 1, max: 16 }), { nil: undefined }),
  }),
  fc.record({
    kind: fc.constant('ferrite rod'),
    detectorTap: fc.option(fc.integer({ min: 1, max: 50 }), { nil: undefined }),
  }),
);

const node = fc.constantFrom('aerial', 'earth', 'out', 'a', 'b', 'c');
const element = fc.oneof(
  fc.record({ kind: fc.constant('resistor'), from: node, to: node, resistance: fc.constant('1 kΩ') }),
  fc.record({ kind: fc.constant('capacitor'), from: node, to: node, capacitance: fc.constant('100 pF') }),
  fc.record({ kind: fc.constant('inductor'), from: node, to: node, inductance: fc.constant('200 µH') }),
  fc.record({ kind: fc.constant('coil'), from: node, to: node, coil: fc.constantFrom('main', 'second') }),
);
/** Elements between chance nodes, with one tuning capacitor and one detector. */
const elements = fc
  .tuple(fc.array(element, { minLength: 1, maxLength: 9 }), node, node, fc.constantFrom('aerial', 'a', 'b'))
  .map(([list, from, to, live]) => ({
    kind: 'elements',
    elements: [
      ...list.map((e, i) => ({ ...e, name: `${e.kind} ${i + 1}` })),
      { kind: 'tuning', name: 'tuning', from, to },
      { kind: 'detector', name: 'detector', from: live, to: 'out' },
    ],
  }));

const transformer = fc.option(fc.constant({ ratio: 10 }), { nil: undefined });
const equalizer = fc.option(fc.constant({ resistance: '10 kΩ', capacitance: '0.1 µF' }), { nil: undefined });
const bypass = fc.constantFrom('0 pF', '1 nF');
const load = fc.oneof(
  fc.record({ kind: fc.constant('phones'), bypass, equalizer, transformer }),
  fc.record({ kind: fc.constant('moving-coil phones'), bypass, equalizer, transformer }),
  fc.record({
    kind: fc.constant('crystal earpiece'),
    resistor: fc.option(fc.constant('68 kΩ'), { nil: undefined }),
    bypass,
    equalizer,
    transformer,
  }),
  fc.record({
    kind: fc.constant('amplifier'),
    loadResistor: fc.option(fc.constant('47 kΩ'), { nil: undefined }),
    couplingCapacitor: fc.option(fc.constant('0.1 µF'), { nil: undefined }),
    bypass,
    equalizer,
    transformer,
  }),
);
const detector = fc.record({
  kind: fc.constantFrom('galena', 'germanium', 'silicon', 'valve'),
  wiring: fc.constantFrom('single', 'full-wave', 'doubler'),
  bias: fc.constantFrom('0 V', '0.2 V'),
});

const clean = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

/** A set that reads without problems, of coils and aerials known by measurement so that it is quick to make. */
export const someSet = fc
  .record({
    arrangement: fc.oneof({ weight: 4, arbitrary: arrangement }, { weight: 1, arbitrary: elements }),
    load,
    detector,
  })
  .map(({ arrangement, load, detector }): SetDescription | undefined => {
    const { kind } = arrangement;
    const aerial =
      kind === 'frame'
        ? { kind, side: '0.6 m', turns: 16, wire: { size: '0.5 mm' } }
        : kind === 'ferrite rod'
          ? { kind, length: '160 mm', diameter: '9.5 mm', turns: 50, wire: { size: '0.3 mm' }, winding: '30 mm' }
          : { kind: 'measured', capacitance: '200 pF', effectiveHeight: '5 m' };
    const coil = (name: string, n: number) => ({
      shape: 'measured',
      name,
      inductance: '200 µH',
      q: 100,
      at: '1 MHz',
      turns: n,
    });
    const read = readValue(
      clean({
        format: 'faintwave-set/1',
        name: 'chance',
        place: { name: 'Somewhere', stations: [] },
        aerial,
        earth: { kind: 'measured', resistance: '80 Ω' },
        coils: [coil('main', 100), coil('second', 40)],
        tuning: { kind: 'variable', maximum: '500 pF', minimum: '15 pF' },
        arrangement,
        detector,
        load,
      }),
    );
    return read.ok ? read.set : undefined;
  });
