import { listeningTime, type PlaceDescription, type TimeOfDay } from '../engine/index.ts';
import { InputError } from './command.ts';

/** What the help of a command says of them. @param night what it does by night */
export const timeHelp = (night = 'with what the sky brings after dark'): readonly [string, string][] => [
  ['--day', 'with ground waves alone, whatever the description says'],
  ['--night', `${night}; without either, the time the description says, else day`],
];

/** The time asked for, or else the one the description begins with. @throws InputError for both options. */
export function timeOfDay({ day, night }: { day?: boolean; night?: boolean }, place: PlaceDescription): TimeOfDay {
  if (day && night) throw new InputError('expected --day or --night, got both');
  return day ? 'day' : night ? 'night' : listeningTime(place);
}
