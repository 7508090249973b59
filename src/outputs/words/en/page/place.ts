import type { GroundKind } from '../../../../engine/place/ground.ts';
import type { SunState } from '../../../../engine/place/sun.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { plural } from '../grammar.ts';

const clock = (date: Date): string => date.toISOString().slice(11, 16);

/** The field: place, stations, time. Labels in small letters name a step to undo. */
export const fieldBenchWords = {
  place: 'Where you are',
  setNotes: 'This set',
  map: 'Map and time',
  noMap: 'Enter a position of the place, below, to see a map here.',
  stations: 'Stations on the air',
  noStations: 'No stations yet. Add stations, or paste a table of them.',
  addStation: 'Add a station',
  importTable: 'Paste or import a table…',
  saveTable: 'Save as a table',
  checks: (count: number): string => `${count} ${plural(count, 'entry', 'entries')} of this list to check`,
  remove: 'Remove',
  addStationLabel: 'add a station',
  removeStationLabel: 'remove a station',
  addStationsLabel: 'add stations',
  replaceStationsLabel: 'replace the stations',
  ownSectionsLabel: 'write land and sea',
  mapSectionsLabel: 'land and sea from the map',
} as const;

export const stationTableWords = {
  label: 'Stations',
  columns: {
    best: 'Best for this set',
    name: 'Station',
    frequency: 'Frequency',
    distance: 'Distance',
    bearing: 'Bearing',
    day: 'By day',
    night: 'By night',
    arrival: 'Arrives by',
    interference: 'Interference from',
    neighbours: 'Near in frequency',
  },
  noName: 'No name yet',
  firstChoice: ' try this first',
  notValid: ' not valid yet',
  showAll: (count: number): string => `Show all ${count}`,
  moreColumns: 'More columns',
} as const;

type SunWord = SunState['state'];
const SUN: Readonly<Record<SunWord, string>> = { day: 'day', dusk: 'dusk', night: 'night', dawn: 'dawn' };

/** Day, dusk, night, or a moment. */
export const timeWords = {
  title: 'Time of day',
  day: 'Day',
  dusk: 'Dusk',
  night: 'Night',
  date: 'Date',
  needsPosition: 'Enter a position of the place to know when the sun sets.',
  slider: 'Time of day, UTC',
  moment: (date: Date): string => `${clock(date)} UTC`,
  anyTime: { day: 'any time by day', night: 'any time by night' },
  hours: ['0 h', '6', '12', '18', '24 h UTC'],
  byDay: 'By day everywhere: ground waves only.',
  byNight: 'By night everywhere: ground waves and sky waves at full strength.',
  /** @param sun at the place, where it is known */
  at: (date: Date, sun: SunWord | undefined): string =>
    sun === undefined
      ? `${clock(date)} UTC. The sun at the middle of each path sets the strength of the sky wave.`
      : `${clock(date)} UTC, ${SUN[sun]} where you are. The sun at the middle of each path sets the strength of the sky wave.`,
  sun: (sunset: Date, sunrise: Date, station: string | undefined): string =>
    station === undefined
      ? `Sunset ${clock(sunset)} and sunrise ${clock(sunrise)} UTC where you are.`
      : `Sunset ${clock(sunset)} and sunrise ${clock(sunrise)} UTC at the middle of the path to ${station}.`,
  /** Where the sun neither sets nor rises. */
  sunStays: (isUp: boolean, station: string | undefined): string => {
    const always = isUp ? 'it is day all the time' : 'it is night all the time';
    return station === undefined
      ? `The sun neither sets nor rises where you are: ${always}.`
      : `The sun neither sets nor rises at the middle of the path to ${station}: ${always}.`;
  },
} as const;

export const mapWords = {
  /** @param site the place's name, or undefined */
  label: (shown: number, all: number, site: string | undefined): string =>
    `Map of ${shown} of ${all} stations around ${site ?? 'your place'}. Arrow keys move it, plus and minus zoom, 0 shows all; the table below says the same in words.`,
  here: 'here',
  ring: (km: number): string => (km >= 1000 ? `${km / 1000} 000 km` : `${km} km`),
  station: (name: string, verdict: string): string => `${name}: ${verdict}`,
  zoomIn: 'Zoom in',
  zoomOut: 'Zoom out',
  showAll: 'Show all stations',
  all: 'All',
  key: {
    land: ' path over land ',
    sea: ' path over sea ',
    heard: ' heard with this set ',
    masked: ' masked by another ',
    unheard: ' not heard',
  },
} as const;

const GROUND: Readonly<Record<GroundKind, string>> = {
  sea: 'sea',
  'fresh water': 'fresh water',
  'very wet': 'very wet land',
  wet: 'wet land',
  average: 'average land',
  dry: 'dry land',
  'very dry': 'very dry land',
};

interface Wave {
  /** V/m. */
  readonly fieldStrength: number;
  /** dB. */
  readonly spread: number;
}
const wave = ({ fieldStrength, spread }: Wave): string =>
  `${formatQuantity(fieldStrength, 'field strength', 2)} ±${Math.round(spread)} dB`;
/** Least loss of the hour that is given, dB. */
const LEAST = 0.5;

/** The path from one station. */
export const pathWords = {
  title: (station: string): string => `Path from ${station}`,
  plot: 'Ground wave along the path',
  measured: 'Its field strength is measured; with a power and a position or distance, the path can be drawn too.',
  missing: 'Enter its power and its position or distance to see the path drawn.',
  /** @param hourlyLoss of the sky wave at this time, against the middle of the night, dB */
  waves: (sky: Wave & { readonly hourlyLoss: number }, ground: Wave): string =>
    sky.hourlyLoss > LEAST
      ? `At this time: sky wave ${wave(sky)}, ${Math.round(sky.hourlyLoss)} dB less than in the middle of the night; ground wave ${wave(ground)}.`
      : `At this time: sky wave ${wave(sky)}; ground wave ${wave(ground)}.`,
  writeSections: 'Write land and sea into the station, to edit',
  mapSections: 'Take land and sea from the map again',
  /** Kinds of ground under the path. */
  ground: GROUND,
  /** Ground given by its figures. */
  ownGround: 'land',
} as const;
