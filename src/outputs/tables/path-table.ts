import type { StationReception } from '../../engine/reception/path/types.ts';
import { isHeard } from '../../engine/reception/verdict.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import {
  besideWords,
  pathTableWords,
  stageLevel,
  stageSentence,
  stageTitle,
  stationsTableWords,
  verdictWords,
} from '../words/index.ts';
import { clean, table } from './table.ts';

/**
 * The path of one station as a table: every level from field to ear.
 * @param station of a reception
 * @param width characters in a line; default as many as it takes
 * @returns text of several lines
 */
export function pathTable(station: StationReception, width?: number): string {
  const { columns, powerLost, range } = pathTableWords;
  return table(
    [
      { title: columns.stage, text: stageTitle },
      { title: columns.level, text: stageLevel, align: 'right' },
      { title: columns.range, text: (s) => (s.range ? range(s.range, s.kind, s.unit) : ''), align: 'right' },
      // Power lost on the way to a stage; the voltage may well rise meanwhile.
      { title: columns.powerLost, text: (s) => (s.change === undefined ? '' : powerLost(-s.change)), align: 'right' },
      { title: columns.effect, text: stageSentence },
    ],
    station.path,
    width,
  );
}

/**
 * All stations: where each sits, how it is heard, what disturbs it.
 * @param stations of a reception
 * @param width characters in a line; default as many as it takes
 * @returns text of several lines
 */
export function stationsTable(stations: readonly StationReception[], width?: number): string {
  const { columns, noInterference } = stationsTableWords;
  return table(
    [
      { title: columns.station, text: (s) => s.name },
      { title: columns.frequency, text: (s) => formatNumber(s.frequency / 1e3, 5), align: 'right' },
      { title: columns.field, text: (s) => formatQuantity(s.fieldStrength, 'field strength', 2), align: 'right' },
      { title: columns.scale, text: (s) => (s.dial ? `${Math.round(s.dial.scale)}°` : '—'), align: 'right' },
      { title: columns.detector, text: (s) => formatQuantity(s.detectorVoltage, 'voltage', 2), align: 'right' },
      {
        title: columns.sound,
        text: (s) => (s.soundPressureLevel === undefined ? '—' : `${Math.round(s.soundPressureLevel)} dB SPL`),
        align: 'right',
      },
      { title: columns.verdict, text: (s) => verdictWords[s.verdict] },
      {
        title: columns.interference,
        text: (s) => clean(besideWords(s)) || (isHeard(s.verdict) ? noInterference : ''),
      },
    ],
    stations,
    width,
  );
}
