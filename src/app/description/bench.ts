import {
  type Field,
  metadataOf,
  type Path,
  parseQuantity,
  type QuantityKind,
  STARTERS,
  typedQuantity,
} from '../../engine/index.ts';
import { schemaAt } from './schema-at.ts';

/** What a builder may write of the parts at hand; all of it may be empty. */
export const BENCH_FIELDS = [
  'place',
  'stations',
  'former',
  'wire',
  'turns',
  'capacitor',
  'detector',
  'load',
  'aerialLength',
  'aerialHeight',
  'earth',
] as const;
export type BenchField = (typeof BENCH_FIELDS)[number];
export type Bench = Readonly<Partial<Record<BenchField, string>>>;

/** Where in a description each stands, so that what is refused is said beside it. */
const PLACES: Readonly<Record<BenchField, string>> = {
  place: 'place.',
  stations: 'place.stations',
  former: 'coils[0].formerDiameter',
  wire: 'coils[0].wire',
  turns: 'coils[0].turns',
  capacitor: 'tuning',
  detector: 'detector',
  load: 'load',
  aerialLength: 'aerial.length',
  aerialHeight: 'aerial.height',
  earth: 'earth',
};

/** The field in which a place of the description was written; undefined where none was. */
export const benchFieldAt = (path: string): BenchField | undefined =>
  BENCH_FIELDS.toReversed().find((field) => path.startsWith(PLACES[field]));

/** Fields of a figure: where it stands in a description of the usual kinds, and what is usual, with its unit. */
const FIGURES = {
  former: { path: ['coils', 0, 'formerDiameter'], usual: STARTERS['coil/solenoid'].formerDiameter },
  wire: { path: ['coils', 0, 'wire', 'size'], usual: STARTERS.wire.size },
  capacitor: { path: ['tuning', 'maximum'], usual: STARTERS['tuning/variable'].maximum },
  aerialLength: { path: ['aerial', 'length'], usual: STARTERS['aerial/inverted-L'].length },
  aerialHeight: { path: ['aerial', 'height'], usual: STARTERS['aerial/inverted-L'].height },
} as const satisfies Partial<Record<BenchField, { readonly path: Path; readonly usual: unknown }>>;

const USUAL_KINDS = {
  coils: [{ shape: 'solenoid', wire: {} }],
  tuning: { kind: 'variable' },
  aerial: { kind: 'inverted-L' },
};

/** As it is typed, a number without a unit with the one that makes a usual size. */
function figureOf(field: keyof typeof FIGURES, typed: string | undefined): string | undefined {
  if (typed === undefined) return undefined;
  const { path, usual } = FIGURES[field];
  const schema: Field['schema'] | undefined = schemaAt(USUAL_KINDS, path);
  const { quantity, bounds } = schema ? metadataOf(schema) : {};
  return quantity ? typedQuantity(typed, quantity, bounds, usual) : typed;
}

/** The part of a description that is known; fields that are empty leave no key. */
export function knownOf(bench: Bench): Record<string, unknown> {
  const text = (field: BenchField): string | undefined => bench[field]?.trim() || undefined;
  const part = (all: Record<string, unknown>): Record<string, unknown> | undefined => {
    const given = Object.entries(all).filter(([, value]) => value !== undefined);
    return given.length > 0 ? Object.fromEntries(given) : undefined;
  };
  const turns = text('turns');
  const place = text('place');
  const stations = text('stations');
  const position = place === undefined ? undefined : positionOf(place);
  const figure = (field: keyof typeof FIGURES) => figureOf(field, text(field));
  const coil = part({
    formerDiameter: figure('former'),
    turns: turns === undefined || Number.isNaN(Number(turns)) ? turns : Number(turns),
    wire: part({ size: figure('wire') }),
  });
  return (
    part({
      place: part({
        // Coordinates are no name: a name goes along with what is shared, a position only where that is chosen.
        name: position ? undefined : place,
        position,
        stations: stations && stationsOf(stations),
      }),
      aerial: part({ height: figure('aerialHeight'), length: figure('aerialLength') }),
      earth: part({ kind: text('earth') }),
      coils: coil && [coil],
      tuning: part({ maximum: figure('capacitor') }),
      detector: part({ kind: text('detector') }),
      load: part({ kind: text('load') }),
    }) ?? {}
  );
}

const inDegrees = (text: string): string => (/^[+-]?\d+(?:\.\d+)?$/.test(text) ? `${text}°` : text);

/** "52.6, 0.4" or "52.6° N 0.4° W"; undefined for what is no pair of coordinates. */
function positionOf(text: string): { latitude: string; longitude: string } | undefined {
  for (const gap of text.matchAll(/\s*[,;\s]\s*/g)) {
    const latitude = inDegrees(text.slice(0, gap.index).trim());
    const longitude = inDegrees(text.slice(gap.index + gap[0].length).trim());
    if (parseQuantity(latitude, 'latitude').ok && parseQuantity(longitude, 'longitude').ok)
      return { latitude, longitude };
  }
  return undefined;
}

const KINDS = {
  frequency: 'frequency',
  power: 'power',
  distance: 'length',
  fieldStrength: 'field strength',
} as const satisfies Record<string, QuantityKind>;

/** Units of numbers written without one: the next of these figures that the line does not have yet. */
const BARE = { frequency: 'kHz', power: 'kW', distance: 'km' } as const satisfies Partial<
  Record<keyof typeof KINDS, string>
>;

/** A station a line: its name, then figures in any order, each known by its unit; bare numbers in the order of `BARE`. */
function stationsOf(text: string): Record<string, string>[] {
  return text
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .map(stationOf);
}

function stationOf(line: string): Record<string, string> {
  const [first, ...others] = line
    .split(/[,;\t]/)
    .map((cell) => cell.trim())
    .filter((cell) => cell !== '');
  const [, name = first, rest] = others.length === 0 ? (/^(.*?)\s+(\d.*)$/.exec(first) ?? []) : [];
  const cells = rest === undefined ? others : (rest.match(/\d[\d.]*\s*[^\d\s]*/g) ?? []);
  // A line that is a frequency alone has no name yet.
  const isNameless = cells.length === 0 && /^\d/.test(first);
  const station: Record<string, string> = isNameless ? {} : { name };
  for (const cell of isNameless ? [first] : cells) {
    const bare = /^\d+(?:\.\d+)?$/.test(cell)
      ? Object.entries(BARE).find(([key]) => station[key] === undefined)
      : undefined;
    const kind =
      bare?.[0] ?? Object.keys(KINDS).find((key) => parseQuantity(cell, KINDS[key as keyof typeof KINDS]).ok);
    // What is no figure of a station is shown as a frequency that is not understood.
    station[kind ?? 'frequency'] ??= bare ? `${cell} ${bare[1]}` : cell;
  }
  return station;
}
