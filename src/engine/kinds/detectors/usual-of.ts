import type { DetectorDescription } from './detector-schema.ts';

type Mineral = Extract<DetectorDescription, { kind: 'mineral' }>['mineral'];
type Schottky = Extract<DetectorDescription, { kind: 'schottky' }>['type'];

const room = { temperature: 300.15, wiring: 'single' } as const;
const mineral = (name: Mineral): DetectorDescription => ({ kind: 'mineral', mineral: name, ...room });
const schottky = (type: Schottky): DetectorDescription => ({ kind: 'schottky', type, ...room });

const DESCRIPTIONS: Readonly<Record<string, DetectorDescription>> = {
  'galena-good': { kind: 'galena', spot: 'good', ...room },
  'galena-fair': { kind: 'galena', spot: 'fair', ...room },
  'galena-poor': { kind: 'galena', spot: 'poor', ...room },
  'iron-pyrites': mineral('iron pyrites'),
  'zincite-bornite': mineral('zincite-bornite'),
  // A sealed carborundum needs its bias.
  carborundum: { ...mineral('carborundum'), bias: 0.8 },
  'silicon-crystal': mineral('silicon crystal'),
  germanium: { kind: 'germanium', make: 'point contact', ...room },
  'gold-bonded-germanium': { kind: 'germanium', make: 'gold-bonded', ...room },
  'HSMS-2850': schottky('HSMS-2850'),
  'HSMS-2860': schottky('HSMS-2860'),
  'HSMS-2820': schottky('HSMS-2820'),
  'HSMS-2810': schottky('HSMS-2810'),
  'HSMS-2800': schottky('HSMS-2800'),
  '1N5711': schottky('1N5711'),
  silicon: { kind: 'silicon', ...room },
  valve: { kind: 'valve', heaterVoltage: 6.3, ratedHeaterVoltage: 6.3, wiring: 'single' },
};

/** A device of the library as a builder would describe it, at room temperature; undefined for what the library has not. */
export const usualDescription = (id: string): DetectorDescription | undefined =>
  Object.hasOwn(DESCRIPTIONS, id) ? DESCRIPTIONS[id] : undefined;
