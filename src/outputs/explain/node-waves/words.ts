import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import type { NodeWave } from '../../../engine/waves/node-waves.ts';
import { tidyTime, type View } from '../model/view.ts';
import type { ShownWaves } from './shown-waves.ts';

const khz = (f: number): string => `${formatNumber(f / 1e3, 4)} kHz`;

/** What was run. */
export function runWords(run: Omit<ShownWaves, 'waves'>): string {
  const { station, carrier, tone, duration, neighbours, start } = run;
  const beside =
    neighbours.length === 0
      ? 'alone'
      : `with ${neighbours.length} other${neighbours.length === 1 ? '' : 's'} on the air (${neighbours.slice(0, 3).join(', ')}${neighbours.length > 3 ? '…' : ''})`;
  const began = start < 1e-4 ? 'from the moment it comes on' : `${tidyTime(start, 2)} after it came on`;
  return `${station}, ${khz(carrier)}, ${beside}, speaking a tone of ${formatQuantity(tone, 'frequency', 3)}: ${tidyTime(duration, 2)}, ${formatNumber(Math.round(duration * carrier), 3)} cycles, ${began}.`;
}

/** The stretch that is drawn. */
export function stretchWords({ carrier }: Pick<ShownWaves, 'carrier'>, { from, span }: View): string {
  const cycles = span * carrier;
  return `Drawn: ${tidyTime(span, 2)} from ${from === 0 ? 'the start' : tidyTime(from, 3)}, ${cycles < 10 ? formatNumber(cycles, 2) : formatNumber(Math.round(cycles), 3)} ${Math.abs(cycles - 1) < 0.05 ? 'cycle' : 'cycles'} of the carrier.`;
}

/** Peak, mean and what is audible of one wave. */
export function readingWords({ title, measure, reading }: Pick<NodeWave, 'title' | 'measure' | 'reading'>): string {
  const show = (v: number) => formatQuantity(v, measure, 2).replace('-', '−');
  const { least, greatest, mean, carrier, audio, secondHarmonic, depth } = reading;
  const size = Math.max(Math.abs(least), Math.abs(greatest));
  const parts = [`${show(least)} to ${show(greatest)}`];
  parts.push(Math.abs(mean) < 2e-3 * size ? 'on average nothing' : `on average ${show(mean)}`);
  if (carrier > 2e-3 * size)
    parts.push(`carrier ${show(carrier)} peak${depth > 5e-3 ? ` ${modulatedWords(depth)}` : ''}`);
  if (audio > 5e-3 * size)
    parts.push(
      `audio ${show(audio)} peak${secondHarmonic > 5e-3 ? ` with ${formatNumber(100 * secondHarmonic, 2)} % second harmonic` : ''}`,
    );
  return `${title}: ${parts.join(', ')}.`;
}

/** How deep a carrier is modulated, and what becomes of it beyond 100 %. */
function modulatedWords(depth: number): string {
  const percent = Math.round(100 * Math.min(depth, 9.99));
  return percent > 100
    ? `modulated ${percent} % (over-modulation: an envelope detector gives negative-peak clipping)`
    : `modulated ${percent} %`;
}
