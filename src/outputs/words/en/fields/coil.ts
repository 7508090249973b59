import type { TextsOf } from './texts-of.ts';

export const coilFields: TextsOf<'coil'> = {
  'coil.name': { label: 'Name', help: 'What you call the coil; an arrangement refers to it.' },
  'coil.former': { label: 'Former', help: 'What the coil is wound on; damp card is lossy.' },
  'coil.formerDiameter': { label: 'Former diameter', help: 'Outside of the former, where the wire lies.' },
  'coil.turns': { label: 'Turns' },
  'coil.turns:measured': { label: 'Turns', help: 'Only for the places of taps.' },
  'coil.pitch': { label: 'Turn spacing', help: 'Wire centre to wire centre; left out: wound close.' },
  'coil.pitch:spiral': { label: 'Turn spacing', help: 'Outward, wire centre to wire centre; left out: wound close.' },
  'coil.layers': { label: 'Banks', help: 'Layers wound turn by turn as the winding goes along.' },
  'coil.multilayer.layers': { label: 'Layers' },
  'coil.turnsPerLayer': { label: 'Turns in a layer' },
  'coil.layerSpacing': { label: 'Layer spacing', help: 'Wire centre to wire centre, outward; left out: layers touch.' },
  'coil.innerDiameter': { label: 'Inner diameter', help: 'Of the first turn, wire centre.' },
  'coil.innerDiameter:spider': { label: 'Inner diameter', help: 'Of the hub where winding begins.' },
  'coil.slots': { label: 'Slots', help: 'An odd number.' },
  'coil.over': { label: 'Vanes passed at a time' },
  'coil.basket.over': { label: 'Pegs passed at a time' },
  'coil.discThickness': { label: 'Disc thickness' },
  'coil.pegCircle': { label: 'Peg circle', help: 'Diameter of the circle of pegs.' },
  'coil.pegs': { label: 'Pegs', help: 'An odd number.' },
  'coil.pegDiameter': { label: 'Peg diameter' },
  'coil.perTurnSquared': {
    label: 'A_L',
    help: 'Inductance of one turn, from the maker’s sheet or a trial winding: "250 nH".',
  },
  'coil.turnLength': { label: 'Length of a turn' },
  'coil.coreQ': { label: 'Q of the core alone', help: 'At the frequencies of interest.' },
  'coil.form': { label: 'Kind of core' },
  'coil.inductance': { label: 'Inductance' },
  'coil.q': { label: 'Q', help: 'As measured.' },
  'coil.q:measured': { label: 'Q', help: 'Of the coil by itself, nothing joined to it.' },
  'coil.at': { label: 'Measured at' },
  'coil.selfCapacitance': { label: 'Self-capacitance' },
};

export const wireFields: TextsOf<'wire'> = {
  'wire.size': {
    label: 'Wire size',
    help: 'Bare diameter or gauge, of stranded wire over all its strands: "28 SWG", "24 AWG", "0.4 mm".',
  },
  'wire.covering': { label: 'Covering', help: 'What insulates it; it sets how close turns can lie.' },
  'wire.metal': { label: 'Metal' },
  'wire.strands': { label: 'Strands', help: 'More than one: Litz, and the size is that of one strand.' },
  'wire.overall': {
    label: 'Diameter over the covering',
    help: 'As measured; left out, the usual one of the covering.',
  },
  'wire.part': { label: 'Wire' },
};
