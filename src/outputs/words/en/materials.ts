import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import type { DielectricName } from '../../../engine/parts/capacitor/dielectrics.ts';
import type { Covering } from '../../../engine/parts/wire/wire.ts';

export type FormerMaterial = Extract<CoilDescription, { former: unknown }>['former'];

/** What a coil is wound on. */
export const formerNames: Record<FormerMaterial, string> = {
  air: 'any dry insulator',
  card: 'card',
  'damp card': 'damp card',
  wood: 'wood',
  phenolic: 'phenolic',
  styrene: 'styrene',
  ebonite: 'ebonite',
  glass: 'glass',
  ceramic: 'ceramic',
  PVC: 'PVC tube',
  plywood: 'plywood',
  'waxed card': 'waxed card',
  hardboard: 'hardboard',
  acrylic: 'acrylic',
  ABS: 'ABS plastic',
  PLA: 'printed PLA',
  polycarbonate: 'polycarbonate',
  polyethylene: 'polyethylene',
  polypropylene: 'polypropylene',
  fibreglass: 'glass-fibre laminate',
};

/** What lies between plates: within a sentence, and at the head of a line. */
export const dielectricNames: Record<DielectricName, { readonly name: string; readonly title: string }> = {
  air: { name: 'air', title: 'Air' },
  paper: { name: 'paper', title: 'Paper' },
  'waxed paper': { name: 'waxed paper', title: 'Waxed paper' },
  wax: { name: 'wax', title: 'Wax' },
  mica: { name: 'mica', title: 'Mica' },
  polythene: { name: 'polythene', title: 'Polythene' },
  polypropylene: { name: 'polypropylene', title: 'Polypropylene' },
  polyester: { name: 'polyester', title: 'Polyester' },
  polystyrene: { name: 'polystyrene', title: 'Polystyrene' },
  PTFE: { name: 'PTFE', title: 'PTFE' },
  glass: { name: 'glass', title: 'Glass' },
  'hard glass': { name: 'hard glass', title: 'Hard glass' },
  card: { name: 'card', title: 'Card' },
  phenolic: { name: 'phenolic board', title: 'Phenolic board' },
  ebonite: { name: 'ebonite', title: 'Ebonite' },
};

/** Of a wire: "enamelled wire". */
export const coveringNames: Record<Covering, string> = {
  bare: 'bare',
  enamel: 'enamelled',
  'single cotton': 'single cotton-covered',
  'double cotton': 'double cotton-covered',
  'single silk': 'single silk-covered',
  'double silk': 'double silk-covered',
  'enamel and cotton': 'enamel and cotton-covered',
  'enamel and silk': 'enamel and silk-covered',
  PVC: 'PVC-covered',
  'stranded PVC': 'stranded PVC-covered',
  'zip cord': 'zip-cord',
  PTFE: 'PTFE-covered',
};
