import { type ByKind, byKind } from '../../../../engine/kinds/by-kind.ts';
import type { LoadDescription } from '../../../../engine/kinds/loads/load-schema.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';

const ohms = (resistance: number): string => formatQuantity(resistance, 'resistance');

/** With the transformer before it, where there is one. */
const through = (text: string, { transformer }: Pick<LoadDescription, 'transformer'>): string =>
  transformer ? `${text} through a ${formatNumber(transformer.ratio, 3)}:1 transformer` : text;

const MAKES: Record<Extract<LoadDescription, { kind: 'phones' }>['make'], (resistance: string) => string> = {
  'balanced armature': (R) => `A pair of balanced armature phones of ${R}`,
  magnetic: (R) => `A pair of magnetic phones of ${R}`,
};

const TITLES: ByKind<LoadDescription, string> = {
  phones: ({ resistance }) => `Phones, ${ohms(resistance)}`,
  'moving-coil phones': ({ impedance }) => `Moving-coil phones, ${ohms(impedance)}`,
  'crystal earpiece': () => 'Crystal earpiece',
  amplifier: () => 'Amplifier and loudspeaker',
};

const TEXTS: ByKind<LoadDescription, string> = {
  phones: (load) => through(MAKES[load.make](ohms(load.resistance)), load),
  'moving-coil phones': (load) => through(`Moving-coil phones of ${ohms(load.impedance)}`, load),
  'crystal earpiece': (load) =>
    through(
      load.resistor === undefined
        ? `A crystal earpiece of ${formatQuantity(load.capacitance, 'capacitance')} without a resistor across it`
        : `A crystal earpiece of ${formatQuantity(load.capacitance, 'capacitance')} with ${ohms(load.resistor)} across it`,
      load,
    ),
  amplifier: (load) =>
    through(
      load.supply === 'mains'
        ? `An amplifier with an input of ${ohms(load.inputResistance)}, run from the mains`
        : `An amplifier with an input of ${ohms(load.inputResistance)}, run from a battery`,
      load,
    ),
};

/** What the set works into, in one line, as a list of parts has it. */
export const loadText = (load: LoadDescription): string => byKind(TEXTS, load);

/** What a load is to the detector and to the ear, SI. */
interface LoadFigures {
  /** Magnitude of what it alone, without a transformer, has at 1 kHz. */
  readonly impedance: number;
  readonly sensitivity: { readonly level: number; readonly per: keyof typeof RATED; readonly assumed: boolean };
}

/** What a sensitivity is for. */
export const RATED = { mW: '1 mW', V: '1 V', '10 mV': '10 mV' } as const;

export const loadDrawing = {
  figures: ({ impedance, sensitivity: { level, per, assumed } }: LoadFigures): string[] => [
    `${formatQuantity(impedance, 'resistance')} at 1 kHz`,
    `${formatNumber(level, 3)} dB SPL at ${RATED[per]}${assumed ? ' (typical)' : ''}`,
  ],
  ratio: (ratio: number): string => `${formatNumber(ratio, 3)}:1`,
  title: (load: LoadDescription): string => byKind(TITLES, load),
  description: (load: LoadDescription): string => `${loadText(load)}.`,
  volume: 'volume',
};
