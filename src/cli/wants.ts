import { type PlaceDescription, readValue, type SetDescription, type WrittenDescription } from '../engine/index.ts';
import { problemSentence } from '../outputs/words/index.ts';
import { chooseStation } from './choose-station.ts';
import { InputError } from './command.ts';
import { wrongOption } from './wrong-option.ts';

type WrittenWant = NonNullable<WrittenDescription['wants']>[number];
type Stations = PlaceDescription['stations'];

/** How each want is written after --want. */
const FORMS: readonly {
  readonly form: RegExp;
  readonly want: (match: readonly string[], station: (name: string) => string) => WrittenWant;
}[] = [
  { form: /^loudest (.+)$/i, want: ([, name], station) => ({ kind: 'loudest', station: station(name) }) },
  {
    form: /^clear (.+) from (.+?)(?: by (\S+(?: ?dB)?))?$/i,
    want: ([, name, other, by], station) => ({
      kind: 'clear',
      station: station(name),
      from: station(other),
      ...(by === undefined ? {} : { by }),
    }),
  },
  {
    form: /^band (\d[\d.,]*) ?(?:-|–|to) ?(\d[\d.,]*) ?(?:kHz)?$/i,
    want: ([, from, to]) => ({ kind: 'band', from: `${from} kHz`, to: `${to} kHz` }),
  },
  { form: /^most stations$/i, want: () => ({ kind: 'most stations' }) },
  { form: /^speech (.+)$/i, want: ([, name], station) => ({ kind: 'speech', station: station(name) }) },
  { form: /^fewest parts$/i, want: () => ({ kind: 'fewest parts' }) },
];

/** A want as written after --want. @throws InputError for what is none, or a station that is not there. */
function wantOf(text: string, stations: Stations): WrittenWant {
  const station = (nameOrFrequency: string): string => {
    const { name, frequency } = stations[chooseStation(stations, nameOrFrequency.trim(), 0, '--want')];
    return stations.filter((one) => one.name === name).length > 1 ? `${frequency / 1e3} kHz` : name;
  };
  for (const { form, want } of FORMS) {
    const match = form.exec(text.trim().replace(/\s+/g, ' '));
    if (match) return want(match, station);
  }
  throw wrongOption('--want', { code: 'want' }, text);
}

/** Wants as they are written after --want. @throws InputError for what is none, or a station that is not there. */
export const writtenWants = (texts: readonly string[], stations: Stations): WrittenWant[] =>
  texts.map((text) => wantOf(text, stations));

/**
 * A set that also wants and keeps what the command line says.
 * @throws InputError with every problem of the wants and kept parts together.
 */
export function withWants(
  { set, written }: { readonly set: SetDescription; readonly written: WrittenDescription },
  { want = [], keep = [] }: { readonly want?: readonly string[]; readonly keep?: readonly string[] },
): SetDescription {
  if (want.length === 0 && keep.length === 0) return set;
  const read = readValue({
    ...written,
    wants: [...(written.wants ?? []), ...writtenWants(want, set.place.stations)],
    keep: [...(written.keep ?? []), ...keep],
  });
  if (!read.ok) throw new InputError(read.problems.map(problemSentence).join('\n'));
  return read.set;
}
