const wire = { size: '26 SWG' };
/** A set without its arrangement. */
export const BASE = {
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
/** What each arrangement adds to it. */
export const SETS: Record<string, object> = {
  direct: { arrangement: { kind: 'direct', coil: 'main' } },
  'tapped-doubler': {
    arrangement: { kind: 'tapped', coil: 'main', aerialTap: 20, detectorTap: 45 },
    detector: { kind: 'germanium', wiring: 'doubler' },
  },
  'full-wave': {
    arrangement: { kind: 'tapped', coil: 'main', aerialTap: 50 },
    detector: { kind: 'schottky', wiring: 'full-wave' },
  },
  'part-of-the-coil-shorted': { arrangement: { kind: 'direct', coil: 'main', detectorTap: 20, usedTurns: 40 } },
  'part-of-the-coil-open': {
    arrangement: { kind: 'tapped', coil: 'main', aerialTap: 15, detectorTap: 25, usedTurns: 50, unusedTurns: 'open' },
  },
  'part-of-the-coil-full-wave': {
    arrangement: { kind: 'series capacitor', coil: 'main', seriesCapacitor: '100 pF', usedTurns: 40 },
    detector: { kind: 'germanium', wiring: 'full-wave' },
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
