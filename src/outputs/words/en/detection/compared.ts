import { formatQuantity } from '../../../../engine/units/format.ts';
import type { DetectorOnStation } from '../../../../engine/vary/compare.ts';
import { nameOfDetector } from '../detectors.ts';

/** What a detector compared with others is called. */
export function comparedDetector({
  description,
  bias,
  isOwn,
}: Pick<DetectorOnStation, 'description' | 'bias' | 'isOwn'>): string {
  const label = nameOfDetector(description);
  if (bias === 0) return isOwn ? `${label}, the one in the set` : label;
  const volts = formatQuantity(bias, 'voltage');
  return isOwn ? `${label}, ${volts} bias, the one in the set` : `${label}, ${volts} bias`;
}

/** Faint carrier that the merit of a detector is told at, W. */
const FAINT = 1e-9;

const PREFIXES: readonly (readonly [number, string])[] = [
  [1e-9, 'n'],
  [1e-12, 'p'],
  [1e-15, 'f'],
  [1e-18, 'a'],
];
function smallPower(watts: number): string {
  const [unit, prefix] = PREFIXES.find(([size]) => watts >= size) ?? [1e-21, 'z'];
  return `${Number((watts / unit).toPrecision(2))} ${prefix}W`;
}

/** How good a detector is for faint signals. */
export function detectorMeritSentence({ resistance, figure }: DetectorOnStation['merit']): string {
  if (!(figure > 0)) return 'Its curve is straight here: it does not detect.';
  const loss = Math.round(-10 * Math.log10(figure * FAINT));
  return `From a faint carrier of 1 nW, matched at both ends, it gives ${smallPower(figure * FAINT * FAINT)}: a detection loss of ${loss} dB. It needs a match to ${formatQuantity(resistance, 'resistance', 2)}.`;
}
