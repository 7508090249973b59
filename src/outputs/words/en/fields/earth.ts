import type { TextsOf } from './texts-of.ts';

export const earthFields: TextsOf<'earth'> = {
  'earth.soilResistivity': {
    label: 'Soil resistivity',
    help: 'Clay and loam 80, sandy soil 300, dry sand 1500 Ω·m, five times less or more. Left out: the usual soil over the ground of the place.',
  },
  'earth.soil': {
    label: 'Soil',
    help: 'A kind of soil has its own resistivity and spread, “as the place” what is usual over the ground of the place; the figure below is then not used.',
  },
  'earth.rod.length': { label: 'Rod length' },
  'earth.diameter': { label: 'Diameter' },
  'earth.depth': { label: 'Depth' },
  'earth.wire': { label: 'Wire diameter' },
  'earth.count': { label: 'Rods' },
  'earth.radials.count': { label: 'Radials' },
  'earth.counterpoise.count': { label: 'Wires', help: 'From the set outwards.' },
  'earth.spacing': { label: 'Spacing' },
  'earth.layout': { label: 'Layout' },
  'earth.side': { label: 'Side' },
  'earth.lie': { label: 'Lies', help: 'Upright: its middle must be deeper than half its height.' },
  'earth.length': { label: 'Length' },
  'earth.radials.length': { label: 'Length of each' },
  'earth.height': { label: 'Height' },
  'earth.resistance': { label: 'Resistance' },
  'earth.resistance:waterPipe': {
    label: 'Resistance',
    help: 'Only a metal pipe that runs into the ground, never one for gas or heating.',
  },
};
