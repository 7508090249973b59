import type { TextsOf } from './texts-of.ts';

const value = { label: 'Value', help: 'As measured; it wins over what is calculated from the sizes.' };

export const measuredFields: TextsOf<'measured'> = {
  'measured.part': { label: 'Measured', help: 'What was measured wins over what is calculated; the sizes stay.' },
  'measured.value:resistance': value,
  'measured.value:capacitance': value,
  'measured.value:stray': value,
  'measured.value:inductance': value,
  'measured.value:q': value,
  'measured.value:height': value,
  'measured.value:current': value,
  'measured.value:ideality': value,
  'measured.value:leakage': value,
  'measured.value:level': value,
  'measured.value:field': value,
  'measured.error': {
    label: 'Standard error',
    help: 'As a share of the value; left out: usual for a hand instrument.',
  },
  'measured.error:capacitance': { label: 'Standard error', help: 'Left out: 1.5 pF.' },
  'measured.error:level': { label: 'Standard error', help: 'Left out: 1 dB.' },
  'measured.at': { label: 'Measured at', help: 'Left out: 1 MHz; of an inductance, a low frequency.' },
  'measured.method': { label: 'Method' },
  'measured.date': { label: 'Date' },
};
