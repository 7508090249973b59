import type { StationReception } from '../../engine/reception/path/types.ts';
import { isHeard } from '../../engine/reception/verdict.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import { besideWords, stageLevel, stageSentence, stageTitle, verdictWords } from '../words/index.ts';
import { clean, table } from './table.ts';

/** Power lost on the way to a stage; the voltage may well rise meanwhile. */
const lost = (dB: number | undefined): string =>
  dB === undefined ? '' : dB > -0.05 ? 'none' : formatQuantity(-dB, 'level', 2).replace('+', '');

/** The path of one station as a table: every level from field to ear. */
export function pathTable(station: StationReception, width?: number): string {
  return table(
    [
      { title: 'stage', text: stageTitle },
      { title: 'level', text: stageLevel, align: 'right' },
      { title: 'may be', text: (s) => (s.range ? `${spreadText(s.range, s.kind, s.unit)}` : ''), align: 'right' },
      { title: 'power lost', text: (s) => lost(s.change), align: 'right' },
      { title: 'what happens', text: stageSentence },
    ],
    station.path,
    width,
  );
}

function spreadText(
  [low, high]: readonly [number, number],
  kind: StationReception['path'][number]['kind'],
  unit: string,
): string {
  if (unit.startsWith('dB')) return `${formatNumber(Math.round(low))}…${formatNumber(Math.round(high))} ${unit}`;
  return `${formatQuantity(low, kind, 2)}…${formatQuantity(high, kind, 2)}`;
}

/** All stations: where each sits, how it is heard, what disturbs it. */
export function stationsTable(stations: readonly StationReception[], width?: number): string {
  return table(
    [
      { title: 'station', text: (s) => s.name },
      { title: 'kHz', text: (s) => formatNumber(s.frequency / 1e3, 5), align: 'right' },
      { title: 'field', text: (s) => formatQuantity(s.fieldStrength, 'field strength', 2), align: 'right' },
      { title: 'scale', text: (s) => (s.dial ? `${Math.round(s.dial.scale)}°` : '—'), align: 'right' },
      { title: 'detector', text: (s) => formatQuantity(s.detectorVoltage, 'voltage', 2), align: 'right' },
      {
        title: 'sound',
        text: (s) => (s.soundPressureLevel === undefined ? '—' : `${Math.round(s.soundPressureLevel)} dB SPL`),
        align: 'right',
      },
      { title: 'heard', text: (s) => verdictWords[s.verdict] },
      {
        title: 'beside it',
        text: (s) => clean(besideWords(s)) || (isHeard(s.verdict) ? 'clear' : ''),
      },
    ],
    stations,
    width,
  );
}
