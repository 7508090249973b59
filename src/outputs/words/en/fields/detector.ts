import type { TextsOf } from './texts-of.ts';

export const detectorFields: TextsOf<'detector'> = {
  'detector.wiring': {
    label: 'Detectors',
    help: 'One; two fed from both ends of a centre-tapped coil; or two that add their voltages.',
  },
  'detector.temperature': { label: 'Temperature' },
  'detector.bias': { label: 'Bias', help: 'From a cell, in the direction that helps conduction.' },
  'detector.saturationCurrent': { label: 'Saturation current', help: 'As measured; left out: usual for its kind.' },
  'detector.saturationCurrent:exponential': { label: 'Saturation current' },
  'detector.ideality': { label: 'Ideality', help: 'As measured; left out: usual for its kind.' },
  'detector.ideality:exponential': { label: 'Ideality' },
  'detector.seriesResistance': { label: 'Series resistance' },
  'detector.leakage': { label: 'Leakage', help: 'Reverse resistance in parallel.' },
  'detector.junctionCapacitance': { label: 'Junction capacitance' },
  'detector.valve.junctionCapacitance': { label: 'Anode capacitance' },
  'detector.spot': { label: 'Spot', help: 'How sensitive the contact point of the whisker is.' },
  'detector.mineral': {
    label: 'Mineral',
    help: 'Two crystals of a pair touch each other; carborundum needs a bias cell.',
  },
  'detector.make': { label: 'Make' },
  'detector.type': { label: 'Type', help: 'Their resistance near 0 V differs a thousandfold.' },
  'detector.heaterVoltage': { label: 'Heater voltage' },
  'detector.ratedHeaterVoltage': { label: 'Rated heater voltage' },
  'detector.points.voltage': { label: 'Voltage' },
  'detector.points.current': { label: 'Current' },
  'detector.points': { label: 'Points' },
};
