import type { TextsOf } from './texts-of.ts';

export const loadFields: TextsOf<'load'> = {
  'load.bypass': {
    label: 'By-pass capacitor',
    help: 'Across the load, for the rest of the carrier; 0 if none: the cord’s own capacitance remains.',
  },
  'load.equalizer.resistance': {
    label: 'Series resistor',
    help: 'Makes the load at direct current equal to the load at audio frequencies.',
  },
  'load.equalizer.capacitance': { label: 'Its by-pass' },
  'load.make': { label: 'Movement', help: 'Balanced armature: more sensitive, and easier to match.' },
  'load.resistance': { label: 'Resistance', help: 'Direct-current resistance of the pair, as marked.' },
  'load.inductance': { label: 'Inductance', help: 'Left out: usual for the resistance.' },
  'load.sensitivity': { label: 'Sensitivity', help: 'dB SPL at 1 mW; left out: usual for its kind.' },
  'load.earpiece.sensitivity': { label: 'Sensitivity', help: 'dB SPL at 1 V; left out: usual for its kind.' },
  'load.capacitance': { label: 'Capacitance' },
  'load.resistor': {
    label: 'Resistor across it',
    help: 'Discharges what the detector charges; without a resistor the detector stops conducting.',
  },
  'load.impedance': { label: 'Impedance' },
  'load.impedance:measured': { label: 'Impedance', help: 'Its magnitude at 1 kHz.' },
  'load.inputResistance': { label: 'Input resistance' },
  'load.inputCapacitance': { label: 'Input capacitance', help: 'With its lead.' },
  'load.couplingCapacitor': {
    label: 'Coupling capacitor',
    help: 'In series with the input; a resistor must then carry the direct current.',
  },
  'load.loadResistor': { label: 'Load resistor', help: 'Across the detector’s output.' },
  'load.soundAtFullInput': {
    label: 'Sound at 10 mV in',
    help: 'dB SPL that the amplifier and its speaker or phones give for 10 mV at its input.',
  },
  'load.supply': { label: 'Runs from' },
  'load.equalizer': { label: 'Equalizer' },
  'load.transformer': { label: 'Transformer' },
};

export const transformerFields: TextsOf<'transformer'> = {
  'transformer.ratio': { label: 'Turns ratio', help: 'Detector side to phones side.' },
  'transformer.primaryResistance': { label: 'Primary resistance' },
  'transformer.secondaryResistance': { label: 'Secondary resistance' },
  'transformer.primaryInductance': { label: 'Primary inductance' },
  'transformer.leakage': {
    label: 'Leakage',
    help: 'Share of the primary’s inductance that the secondary does not link.',
  },
  'transformer.coreLoss': {
    label: 'Iron loss',
    help: 'As a resistance across the primary; left out: usual for its inductance.',
  },
  'transformer.windingCapacitance': { label: 'Winding capacitance', help: 'Across the primary.' },
};
