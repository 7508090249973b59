import type { CoilPoint, SwitchedLead, SwitchedThrough, SwitchPole } from '../../../../engine/built/band-contacts.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { printable } from '../../printable.ts';

const LEADS: Readonly<Record<SwitchedLead, string>> = {
  'aerial lead': 'aerial lead',
  'tuning capacitor': 'tuning capacitor',
  'aerial tuner': 'aerial tuning capacitor',
  detector: 'detector',
  'coil end': 'end of the coil',
  'other end': 'far side of tuning capacitor and second detector',
  earth: 'earth',
};
const joined = new Intl.ListFormat('en-GB');
const turn = (value: number): string => String(Number(value.toFixed(2)));
const point = (at: CoilPoint | undefined): string =>
  at === undefined ? 'free' : `coil “${printable(at.coil)}”, turn ${turn(at.turn)}`;

const trap = ({ index }: { readonly index: number }): string => `trap ${index + 1}`;

/** "through trap 1 and 470 pF; trap 2 to earth". */
const between = ({ traps, seriesCapacitor }: SwitchedThrough): string => {
  const inLead = [
    ...traps.filter(({ kind }) => kind === 'parallel').map(trap),
    ...(seriesCapacitor === undefined ? [] : [formatQuantity(seriesCapacitor, 'capacitance')]),
  ];
  const toEarth = traps.filter(({ kind }) => kind === 'series').map(trap);
  return [
    ...(inLead.length > 0 ? [`, through ${joined.format(inLead)}`] : []),
    ...(toEarth.length > 0 ? [`; ${joined.format(toEarth)} to earth`] : []),
  ].join('');
};

const way = ({ ways, through }: SwitchPole, band: number): string => {
  const what = through?.[band];
  return `${point(ways[band])}${what ? between(what) : ''}`;
};

/** A band switch on paper: its symbol, and what each contact is joined to. */
export const bandSwitchSheetWords = {
  title: 'Band switch',
  setOnBand: (set: string, band: string): string => `${set}, on ${printable(band)}`,
  shown: (band: string): string =>
    `This sheet shows the set with its band switch on “${printable(band)}”. The switch stands between the coils and the leads named below; break those joints and lead them over it.`,
  shownOnBoard: (band: string): string =>
    `The diagram shows the set with its band switch on “${printable(band)}”. The switch, S1 on the board sheet, stands between the coils and the leads named below.`,
  /** @param isEarthed one end of every coil is earthed on every band. */
  wiring: (isEarthed: boolean): string =>
    `The switch, its wires and the coils of other bands are not in the list or on the board: lead each moving contact to what is named first, each fixed contact to its coil. ${
      isEarthed ? 'The earthed ends of all coils stay joined to earth. ' : ''
    }Keep these wires short and apart.`,
  markedWay: ({ mark, way }: { readonly mark: string; readonly way: string }): string => `${mark}: ${way}`,
  part: 'band switch',
  /** Of pole 1: its moving contact "1", its ways "1a", "1b". */
  mark: (pole: number, way?: number): string =>
    way === undefined ? String(pole + 1) : `${pole + 1}${String.fromCharCode(97 + way)}`,
  seriesCapacitor: ({ band, capacitance }: { readonly band: string; readonly capacitance: number }): string =>
    `series capacitor for “${printable(band)}”, ${formatQuantity(capacitance, 'capacitance')}`,
  /** @param words a part of a wave trap. @param band it is in circuit on. */
  ofBand: ({ words, band }: { readonly words: string; readonly band: string }): string =>
    `${words}, for “${printable(band)}”`,
  seriesCapacitorTitle: (band: string): string => `Series capacitor for “${printable(band)}”`,
  onBoard:
    'The switch is S1 on the board sheet, and its wires are in the list above. The number alone is the moving contact of a pole; with a letter it is the contact of a way.',
  otherTraps: 'The bands have different wave traps that share a coil: their switching is not shown.',
  leads: ({ leads }: Pick<SwitchPole, 'leads'>): string => joined.format(leads.map((lead) => LEADS[lead])),
  way,
  wayOnBand: (name: string, pole: SwitchPole, band: number): string => `${printable(name)}: ${way(pole, band)}`,
  columns: { pole: 'Pole', lead: 'Moving contact', way: (band: string): string => `On ${printable(band)}` },
  description: (bands: readonly string[], poles: number): string =>
    `Band switch with ${poles === 1 ? 'one pole' : `${poles} poles`} and ${bands.length} ways: ${bands.map(printable).join(', ')}.`,
} as const;
