import { type ByKind, byKind } from '../../../../engine/kinds/by-kind.ts';
import type { DetectorDescription } from '../../../../engine/kinds/detectors/detector-schema.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';

type Of<K extends DetectorDescription['kind']> = Extract<DetectorDescription, { kind: K }>;

const MINERALS: Record<Of<'mineral'>['mineral'], { readonly title: string; readonly text: string }> = {
  'iron pyrites': {
    title: 'Iron pyrites detector',
    text: 'A crystal of iron pyrites in its cup with a point pressed on it',
  },
  'zincite-bornite': { title: 'Zincite-bornite detector', text: 'Two crystals pressed together' },
  carborundum: {
    title: 'Carborundum detector',
    text: 'A crystal of carborundum in its cup with a point pressed on it',
  },
  'silicon crystal': {
    title: 'Silicon crystal detector',
    text: 'A crystal of silicon in its cup with a point pressed on it',
  },
};

const GALENA: Record<Of<'galena'>['spot'], string> = {
  good: 'A piece of galena in its cup, touched lightly by a springy wire; a good spot',
  fair: 'A piece of galena in its cup, touched lightly by a springy wire; a fair spot',
  poor: 'A piece of galena in its cup, touched lightly by a springy wire; a poor spot',
};

const small = (): string => 'A small diode; the band marks its cathode';

const TITLES: ByKind<DetectorDescription, string> = {
  galena: () => 'Galena and cat’s whisker',
  mineral: ({ mineral }) => MINERALS[mineral].title,
  germanium: ({ make }) => (make === 'gold-bonded' ? 'Germanium diode, gold-bonded' : 'Germanium diode, point contact'),
  schottky: ({ type }) => `Schottky diode ${type}`,
  silicon: () => 'Silicon diode',
  exponential: () => 'Diode as measured',
  measured: () => 'Detector as measured',
  valve: () => 'Valve diode',
};

const TEXTS: ByKind<DetectorDescription, string> = {
  galena: ({ spot }) => GALENA[spot],
  mineral: ({ mineral }) => MINERALS[mineral].text,
  germanium: () => 'A small glass diode; the band marks its cathode',
  schottky: small,
  silicon: small,
  exponential: () => 'A diode known by its saturation current and ideality factor',
  measured: () => 'A detector known by its measured points',
  valve: ({ heaterVoltage }) =>
    `A valve whose anode collects the electrons that the cathode emits, heater ${formatQuantity(heaterVoltage, 'voltage')}`,
};

/** A detector in one line, as a list of parts has it. */
export const detectorText = (detector: DetectorDescription): string => byKind(TEXTS, detector);

const title = (detector: DetectorDescription): string => byKind(TITLES, detector);

const PAIRS: Record<'full-wave' | 'doubler', { readonly caption: (title: string) => string; readonly text: string }> = {
  'full-wave': { caption: (one) => `${one} (two, full-wave)`, text: 'Two of them, full-wave.' },
  doubler: { caption: (one) => `${one} (two, doubler)`, text: 'Two of them, as a voltage doubler.' },
};

/** What a detector is by its curve, SI. */
interface DetectorFigures {
  /** Slope resistance at the voltage it stands at without a signal. */
  readonly resistance: number;
  /** That voltage; 0 without a bias cell. */
  readonly bias: number;
  /** Of a junction only. */
  readonly ideality?: number;
  readonly capacitance: number;
  readonly heaterVoltage?: number;
}

export const detectorDrawing = {
  figures: ({ resistance, bias, ideality, capacitance, heaterVoltage }: DetectorFigures): string[] => [
    ...(heaterVoltage === undefined ? [] : [`heater ${formatQuantity(heaterVoltage, 'voltage')}`]),
    ...(Number.isFinite(resistance)
      ? [`${formatQuantity(resistance, 'resistance')} at ${formatQuantity(bias, 'voltage')}`]
      : []),
    ...(ideality === undefined ? [] : [`ideality ${formatNumber(ideality, 2)}`]),
    ...(capacitance > 0 ? [`${formatQuantity(capacitance, 'capacitance', 2)} in parallel`] : []),
  ],
  title,
  caption: (detector: DetectorDescription): string =>
    detector.wiring === 'single' ? title(detector) : PAIRS[detector.wiring].caption(title(detector)),
  description: (detector: DetectorDescription): string =>
    [
      `${detectorText(detector)}.`,
      ...(detector.wiring === 'single' ? [] : [PAIRS[detector.wiring].text]),
      ...(detector.bias ? [`Bias cell of ${formatQuantity(detector.bias, 'voltage')}.`] : []),
    ].join(' '),
  handle: 'handle',
  anode: 'anode',
  cathode: 'cathode',
  heater: 'heater',
  band: 'band: cathode',
  cathodeAndHeater: 'cathode and heater',
};
