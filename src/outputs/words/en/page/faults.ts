import { printable } from '../../printable.ts';
import { plural } from '../grammar.ts';

/** The view in which a builder looks for what is wrong with a set. */
export const faultsView = {
  label: 'Faults',
  notice: 'What I notice',
  noticeAbout: 'Say what you can; leave the rest. Each answer changes the causes and the next check.',
  stations: 'Stations',
  station: (name: string, frequency: string): string => `${printable(name)}, ${frequency}`,
  across: (place: string): string => `Resistance ${place}`,
  expected: ({ loudness, scale }: { readonly loudness?: string; readonly scale: string }): string =>
    `calculated: ${loudness === undefined ? '' : `${loudness}, `}at ${scale}`,
  offScale: 'off the scale',
  loudness: 'how loud',
  dial: 'loudest at',
  width: 'width on the dial',
  signs: 'Signs',
  more: 'More to try',
  readings: 'Readings',
  readingsAbout: 'Disconnect aerial, earth, phones and every supply before measuring a resistance.',
  good: (value: string): string => `good: ${value}`,
  notTried: '—',
  notPossible: 'not possible',
  yes: 'yes',
  no: 'no',
  /** What may stand in place of a figure. */
  besides: { dial: ['off scale', 'silent'], ohms: ['open'] },
  of: (what: string, station: string): string => `${station}: ${what}`,
  notUnderstood: (help: string): string => `Expected: ${help}.`,
  startAgain: 'Clear the answers',
  cleared: 'The answers are cleared.',
  putBack: 'Put them back',
  next: 'Next check',
  answer: 'Answer',
  give: 'Use this answer',
  cannot: 'I cannot do this',
  minutes: (minutes: number): string =>
    minutes < 1 ? 'under a minute' : `about ${Math.round(minutes)} ${plural(Math.round(minutes), 'minute', 'minutes')}`,
  how: (help: string, minutes: string): string => `Answer with ${help}. It takes ${minutes}.`,
  where: 'Where to touch',
  causes: 'Likely causes',
  beforehand: 'Before anything is observed: how common each is on this set.',
  fits: 'Fits',
  fitsNot: 'Does not fit',
  remedy: 'Remedy',
  calculating: 'Planting each fault in a copy of this set…',
  refining: 'First figures; calculating more precisely…',
  refined: 'Figures are final.',
  progress: 'How much is calculated',
  notWorkedOut: (why: string): string => `It could not be worked out: ${why}`,
  about:
    'Probabilities follow from how common faults are (common practice, no source) and from what each shows on this set, calculated.',
} as const;
