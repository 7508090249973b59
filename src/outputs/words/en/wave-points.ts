import type { NodeOf, Nodes } from '../../../engine/kinds/arrangements/nodes.ts';
import type { LoadSort } from '../../../engine/parts/load/model.ts';
import type { WavePoint, WavePoints } from '../../../engine/waves/wave-places.ts';
import type { SentencesFor } from './warnings/sentences-for.ts';

const LOADS: Readonly<Record<LoadSort['kind'], string>> = {
  'magnetic phones': 'magnetic phones',
  'balanced-armature phones': 'balanced-armature phones',
  'crystal earpiece': 'crystal earpiece',
  'moving-coil phones': 'moving-coil phones',
  amplifier: 'amplifier',
};
const loadText = ({ kind, transformer }: LoadSort): string =>
  transformer ? `${LOADS[kind]} through a transformer` : LOADS[kind];

const NODES: SentencesFor<Nodes> = {
  earth: () => 'Earth',
  aerial: () => 'Aerial terminal',
  out: () => 'After the detector',
  top: () => 'Top of the coil',
  bottom: () => 'Other end of the coil',
  middle: () => 'Where the two coils join',
  foot: () => 'Foot of the coil',
  'far end': () => 'Far end of the coil',
  'aerial coil': () => 'Top of the aerial coil',
  pump: () => 'Between the two detectors',
  biased: () => 'Behind the bias cell',
  equalised: () => 'After the equaliser',
  'detector tap': () => 'Detector’s tap',
  'load secondary': () => 'Transformer secondary',
  'load in': () => 'Amplifier input',
  tap: ({ turn }) => `Tap at turn ${turn}`,
  'aerial tap': ({ turn }) => `Aerial coil’s tap at turn ${turn}`,
  'after trap': ({ trap }) => `After trap ${trap}`,
  'trap middle': ({ trap }) => `Inside trap ${trap}`,
  'trap loop': ({ trap }) => `On the trap ${trap} beside the coil`,
  listed: ({ name }) => `“${name}”`,
  inside: () => 'Inside a part',
};
const nodePoint = (node: NodeOf): string => (NODES[node.code] as (figures: NodeOf) => string)(node);

const DETECTORS = { detector: 'detector', 'second detector': 'second detector' } as const;
const JOINS = { detector: ', to the detector', aerial: ', from the aerial' } as const;

const POINTS: SentencesFor<WavePoints> = {
  node: ({ node, id, joins }) => `${node ? nodePoint(node) : id}${joins ? JOINS[joins] : ''}`,
  slider: () => 'At the slider',
  'after-detector-across-load': ({ load }) => `After the detector, across the ${loadText(load)}`,
  'across-tuned-circuit': () => 'Across the tuned circuit',
  'across-earth': () => 'Across the earth connection',
  'across-detector': ({ which }) => `Across the ${DETECTORS[which]}`,
  'through-detector': ({ which }) => `Current through the ${DETECTORS[which]}`,
  'across-load': ({ load }) => `Across the ${loadText(load)}`,
};

/**
 * Where a wave is looked at, as a builder calls it: "Top of the coil".
 * @param point of `wavePlaces`
 * @returns its name, with a capital letter
 */
export const wavePointText = (point: WavePoint): string =>
  (POINTS[point.code] as (figures: WavePoint) => string)(point);

/** The same within a sentence: only what the tool says loses its capital, never a name. */
export const wavePointInSentence = (point: WavePoint): string => {
  const text = wavePointText(point);
  return text.charAt(0).toLowerCase() + text.slice(1);
};
