import { formatQuantity } from '../../../engine/units/format.ts';
import { kHz } from '../figures.ts';

/** A set shown to others: a page for a web site, and the same in Markdown. */
export const writeUpText = {
  lang: 'en-GB',
  circuit: 'Circuit',
  coil: (name: string): string => `Coil: ${name}`,
  photos: 'Photos',
  photo: (name: string): string => `Photo: ${name}`,
  notes: 'Notes',
  parts: 'Parts',
  partColumns: { part: 'part', what: 'what it is' },
  path: ({ name, frequency }: { readonly name: string; readonly frequency: number }): string =>
    `${name}, ${kHz(frequency)} kHz, from the field to the ear`,
  pathColumns: { stage: 'where', level: 'level', effect: 'what happens' },
  stations: 'Stations, calculated',
  stationColumns: { station: 'station', frequency: 'kHz', scale: 'on the scale', heard: 'heard', level: 'level' },
  heard: 'What was heard',
  wave: 'The wave, from the whole tone to single cycles',
  wavePoint: { tuned: 'on the tuned circuit', detector: 'at the detector', phones: 'in the phones' },
  waveAbout: (span: number, carrier: number): string =>
    `${formatQuantity(span, 'time', 2)} of the station sending a tone of 1 kHz on its carrier of ${formatQuantity(carrier, 'frequency', 4)}: calculated for this set. Move the first slider to see less time, down to single cycles of the carrier, and the second to move along.`,
  /** For who cannot see it, and where no script runs. */
  waveWords: (rows: readonly { readonly title: string; readonly largest: number }[]): string =>
    `Largest values: ${rows.map(({ title, largest }) => `${title} ${formatQuantity(largest, 'voltage', 3)}`).join('; ')}.`,
  zoom: 'Time shown',
  along: 'From',
  sound: 'How it sounds',
  soundAbout: (name: string): string =>
    `${name} as this set gives it, with an invented programme, amplified. Turn the volume down before you play it.`,
  cautions: 'Take care',
  link: 'The set itself',
  linkAbout: 'Save the description to open this set in Faintwave, and change it there.',
  linkName: 'Description of the set (JSON)',
  exact: 'The description holds the position of the place as it is.',
  coarse: 'The description holds the position of the place to 0.1° only, about 10 km.',
  calculated: 'Calculated with Faintwave from the description of the set; sets built like it differ.',
  noStation: 'The place of this set lists no station yet.',
} as const;
