import type { BandFit } from '../../../engine/parts/capacitor/fit.ts';
import { formatQuantity } from '../../../engine/units/format.ts';

const hertz = (f: number): string => formatQuantity(f, 'frequency');
const farads = (c: number): string => formatQuantity(c, 'capacitance', 2);
const henries = (l: number): string => formatQuantity(l, 'inductance');

type Impossible = NonNullable<BandFit['cannot']>;

const reason = ({ cannot, wanted }: { cannot: Impossible; wanted: BandFit['target'] }): string => {
  const { from, to, inductance } = wanted;
  return cannot.why === 'span'
    ? `The capacitor changes by ${farads(cannot.span)}, and ${hertz(from)} to ${hertz(to)} on ${henries(inductance)} needs ${farads(cannot.needed)}: no trimmer or padder can widen its range.`
    : `At ${hertz(to)} a coil of ${henries(inductance)} needs ${farads(cannot.needed)} in all, less than there is already: the inductance is too large.`;
};

/** How a capacitor is made to cover a band, or which coil would. */
export function bandFitSentence(fit: BandFit): string {
  const { target: wanted, covers, cannot, trimmer, padder } = fit;
  if (cannot) {
    const { betterInductance, reaches } = cannot;
    const better =
      reaches >= wanted.to
        ? `A coil of ${henries(betterInductance)} would cover the whole band, ${hertz(wanted.from)} to ${hertz(reaches)}.`
        : `A coil of ${henries(betterInductance)} would cover ${hertz(wanted.from)} to ${hertz(reaches)}.`;
    return `${reason({ cannot, wanted })} As it is it covers ${hertz(covers[0])} to ${hertz(covers[1])}. ${better}`;
  }
  const band = `${hertz(wanted.from)} to ${hertz(wanted.to)}, end to end`;
  const trimmed = `a trimmer set to ${farads(trimmer)} across the coil`;
  if (padder === undefined)
    return trimmer < 1e-12
      ? `Without trimmer and padder it covers ${band}.`
      : `With ${trimmed} and no padder it covers ${band}.`;
  const padded = `a padder of ${farads(padder)} in series with the capacitor`;
  return trimmer < 1e-12
    ? `With ${padded} and no trimmer it covers ${band}.`
    : `With ${trimmed} and ${padded} it covers ${band}.`;
}
