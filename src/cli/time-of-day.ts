import { listeningTime, type PlaceDescription, type TimeOfDay } from '../engine/index.ts';
import { callProblems } from '../outputs/words/index.ts';
import { InputError } from './command.ts';

/** The time asked for, or else the one the description begins with. @throws InputError for both options. */
export function timeOfDay({ day, night }: { day?: boolean; night?: boolean }, place: PlaceDescription): TimeOfDay {
  if (day && night) throw new InputError(callProblems.dayAndNight);
  return day ? 'day' : night ? 'night' : listeningTime(place);
}
