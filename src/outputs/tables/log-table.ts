import { LIGHTS, type Light, type LoggedLight, type LoggedStation } from '../../engine/log/against-prediction.ts';
import { kHz } from '../words/figures.ts';
import { logAnswer } from '../words/index.ts';
import { table } from './table.ts';

interface LogRow {
  readonly station: LoggedStation;
  readonly light: Light;
  readonly logged: LoggedLight;
}

/** Stations by day and by night: what was predicted, and what was heard. */
export function logTable(stations: readonly LoggedStation[], width?: number): string {
  const { columns } = logAnswer;
  const rows = stations.flatMap((station) =>
    LIGHTS.map((light): LogRow => ({ station, light, logged: station.lights[light] })),
  );
  return table(
    [
      { title: columns.station, text: ({ station, light }) => (light === 'day' ? station.name : '') },
      {
        title: columns.frequency,
        text: ({ station, light }) => (light === 'day' ? kHz(station.frequency) : ''),
        align: 'right',
      },
      { title: columns.light, text: ({ light }) => logAnswer.light(light) },
      { title: columns.predicted, text: ({ logged }) => logAnswer.predicted(logged) },
      { title: columns.chance, text: ({ logged }) => logAnswer.chance(logged), align: 'right' },
      { title: columns.heard, text: ({ logged }) => logAnswer.heard(logged) },
    ],
    rows,
    width,
  );
}
