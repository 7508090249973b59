import type { TextsOf } from './texts-of.ts';

export const setFields: TextsOf<'set'> = {
  'set.name': { label: 'Name', help: 'What you call the set.' },
  'set.notes': { label: 'Notes on the set' },
  'set.wants': { label: 'Wants', help: 'What the set is to do; every suggestion is judged by all of it.' },
  'set.keep': {
    label: 'Keep',
    help: 'Parts and places that suggestions leave as they are, such as "load", "coils[0]" or "aerial.height".',
  },
  'set.assumed': {
    label: 'Assumed',
    help: 'Places of the description whose values are typical ones that nobody has confirmed, such as "aerial.height" or "place.stations[0]".',
  },
  'set.scenes': {
    label: 'Scenes',
    help: 'Prepared views, in order; without them, the story that comes with the tool.',
  },
  'set.recording': {
    label: 'Recording',
    help: 'Speech or music of up to a minute that scenes use as the programme; it is put in under Explain.',
  },
  'set.readings': {
    label: 'Readings',
    help: 'Measurements as they were read, kept beside the values that follow from them.',
  },
  'set.correlations': {
    label: 'Correlations',
    help: 'Correlation of the errors of measured values that come from the same readings.',
  },
  'set.place': { label: 'Place' },
  'set.aerial': { label: 'Aerial' },
  'set.earth': { label: 'Earth' },
  'set.coils': { label: 'Coils' },
  'set.tuning': { label: 'Tuning capacitor' },
  'set.arrangement': { label: 'Arrangement' },
  'set.bands': {
    label: 'Bands',
    help: 'Of a set with a band switch: two to four bands. The switch stands on the one that has no arrangement of its own; the set’s is that band’s.',
  },
  'set.detector': { label: 'Detector' },
  'set.load': { label: 'Phones or amplifier' },
  'set.ear': { label: 'Ear' },
};
