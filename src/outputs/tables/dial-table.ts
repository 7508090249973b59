import type { Dial, Reception } from '../../engine/reception/path/types.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import { dialStationsTableWords, dialTableWords, verdictWords } from '../words/index.ts';
import { table } from './table.ts';

const khz = (f: number): string => formatNumber(f / 1e3, 5);
const metres = (f: number): string => formatNumber(299_792_458 / f, 4);

/**
 * The scale every so many degrees: frequency, wavelength, loaded Q, bandwidth.
 * @param dial of a reception
 * @param width characters in a line; default as many as it takes
 * @param rows how many lines; default 13
 * @returns text of several lines
 */
export function dialTable(dial: Dial, width?: number, rows = 13): string {
  const last = dial.points.length - 1;
  const chosen = Array.from({ length: rows }, (_, i) => dial.points[Math.round((i * last) / (rows - 1))]);
  return table(
    [
      { title: dialTableWords.scale, text: (p) => `${Math.round(p.scale)}°`, align: 'right' },
      { title: dialTableWords.frequency, text: (p) => khz(p.frequency), align: 'right' },
      { title: dialTableWords.wavelength, text: (p) => metres(p.frequency), align: 'right' },
      {
        title: dialTableWords.capacitance,
        text: (p) => (p.capacitance === undefined ? '' : formatQuantity(p.capacitance, 'capacitance')),
        align: 'right',
      },
      { title: dialTableWords.loadedQ, text: (p) => formatNumber(p.loadedQ, 2), align: 'right' },
      { title: dialTableWords.bandwidth, text: (p) => formatQuantity(p.bandwidth, 'frequency', 2), align: 'right' },
    ],
    chosen,
    width,
  );
}

/**
 * The stations in the order of the scale, with the readings each may be at.
 * @param reception of a set
 * @param width characters in a line; default as many as it takes
 * @returns text of several lines
 */
export function dialStationsTable(reception: Reception, width?: number): string {
  const placed = reception.stations.filter((s) => s.dial).sort((a, b) => a.dial!.scale - b.dial!.scale);
  return table(
    [
      { title: dialStationsTableWords.scale, text: (s) => `${formatNumber(s.dial!.scale, 3)}°`, align: 'right' },
      {
        title: dialStationsTableWords.range,
        text: (s) => (s.dial!.range ? `${Math.round(s.dial!.range[0])}–${Math.round(s.dial!.range[1])}°` : ''),
        align: 'right',
      },
      { title: dialStationsTableWords.frequency, text: (s) => khz(s.frequency), align: 'right' },
      { title: dialStationsTableWords.station, text: (s) => s.name },
      { title: dialStationsTableWords.loadedQ, text: (s) => formatNumber(s.loadedQ, 2), align: 'right' },
      {
        title: dialStationsTableWords.bandwidth,
        text: (s) => formatQuantity(s.bandwidth, 'frequency', 2),
        align: 'right',
      },
      { title: dialStationsTableWords.verdict, text: (s) => verdictWords[s.verdict] },
    ],
    placed,
    width,
  );
}
