import type { DetectorDescription } from '../../../../engine/kinds/detectors/detector-schema.ts';
import type { LoadDescription } from '../../../../engine/kinds/loads/load-schema.ts';
import type { LoopDescription } from '../../../../engine/kinds/loops.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { kHz, ohms } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { listOf } from '../grammar.ts';
import { outputNames } from './circuit.ts';

type LoadKind = LoadDescription['kind'];

/** Where the power for the sound comes from. */
export type PowerSource = 'aerial' | 'aerial, heated valve' | 'amplifier';
const POWER: Readonly<Record<PowerSource, string>> = {
  aerial: 'Nothing powers the set but what the aerial picks up.',
  'aerial, heated valve': 'Nothing powers the sound but what the aerial picks up; the heater only frees the electrons.',
  amplifier: 'Up to the amplifier nothing powers it but what the aerial picks up.',
};

/** A tuned circuit by the tags of its coil and capacitor, as far as they are known. */
interface Circuits {
  readonly aerial: readonly string[];
  readonly detector: readonly string[];
}
const circuit = (name: string, tags: readonly string[]): string =>
  tags.length > 0 ? `${name} (${tags.join(' with ')})` : name;

/** Smoothing after the detector, by what does it. */
export type Smoothing = 'by-pass' | 'earpiece' | 'load';

const HALVES: Readonly<Record<DetectorDescription['wiring'], string>> = {
  single: 'which passes one half',
  'full-wave': 'which passes one half and turns the other over',
  doubler: 'which passes one half',
};

const percent = (x: number): string => `${formatNumber(100 * x, 2)} %`;

/** Why the carrier is modulated otherwise than sent. */
export type Depth =
  | {
      readonly code: 'deeper';
      readonly sent: number;
      readonly shown: number;
      readonly load: LoadKind;
      /** Ω, to direct current and to a tone of 1 kHz. */
      readonly direct: number;
      readonly audio: number;
      /** Share of distortion, where the troughs are cut off. */
      readonly distortion?: number;
    }
  | { readonly code: 'shallower'; readonly sent: number; readonly shown: number };

function depthText(depth: Depth): string {
  const { sent, shown } = depth;
  if (depth.code === 'shallower')
    return `On the tuned circuit the modulation is shallower than sent, ${percent(shown)} instead of ${percent(sent)}: so narrow a circuit weakens the sidebands.`;
  const deeper = `On the tuned circuit the modulation is deeper than sent, ${percent(shown)} instead of ${percent(sent)}: to direct current the ${outputNames[depth.load]} and what leads to them are ${ohms(depth.direct)}, to the tone ${ohms(depth.audio)}, so the detector draws more from the steady carrier and weakens it.`;
  return depth.distortion === undefined
    ? deeper
    : `${deeper} In the troughs almost nothing is left, and that distorts the tone: part of the ${percent(depth.distortion)} distortion comes from there.`;
}

/** Neighbours whose carriers show in the picture. */
function neighboursText(names: readonly string[]): string {
  const who = names.length === 0 || names.length > 2 ? 'neighbouring stations' : listOf(names.map(printable));
  return `The fine ripple along the edges is ${who}, not quite kept out.`;
}

interface Waves {
  readonly load: LoadKind;
  readonly wiring: DetectorDescription['wiring'];
  /** Of the carrier in one of the tone. */
  readonly cycles: number;
  readonly depth?: Depth;
  /** Names of the neighbours that show; none where none does. */
  readonly neighbours?: readonly string[];
}

interface Best {
  readonly station: string;
  readonly frequency: number;
}

const TURN: Readonly<Record<LoopDescription['kind'], (station: string) => string>> = {
  frame: (station) => `Turn the frame until ${station} is weakest. Which way does it point?`,
  'ferrite rod': (station) => `Turn the rod until ${station} is weakest. Which way does it point?`,
};

const BATTERY: Readonly<Record<LoadKind, string>> = {
  phones: 'Why do the phones need no battery, and where does the power for the sound come from?',
  'moving-coil phones': 'Why do the phones need no battery, and where does the power for the sound come from?',
  'crystal earpiece': 'Why does the earpiece need no battery, and where does the power for the sound come from?',
  amplifier: 'What does the amplifier add, and what was there before it?',
};

const SMOOTHING: Readonly<Record<Smoothing, (load: LoadKind) => string>> = {
  'by-pass': () => 'After the by-pass capacitor, as it is heard',
  earpiece: () => 'At the earpiece, a capacitor itself, as it is heard',
  load: (load) => `At the ${outputNames[load]}, as it is heard`,
};

export const handoutSheetWords = {
  title: 'How this set works',
  noStation: 'No station is listed for this place yet; add those you know of, and this page will have its figures.',
  intro: ({ station, frequency, power }: Best & { readonly power: PowerSource }): string =>
    `${printable(station)} on ${kHz(frequency)} kHz, from the aerial to the ear. ${POWER[power]}`,
  twoCircuits: ({ aerial, detector }: Circuits): string =>
    `The signal passes two tuned circuits, both tuned to the station: ${circuit('the aerial’s', aerial)} and ${circuit('the detector’s', detector)}. Only the field that their coils share passes the signal on, so a neighbouring station has to get past both. Closer coils: louder, but less selective; further apart: weaker, but more selective.`,
  stages: { where: 'Where', level: 'How much', happens: 'What happens there' },
  waves: 'Waves of this set over two thousandths of a second',
  lastTrace: (smoothing: Smoothing, load: LoadKind): string => SMOOTHING[smoothing](load),
  picture: ({ load, wiring, cycles, depth, neighbours }: Waves): string =>
    [
      `Top to bottom: the programme, a tone standing for voice and music; the tuned circuit, where the carrier oscillates about ${formatNumber(Math.round(cycles), 4)} times within each cycle of the tone, too fast to be drawn one by one, as much above as below, so that on average there is nothing to hear; after the detector, ${HALVES[wiring]}, the average follows the programme; in the ${outputNames[load]} only that average is left.`,
      ...(depth ? [depthText(depth)] : []),
      ...(neighbours ? [neighboursText(neighbours)] : []),
    ].join(' '),
  toTry: 'To try',
  trials: {
    turn: (kind: LoopDescription['kind'], station: string): string => TURN[kind](printable(station)),
    earth: 'Take the earth off, then put it back. Which loses more: the earth, or half of the aerial?',
    coils: (station: string): string =>
      `Move the two coils apart by a hand’s width and tune again. How much weaker is ${printable(station)}, and how much weaker are its neighbours?`,
    tune: ({ station, bandwidth }: { readonly station: string; readonly bandwidth: number }): string =>
      `Tune past ${printable(station)} both ways. Over how much of the scale can it be heard? The set passes a band of about ${formatQuantity(bandwidth, 'frequency', 2)}.`,
    battery: (load: LoadKind): string => BATTERY[load],
  },
  description: (station: string): string =>
    `The path of ${printable(station)} through the set, with its waves and figures.`,
};
