import type { MeasurementKind } from '../../engine/measure/measurements.ts';
import { circle, group, line, text } from '../scene/build.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { textWidth } from '../scene/text-width.ts';
import { type BenchName, benchDiagramWords, measurementName } from '../words/index.ts';
import { arrow, type SymbolKind, symbolItems } from './circuit/symbols.ts';

/** Meters and sources, by the letter in their circle. */
const LETTERS = {
  voltmeter: 'V',
  ammeter: 'A',
  ohmmeter: 'Ω',
  generator: 'G',
  source: '~',
  henries: 'L',
  scope: 'Y',
  analyser: 'N',
  meter: 'M',
} as const;
type Instrument = keyof typeof LETTERS;
type Body = SymbolKind | Instrument;

/** One column of a bench: two rails, what stands between them, and what lies in the upper one. */
type Column =
  | { readonly across: Body; readonly name: BenchName }
  | { readonly series: Body; readonly name: BenchName; readonly meter?: BenchName }
  /** Two in series between the rails; a meter may reach from this middle to the next. */
  | {
      readonly arm: readonly [Body, Body];
      readonly names: readonly [BenchName, BenchName];
      readonly bridged?: BenchName;
    }
  | { readonly end: 'aerial' | 'earth' }
  /** The rails end and begin again: only the fields of two coils meet. */
  | { readonly gap: true }
  | { readonly short: true };

const across = (body: Body, name: BenchName): Column => ({ across: body, name });
const series = (body: Body, name: BenchName, meter?: BenchName): Column => ({ series: body, name, meter });
const GENERATOR = across('generator', 'generator');
const VOLTMETER = across('voltmeter', 'voltmeter');
const COIL = across('inductor', 'coil');
const VARIABLE = across('variable capacitor', 'variable');
const SMALL = series('capacitor', 'small');
const PHONES = across('phones', 'phones');
const DETECTOR = series('diode', 'detector');
const ANALYSER = across('analyser', 'analyser');
const AERIAL: Column = { end: 'aerial' };
const EARTH: Column = { end: 'earth' };

const TUNED = [GENERATOR, SMALL, COIL, VARIABLE, VOLTMETER];
const CURVE = [
  across('cell', 'battery'),
  series('resistor', 'resistor'),
  series('ammeter', 'ammeter'),
  across('diode', 'detector'),
  VOLTMETER,
];

const SETUPS: Readonly<Record<MeasurementKind | 'value', readonly Column[]>> = {
  value: [across('meter', 'instrument'), across('impedance', 'part')],
  resonance: [GENERATOR, SMALL, COIL, across('capacitor', 'known'), VOLTMETER],
  dial: [COIL, VARIABLE, DETECTOR, PHONES],
  detector: CURVE,
  width: TUNED,
  decay: [GENERATOR, SMALL, COIL, VARIABLE, across('scope', 'scope')],
  'decay-record': [GENERATOR, SMALL, COIL, VARIABLE, across('scope', 'scope')],
  'equal-levels': TUNED,
  'capacitance-width': TUNED,
  'detector-leakage': CURVE,
  'detector-voltmeter': [
    across('cell', 'battery'),
    series('resistor', 'knownResistor'),
    across('diode', 'detector'),
    VOLTMETER,
  ],
  'detector-bridge': [
    across('cell', 'battery'),
    { arm: ['resistor', 'diode'], names: ['knownResistor', 'detector'], bridged: 'voltmeter' },
    { arm: ['resistor', 'resistor'], names: ['otherResistor', 'otherResistor'] },
  ],
  'mutual-inductance': [
    across('henries', 'inductanceMeter'),
    series('inductor', 'firstCoil'),
    series('inductor', 'secondCoil'),
    { short: true },
  ],
  'double-hump': [
    GENERATOR,
    SMALL,
    across('inductor', 'firstCoil'),
    { gap: true },
    across('inductor', 'secondCoil'),
    VOLTMETER,
  ],
  'aerial-substitution': [AERIAL, series('capacitor', 'known'), COIL, VARIABLE, DETECTOR, PHONES, EARTH],
  'aerial-replacement': [AERIAL, across('capacitor', 'instead'), COIL, VARIABLE, DETECTOR, PHONES, EARTH],
  'aerial-resistance': [AERIAL, series('resistor', 'added'), COIL, VARIABLE, DETECTOR, VOLTMETER, EARTH],
  'earth-electrodes': [
    across('source', 'source'),
    series('ammeter', 'ammeter'),
    across('earth', 'auxiliary1'),
    VOLTMETER,
    across('earth', 'earth'),
  ],
  'earth-comparison': [AERIAL, COIL, VARIABLE, DETECTOR, VOLTMETER, EARTH],
  'phones-resistance': [across('ohmmeter', 'ohmmeter'), PHONES],
  'phones-impedance': [GENERATOR, series('resistor', 'knownResistor', 'voltmeter'), PHONES, VOLTMETER],
  'phones-sound-card': [
    across('generator', 'output'),
    across('scope', 'inputA'),
    series('resistor', 'resistor'),
    PHONES,
    across('scope', 'inputB'),
  ],
  audibility: [COIL, DETECTOR, PHONES, across('resistor', 'shunt')],
  'field-strength': [AERIAL, COIL, VARIABLE, DETECTOR, series('ammeter', 'ammeter'), across('resistor', 'load'), EARTH],
  'analyser-coil': [ANALYSER, COIL],
  'analyser-capacitor': [ANALYSER, VARIABLE],
  'analyser-aerial': [ANALYSER, AERIAL, EARTH],
  'analyser-earpiece': [ANALYSER, across('earpiece', 'earpiece')],
  'analyser-transformer': [ANALYSER, across('inductor', 'primary'), { gap: true }, across('inductor', 'secondary')],
  'analyser-peak': [across('analyser', 'port1'), SMALL, COIL, VARIABLE, SMALL, across('analyser', 'port2')],
};

const LETTER = 14;
const INK = { stroke: 'ink', width: 1.5 } as const;
const WIRE = { stroke: 'ink', width: 1.2 } as const;
const RADIUS = 13;
const TOP = 62;
const FLOOR = 166;
const MARGIN = 8;
/** Of a column: narrower ones would let neighbours touch, wider ones tear the circuit apart. */
const NARROWEST = 44;
const WIDEST = 104;

const isInstrument = (body: Body): body is Instrument => Object.hasOwn(LETTERS, body);
/** From the middle of a body to its terminal. */
const halfOf = (body: Body): number =>
  isInstrument(body)
    ? RADIUS
    : body === 'inductor'
      ? 18
      : body === 'phones'
        ? 22
        : body === 'resistor' || body === 'impedance'
          ? 15
          : body === 'earpiece'
            ? 11
            : body === 'diode'
              ? 9
              : 3;

/** A body about a point, its terminals to the left and right, or above and below. */
function bodyItems(body: Body, at: Point, isUpright: boolean): Item[] {
  if (isInstrument(body))
    return [
      circle(at, RADIUS, { ...INK, fill: 'paper' }),
      text(at, LETTERS[body], LETTER, { anchor: 'middle', sits: 'middle', bold: true }),
    ];
  return [group(symbolItems(body, 3), { move: at, turn: isUpright ? 90 : 0 })];
}

/** The end of a lead that is clipped on. */
const clip = (at: Point): Item => circle(at, 3, { ...INK, fill: 'paper' });

const namesOf = (column: Column): string[] => {
  const { names, across: acrossText, inSeries, overNext, between, coupled } = benchDiagramWords;
  if ('across' in column) return [acrossText(names[column.name])];
  if ('series' in column) {
    const lies = inSeries(names[column.name]);
    return column.meter ? [lies, overNext(names[column.meter], names[column.name])] : [lies];
  }
  if ('arm' in column)
    return [...column.names.map((name) => names[name]), ...(column.bridged ? [between(names[column.bridged])] : [])];
  if ('end' in column) return [names[column.end]];
  return 'gap' in column ? [coupled] : [];
};

/**
 * How a measurement is connected: a source to the left, what reads to the right, clips as open circles.
 * @param kind of measurement
 * @param options width px, 280 and up
 * @returns a scene, px; not to scale
 */
export function benchConnection(
  kind: MeasurementKind | 'value',
  { width = 560 }: { readonly width?: number } = {},
): Scene {
  const columns = SETUPS[kind];
  const { names } = benchDiagramWords;
  const pitch = Math.min(WIDEST, Math.max(NARROWEST, (Math.max(280, width) - 2 * MARGIN) / columns.length));
  const whole = Math.max(280, width);
  const left = (whole - pitch * columns.length) / 2;
  const xOf = (i: number) => left + pitch * (i + 0.5);
  const middle = (TOP + FLOOR) / 2;
  const items: Item[] = [];
  const labels: Item[] = [];
  let row = 0;
  const hasEarth = columns.some((column) => 'end' in column && column.end === 'earth');
  /** Names below take turns in two rows, so that each has the room of two columns. */
  const below = (x: number, name: BenchName): void => {
    const words = names[name];
    const half = textWidth(words, LETTER) / 2;
    const at = Math.min(whole - half - 2, Math.max(half + 2, x));
    labels.push(text([at, FLOOR + (hasEarth ? 40 : 24) + 18 * row], words, LETTER, { anchor: 'middle' }));
    row = 1 - row;
  };
  /** Names above stand higher where the one before is near. */
  const above = (i: number, name: BenchName): void => {
    const before = columns[i - 1];
    const isHigh = before !== undefined && 'series' in before;
    const isByAerial = before !== undefined && 'end' in before;
    const y = TOP - (isHigh ? 42 : isByAerial ? 16 : 22);
    labels.push(text([xOf(i), y], names[name], LETTER, { anchor: 'middle' }));
  };
  const ends = (i: number): boolean => columns[i] === undefined || 'gap' in columns[i];
  const isEarth = (i: number): boolean => {
    const column = columns[i];
    return column !== undefined && 'end' in column && column.end === 'earth';
  };
  columns.forEach((column, i) => {
    const x = xOf(i);
    const [before, after] = [ends(i - 1) ? 0 : -pitch / 2, ends(i + 1) ? 0 : pitch / 2];
    const rail = (y: number, from = x + before, to = x + after): void => {
      if (to > from) items.push(line([from, y], [to, y], WIRE));
    };
    if ('gap' in column) {
      items.push(
        ...arrow([x + 8, TOP + 34], [x - 8, TOP + 34], 'soft'),
        ...arrow([x - 8, TOP + 44], [x + 8, TOP + 44], 'soft'),
      );
      return;
    }
    rail(FLOOR);
    if ('series' in column) {
      const half = halfOf(column.series);
      rail(TOP, x + before, x - half);
      rail(TOP, x + half, x + after);
      items.push(...bodyItems(column.series, [x, TOP], false));
      above(i, column.name);
      if (column.meter) {
        const y = TOP + 40;
        items.push(
          line([x - half - 4, TOP], [x - half - 4, y], WIRE),
          line([x - half - 4, y], [x + half + 4, y], WIRE),
          line([x + half + 4, y], [x + half + 4, TOP], WIRE),
          clip([x - half - 4, TOP]),
          clip([x + half + 4, TOP]),
          ...bodyItems('voltmeter', [x, y], false),
        );
      }
      return;
    }
    // To the aerial from the left or right, and no farther than the last thing that hangs on it.
    if (!('end' in column)) rail(TOP, x + before, isEarth(i + 1) ? x : x + after);
    else if (column.end === 'aerial') rail(TOP, x + before, x + (i === 0 ? after : 0));
    if ('short' in column) {
      items.push(line([x, TOP], [x, FLOOR], WIRE));
    } else if ('end' in column) {
      items.push(group(symbolItems(column.end), { move: [x, column.end === 'aerial' ? TOP : FLOOR] }));
      if (column.end === 'aerial') labels.push(text([x, TOP - 34], names.aerial, LETTER, { anchor: 'middle' }));
      else below(x, 'earth');
    } else if ('arm' in column) {
      const [upper, lower] = [TOP + (FLOOR - TOP) / 4, FLOOR - (FLOOR - TOP) / 4];
      items.push(
        line([x, TOP], [x, FLOOR], WIRE),
        ...bodyItems(column.arm[0], [x, upper], true),
        ...bodyItems(column.arm[1], [x, lower], true),
      );
      labels.push(
        text([x + 14, upper], names[column.names[0]], LETTER, { sits: 'middle' }),
        text([x + 14, lower], names[column.names[1]], LETTER, { sits: 'middle' }),
      );
      if (column.bridged)
        items.push(
          line([x, middle], [x + pitch, middle], WIRE),
          ...bodyItems('voltmeter', [x + pitch / 2, middle], false),
          clip([x, middle]),
          clip([x + pitch, middle]),
        );
    } else {
      const { across: body } = column;
      if (body === 'earth')
        items.push(line([x, TOP], [x, FLOOR - 30], WIRE), group(symbolItems('earth'), { move: [x, FLOOR - 30] }));
      else {
        const half = halfOf(body);
        items.push(
          line([x, TOP], [x, middle - half], WIRE),
          line([x, middle + half], [x, FLOOR], WIRE),
          ...bodyItems(body, [x, middle], true),
        );
        if (isInstrument(body)) items.push(clip([x, TOP]), clip([x, FLOOR]));
      }
      below(x, column.name);
    }
  });
  return {
    unit: 'px',
    width: whole,
    height: FLOOR + (hasEarth ? 68 : 52),
    title: benchDiagramWords.title(measurementName(kind)),
    description: benchDiagramWords.description(columns.flatMap(namesOf)),
    items: [...items, ...labels],
  };
}
