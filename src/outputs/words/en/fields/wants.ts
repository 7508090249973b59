import type { TextsOf } from './texts-of.ts';

export const wantFields: TextsOf<'want'> = {
  'want.station': { label: 'Station', help: 'Its name as in the list of stations, or its frequency.' },
  'want.from': { label: 'Clear of', help: 'The other station: its name as in the list of stations, or its frequency.' },
  'want.by': {
    label: 'By at least',
    help: 'How far the other station stays below, as heard; from 30 dB it does not disturb.',
  },
  'want.band.from': { label: 'From' },
  'want.band.to': { label: 'To' },
  'want.tolerance': {
    label: 'Tolerance',
    help: 'So much of either end may be missing, as a share of its frequency.',
  },
  'want.bandwidth': {
    label: 'Audio bandwidth',
    help: 'Tones up to here are less than 3 dB down; 3.4 kHz is a telephone’s.',
  },
};

export const bandFields: TextsOf<'band'> = {
  'band.name': { label: 'Band', help: 'As it stands at the switch, such as "long wave".' },
  'band.arrangement': { label: 'Arrangement on this band' },
};

export const assumedFields: TextsOf<'assumed'> = { 'assumed.place': { label: 'Place of the description' } };

export const correlationFields: TextsOf<'correlation'> = {
  'correlation.figure': {
    label: 'Measured value',
    help: 'Its place in the description, such as "coils[0].inductance".',
  },
  'correlation.value': { label: 'Correlation' },
};

export const keepFields: TextsOf<'keep'> = { 'keep.part': { label: 'Part or place' } };
