import { type ByKind, byKind } from '../../../../engine/kinds/by-kind.ts';
import type { LoadDescription } from '../../../../engine/kinds/loads/load-schema.ts';
import type { DetectionLaw } from '../../../../engine/reception/detection/detection-law.ts';
import type { FieldFacts, StageFacts, ToneFacts } from '../../../../engine/reception/path/stage-facts.ts';
import type { Stage } from '../../../../engine/reception/path/types.ts';
import { formatNumber, formatQuantity, quantityText } from '../../../../engine/units/format.ts';
import { bandwidthText } from '../../figures.ts';
import { RATED } from '../drawings/load.ts';
import { hearingSentence } from './stations.ts';

type FactsOf<Id extends StageFacts['stage']> = Extract<StageFacts, { stage: Id }>;
type ByStage = { readonly [Id in StageFacts['stage']]: (facts: FactsOf<Id>) => string };

const at = <Id extends StageFacts['stage']>(table: ByStage, facts: FactsOf<Id>): string =>
  (table[facts.stage as Id] as (facts: FactsOf<Id>) => string)(facts);

const length = (metres: number): string => formatQuantity(metres, 'length', 2);
const voltage = (volts: number): string => formatQuantity(volts, 'voltage', 2);
const resistance = (ohms: number): string => formatQuantity(ohms, 'resistance', 2);
const percent = (share: number): string => `${formatNumber(100 * share, 2)} %`;
const level = (dB: number): string => `${formatNumber(Math.round(dB), 4)} dB SPL`;

/** Powers below this are nothing a builder could tell from none, W. */
const LEAST_POWER = 1e-18;
const power = (watts: number): string => (watts < LEAST_POWER ? '<1 aW' : formatQuantity(watts, 'power', 2));

const TITLES: ByStage = {
  field: () => 'Field at the site',
  aerial: () => 'In the aerial',
  'tuned circuit': () => 'On the tuned circuit',
  detector: () => 'At the detector',
  audio: () => 'After the detector',
  phones: ({ listening }) => (listening === 'phones' ? 'In the phones' : 'In the amplifier'),
  ear: () => 'At the ear',
};

/** "Field at the site", "On the tuned circuit" … */
export const stageTitle = ({ facts }: Pick<Stage, 'facts'>): string => at(TITLES, facts);

/** The level of a stage in pieces, so that its figure can be large and what it is of give way. */
export interface StageFigure {
  readonly figure: string;
  readonly unit: string;
  /** "peak audio"; empty where the unit says all. */
  readonly of: string;
}

export function stageFigure({ id, value, kind }: Pick<Stage, 'id' | 'value' | 'kind'>): StageFigure {
  if (value === undefined) return UNKNOWN;
  switch (id) {
    case 'field':
      return { ...quantityText(value, kind, 2), of: '' };
    case 'aerial':
    case 'tuned circuit':
    case 'detector':
      return { ...quantityText(value, 'voltage', 2), of: 'peak' };
    case 'audio':
      return { ...quantityText(value, 'voltage', 2), of: 'peak audio' };
    case 'phones':
      return value < LEAST_POWER
        ? { figure: '<1', unit: 'aW', of: '' }
        : { ...quantityText(value, 'power', 2), of: '' };
    case 'ear':
      return { figure: formatNumber(Math.round(value), 4), unit: 'dB SPL', of: '' };
  }
}
const UNKNOWN: StageFigure = { figure: '—', unit: '', of: '' };

/** The level of a stage with its unit: "3.2 mV/m", "27 mV peak". */
export function stageLevel(stage: Pick<Stage, 'id' | 'value' | 'kind'>): string {
  const { figure, unit, of } = stageFigure(stage);
  return [figure, unit, of].filter((piece) => piece !== '').join(' ');
}

/** Distance of a ground wave, with what of it is sea. */
const groundWay = ({ distance = 0, sea }: FieldFacts): string =>
  sea > 0 && sea < distance ? `${length(distance)}, ${length(sea)} of it sea` : length(distance);

const FIELD: Readonly<Record<FieldFacts['how'], (facts: FieldFacts) => string>> = {
  'as given': () => 'As given in the description.',
  'ground wave': (facts) => `Ground wave over ${groundWay(facts)}; give a measured field if you have one.`,
  'sky wave': ({ distance = 0, departureAngle = 0 }) =>
    `Sky wave over ${length(distance)}, departure angle ${formatQuantity(departureAngle, 'angle', 2)}: the median of a level that fades.`,
  both: (facts) =>
    `Ground wave over ${groundWay(facts)} and sky wave are about equal: they interfere, and the station fades.`,
  nothing: () =>
    'The field strength is not known: give a measured field, or a power with a distance or both positions.',
  'off the air': () => 'The station is off the air at this time.',
};

const LAW: Readonly<Record<DetectionLaw, string>> = {
  square: 'Square law with this load: half the carrier would give about a quarter of the sound.',
  'faster than square':
    'Below square law: the carrier is too small for the bend of the curve, and half of it would give less than a quarter of the sound.',
  between: 'It works between square law and linear detection.',
  linear: 'Linear detection: the output follows the envelope of the carrier.',
};

const LOADS: ByKind<LoadDescription, string> = {
  phones: ({ make }) => (make === 'balanced armature' ? 'Balanced-armature phones' : 'Magnetic phones'),
  'crystal earpiece': () => 'Crystal earpiece',
  'moving-coil phones': () => 'Moving-coil phones',
  amplifier: () => 'Amplifier',
};
const loadTitle = (load: LoadDescription): string => {
  const name = byKind(LOADS, load);
  return 'transformer' in load && load.transformer ? `${name} through a transformer` : name;
};

const PROGRAMMES: Readonly<Record<ToneFacts['programme'], string>> = {
  speech: 'the mean level of speech is',
  music: 'the mean level of music is',
  mixed: 'the mean level of speech and music is',
  tone: 'the level of the tone is',
};
/** How the level of the programme follows from that of a tone, which is what the figure of the phones speaks of. */
function toneSentence({ programme, depth, level: tone, below, crest }: ToneFacts): string {
  const steady = `A steady tone of 1 kHz at ${percent(depth)} depth would be ${level(tone)}; ${PROGRAMMES[programme]} ${below} dB lower`;
  return below > crest
    ? `${steady}: ${crest} dB for the crest factor, the rest because other frequencies are reproduced more weakly than 1 kHz.`
    : `${steady}, for the crest factor.`;
}

/** A tuned circuit loaded hard, or coupled loosely, has less voltage than the aerial's emf. */
const gainSentence = (gain: number): string =>
  gain >= 1
    ? `Resonance raises the voltage ${formatNumber(gain, 2)} times`
    : `The voltage is lower than the emf, ${formatNumber(gain, 2)} of it, in spite of resonance`;

const SENTENCES: ByStage = {
  field: (facts) => FIELD[facts.how](facts),
  aerial: ({ effectiveHeight, emf, availablePower }) =>
    `Effective height ${length(effectiveHeight)}: emf ${voltage(emf)}; available power ${power(availablePower)}.`,
  'tuned circuit': ({ gain, loadedQ, bandwidth }) =>
    `${gainSentence(gain)}; loaded Q ${formatNumber(loadedQ, 2)}, bandwidth ${bandwidthText(bandwidth)} (−3 dB).`,
  detector: ({ inputPower, inputResistance, law }) =>
    `The detector takes ${power(inputPower)}; its input resistance is ${resistance(inputResistance)}. ${LAW[law]}`,
  audio: ({ directVoltage, depth, distortion }) =>
    `Direct voltage ${voltage(directVoltage)}, programme at ${percent(depth)} depth of modulation, distortion ${percent(distortion)}.`,
  phones: ({ load, impedance, sensitivity }) =>
    `${loadTitle(load)}: ${resistance(impedance)} at 1 kHz, ${formatNumber(sensitivity.level, 3)} dB SPL for ${RATED[sensitivity.per]}.`,
  ear: ({ hearing, tone }) => {
    if (!hearing) return 'Out of range of the dial.';
    return tone ? `${hearingSentence(hearing)} ${toneSentence(tone)}` : hearingSentence(hearing);
  },
};

/**
 * What happens at a stage.
 * @param options facts of the stage, SI
 * @returns text
 */
export const stageSentence = ({ facts }: Pick<Stage, 'facts'>): string => at(SENTENCES, facts);
