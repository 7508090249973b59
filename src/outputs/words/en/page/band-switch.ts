import { bandSpan } from '../../figures.ts';

const named = (name: string, index: number): string => (name.trim() === '' ? `band ${index + 1}` : name);

/** The band switch: in the head of the set's view, and where bands are made. */
export const bandSwitchWords = {
  legend: 'Band switch',
  name: named,
  range: bandSpan,
  onBand: (name: string): string => `on ${name}`,
  arrangementOf: (name: string): string => `What is in circuit on ${name}; the other bands keep their own.`,
  coilOf: (name: string): string => `In circuit on ${name}, and its Q is given there.`,
  title: 'Band switch: more than one band',
  about:
    'One tuning capacitor, aerial, detector and phones for all bands; the switch changes coils, taps, wave traps and capacitors in the aerial lead. Choose a band to see and change what is in circuit on it.',
  bandName: (index: number): string => `Name of band ${index + 1}`,
  show: 'Show',
  showLabel: (name: string): string => `Turn the switch to ${name}`,
  shown: 'shown',
  coils: (names: readonly string[]): string => `coil ${names.join(' and ')}`,
  remove: 'Remove',
  removeLabel: (name: string): string => `Remove the band ${name}`,
  removed: (name: string): string => `The band ${name} is removed; its coils stay in the list.`,
  propose: { 'long wave': 'Propose a long-wave band', 'medium wave': 'Propose a medium-wave band' },
  trying: 'Winding coils for it…',
  none: 'No switch can add this band: the set must be tuned by its capacitor with a coil, and have fewer than four bands, none of this name.',
  notFound: (reason: string): string => `The band cannot be calculated: ${reason}`,
  copies: (coils: readonly string[]): string =>
    coils.length === 1 ? `One coil more: ${coils[0]}.` : `Coils more: ${coils.join(', ')}.`,
  coilOfBand: 'Coil of the new band',
  coilChoices: {
    own: 'A coil of its own',
    shared: 'The coil there is: the lower band has all its turns, the other part of them',
  },
  shares: 'No further coil: on the higher band the switch shorts the turns that are not in use.',
  take: 'Add this band',
  added: (name: string): string => `The set has a band switch with ${name}.`,
  addLabel: (name: string): string => `band ${name}`,
  removeStep: (name: string): string => `without the band ${name}`,
} as const;
