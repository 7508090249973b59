import type { TextsOf } from './texts-of.ts';

export const arrangementFields: TextsOf<'arrangement'> = {
  'arrangement.seriesCapacitor': { label: 'Series capacitor', help: 'In the aerial lead.' },
  'arrangement.aerialTap': {
    label: 'Aerial tap',
    help: 'Turns from the earthed end, or a share of all as “25\u00a0%”.',
  },
  'arrangement.detectorTap': {
    label: 'Detector tap',
    help: 'Turns from the earthed end, or a share of all as “50\u00a0%”; left out: the top of the coil.',
  },
  'arrangement.detectorTap:slider': {
    label: 'Detector tap',
    help: 'Turns from the earthed end; left out: at the slider.',
  },
  'arrangement.usedTurns': {
    label: 'Turns in use',
    help: 'From the earthed end, where only part of the coil is tuned; left out: all.',
  },
  'arrangement.unusedTurns': {
    label: 'Turns not in use',
    help: 'Where only part of the coil is in use; left out: shorted.',
  },
  'arrangement.coil': { label: 'Tuning coil', help: 'Name of one of the coils.' },
  'arrangement.variometer.coil': { label: 'Fixed coil', help: 'Name of one of the coils.' },
  'arrangement.distance': { label: 'Distance', help: 'Along the axis, middle to middle.' },
  'arrangement.tilt': { label: 'Tilt, degrees', help: 'Between the axes.' },
  'arrangement.coupling': {
    label: 'Coupling',
    help: 'Coupling coefficient k, where it was measured or the coils are cores; it wins over the distance.',
  },
  'arrangement.aerialCoil': { label: 'Aerial coil', help: 'Name of one of the coils.' },
  'arrangement.twoCircuits.aerialCoil': { label: 'Aerial circuit’s coil', help: 'Name of one of the coils.' },
  'arrangement.ganged': {
    label: 'Ganged',
    help: 'One knob turns both; otherwise the aerial circuit is peaked for each station.',
  },
  'arrangement.fewest': { label: 'Fewest turns', help: 'Where the slider’s travel ends.' },
  'arrangement.parallelCapacitor': { label: 'Parallel capacitor' },
  'arrangement.rotor': { label: 'Turning coil', help: 'Name of one of the coils.' },
  'arrangement.traps': { label: 'Traps' },
  'arrangement.aerialTuning': { label: 'Aerial tuning' },
  'arrangement.elements': { label: 'Elements' },
};

export const trapFields: TextsOf<'trap'> = {
  'trap.kind': {
    label: 'Trap',
    help: 'Series: across the aerial and earth; parallel: in the aerial lead; absorption: loosely coupled to the tuning coil.',
  },
  'trap.stops': {
    label: 'Stops',
    help: 'The station to which the trap is tuned, by name or frequency; left out: the resonance of its parts.',
  },
  'trap.coil': { label: 'Trap coil', help: 'Name of one of the coils; it wins over inductance and Q.' },
  'trap.capacitor': { label: 'Trap capacitor', help: 'A variable or home-made one; it wins over the capacitance.' },
  'trap.inductance': { label: 'Inductance' },
  'trap.capacitance': {
    label: 'Capacitance',
    help: 'Fixed; left out: a trimmer, set to the station that the trap stops.',
  },
  'trap.q': { label: 'Q', help: 'Of the trap’s coil, where only its inductance is known.' },
  'trap.coupling': { label: 'Coupling', help: 'Coupling coefficient k, absorption traps only.' },
};

export const elementFields: TextsOf<'element'> = {
  'element.name': { label: 'Name' },
  'element.from': { label: 'From', help: 'A node’s name; "aerial", "earth" and "out" are given.' },
  'element.to': { label: 'To', help: 'A node’s name; "aerial", "earth" and "out" are given.' },
  'element.resistance': { label: 'Resistance' },
  'element.capacitance': { label: 'Capacitance' },
  'element.inductance': { label: 'Inductance' },
  'element.q': { label: 'Q' },
  'element.coil': { label: 'Coil', help: 'Name of one of the coils.' },
  'element.first': { label: 'First', help: 'A node’s name; "aerial", "earth" and "out" are given.' },
  'element.second': { label: 'Second', help: 'A node’s name; "aerial", "earth" and "out" are given.' },
  'element.mutual': { label: 'Mutual inductance' },
};
