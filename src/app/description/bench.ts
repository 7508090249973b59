import { formatQuantity, parseQuantity, type QuantityKind } from '../../engine/index.ts';

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
  const coil = part({
    formerDiameter: text('former'),
    turns: turns === undefined || Number.isNaN(Number(turns)) ? turns : Number(turns),
    wire: part({ size: text('wire') }),
  });
  return (
    part({
      place: part({
        name: place,
        position: place && positionOf(place),
        stations: stations && stationsOf(stations),
      }),
      aerial: part({ height: text('aerialHeight'), length: text('aerialLength') }),
      earth: part({ kind: text('earth') }),
      coils: coil && [coil],
      tuning: part({ maximum: text('capacitor') }),
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

/** A station a line: its name, then figures in any order, each known by its unit; a bare number is a frequency in kHz. */
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
    const figure = /^\d+(?:\.\d+)?$/.test(cell) ? formatQuantity(Number(cell) * 1e3, 'frequency') : cell;
    const kind = Object.keys(KINDS).find((key) => parseQuantity(figure, KINDS[key as keyof typeof KINDS]).ok);
    // What is no figure of a station is shown as a frequency that is not understood.
    station[kind ?? 'frequency'] ??= figure;
  }
  return station;
}
