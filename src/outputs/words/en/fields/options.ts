import type { FieldId } from '../../../../engine/fields/field-ids.ts';
import type { DielectricName } from '../../../../engine/parts/capacitor/dielectrics.ts';
import type { SetDescription } from '../../../../engine/set/description.ts';

/** The values of a field of any variant of a part. */
type ValueOf<Part, Key extends string> = Part extends { readonly [K in Key]?: infer Value }
  ? Extract<Value, string>
  : never;
type Aerial = SetDescription['aerial'];
type Earth = SetDescription['earth'];
type Coil = SetDescription['coils'][number];
type Wire = Extract<Coil, { wire: unknown }>['wire'];
type Detector = SetDescription['detector'];
type Place = SetDescription['place'];
type Trap = NonNullable<Extract<SetDescription['arrangement'], { traps?: unknown }>['traps']>[number];

/** What may be chosen in each field that is a choice: an option without a name does not compile. */
interface Options {
  readonly 'arrangement.unusedTurns': ValueOf<SetDescription['arrangement'], 'unusedTurns'>;
  readonly 'trap.kind': Trap['kind'];
  readonly 'tuning.law': ValueOf<SetDescription['tuning'], 'law'>;
  readonly 'tuning.vanes.dielectric': DielectricName;
  readonly 'tuning.dielectric': DielectricName;
  readonly 'tuning.plates.dielectric': DielectricName;
  readonly 'tuning.tubes.dielectric': DielectricName;
  readonly 'wire.covering': ValueOf<Wire, 'covering'>;
  readonly 'wire.metal': ValueOf<Wire, 'metal'>;
  readonly 'coil.former': ValueOf<Coil, 'former'>;
  readonly 'coil.form': ValueOf<Coil, 'form'>;
  readonly 'earth.soil': ValueOf<Earth, 'soil'>;
  readonly 'earth.layout': ValueOf<Earth, 'layout'>;
  readonly 'earth.lie': ValueOf<Earth, 'lie'>;
  readonly 'detector.wiring': ValueOf<Detector, 'wiring'>;
  readonly 'detector.spot': ValueOf<Detector, 'spot'>;
  readonly 'detector.mineral': ValueOf<Detector, 'mineral'>;
  readonly 'detector.make': ValueOf<Detector, 'make'>;
  readonly 'detector.type': ValueOf<Detector, 'type'>;
  readonly 'aerial.surroundings': ValueOf<Aerial, 'surroundings'>;
  readonly 'aerial.outline': ValueOf<Aerial, 'outline'>;
  readonly 'aerial.winding': Exclude<ValueOf<Extract<Aerial, { kind: 'frame' }>, 'winding'>, number>;
  readonly 'load.make': ValueOf<SetDescription['load'], 'make'>;
  readonly 'load.supply': ValueOf<SetDescription['load'], 'supply'>;
  readonly 'ground.kind': 'sea' | 'fresh water' | 'wet' | 'average' | 'dry' | 'very dry';
  readonly 'station.programme': ValueOf<Place['stations'][number], 'programme'>;
  readonly 'listening.time': 'day' | 'night';
  readonly 'place.environment': ValueOf<Place, 'environment'>;
  readonly 'ear.room': ValueOf<SetDescription['ear'], 'room'>;
}

type Names<Option extends string> = { readonly [O in Option]: string };

const DIELECTRICS: Names<DielectricName> = {
  air: 'air',
  paper: 'paper',
  'waxed paper': 'waxed paper',
  wax: 'paraffin wax',
  mica: 'mica',
  polythene: 'polythene',
  polypropylene: 'polypropylene',
  polyester: 'polyester',
  polystyrene: 'polystyrene',
  PTFE: 'PTFE',
  glass: 'window glass',
  'hard glass': 'hard glass (borosilicate)',
  card: 'card',
  phenolic: 'phenolic board',
  ebonite: 'ebonite',
};

const OPTIONS: { readonly [Field in keyof Options]: Names<Options[Field]> } = {
  'trap.kind': { series: 'series', parallel: 'parallel', absorption: 'absorption' },
  'tuning.law': {
    semicircular: 'semicircular',
    'square-law': 'square-law',
    'straight-line frequency': 'straight-line frequency',
    logarithmic: 'logarithmic',
  },
  'tuning.vanes.dielectric': DIELECTRICS,
  'tuning.dielectric': DIELECTRICS,
  'tuning.plates.dielectric': DIELECTRICS,
  'tuning.tubes.dielectric': DIELECTRICS,
  'wire.covering': {
    bare: 'bare',
    enamel: 'enamel',
    'single cotton': 'single cotton',
    'double cotton': 'double cotton',
    'single silk': 'single silk',
    'double silk': 'double silk',
    'enamel and cotton': 'enamel and cotton',
    'enamel and silk': 'enamel and silk',
    PVC: 'PVC',
    'stranded PVC': 'stranded PVC',
    'zip cord': 'zip cord',
    PTFE: 'PTFE',
  },
  'wire.metal': { copper: 'copper', aluminium: 'aluminium' },
  'coil.former': {
    air: 'air',
    card: 'card',
    'damp card': 'damp card',
    wood: 'wood',
    phenolic: 'phenolic',
    styrene: 'styrene',
    ebonite: 'ebonite',
    glass: 'glass',
    ceramic: 'ceramic',
    PVC: 'PVC',
    plywood: 'plywood',
    'waxed card': 'waxed card',
    hardboard: 'hardboard',
    acrylic: 'acrylic',
    ABS: 'ABS',
    PLA: 'PLA',
    polycarbonate: 'polycarbonate',
    polyethylene: 'polyethylene',
    polypropylene: 'polypropylene',
    fibreglass: 'fibreglass',
  },
  'coil.form': { toroid: 'toroid', 'pot core': 'pot core' },
  'earth.soil': {
    'as the place': 'as the place',
    'as its resistivity': 'as its resistivity',
    'garden loam': 'garden loam',
    clay: 'clay',
    chalk: 'chalk',
    'clay, sand and gravel': 'clay, sand and gravel',
    'dry sand': 'dry sand',
    'ashes and cinders': 'ashes and cinders',
    'clay, shale and loam': 'clay, shale and loam',
    'loam with sand and gravel': 'loam with sand and gravel',
    'gravel, sand and stones': 'gravel, sand and stones',
  },
  'earth.layout': { row: 'in a row', ring: 'in a ring', square: 'in a square' },
  'earth.lie': { level: 'level', upright: 'upright' },
  'arrangement.unusedTurns': { shorted: 'shorted', open: 'left open' },
  'detector.wiring': { single: 'single', 'full-wave': 'full-wave', doubler: 'voltage doubler' },
  'detector.spot': { good: 'good', fair: 'fair', poor: 'poor' },
  'detector.mineral': {
    'iron pyrites': 'iron pyrites',
    'zincite-bornite': 'zincite and bornite',
    carborundum: 'carborundum',
    'silicon crystal': 'silicon crystal',
  },
  'detector.make': { 'point contact': 'point contact', 'gold-bonded': 'gold-bonded' },
  'detector.type': {
    'HSMS-2850': 'HSMS-2850',
    'HSMS-2860': 'HSMS-2860',
    'HSMS-2820': 'HSMS-2820',
    'HSMS-2810': 'HSMS-2810',
    'HSMS-2800': 'HSMS-2800',
    '1N5711': '1N5711',
  },
  'aerial.surroundings': {
    nothing: 'nothing (as calculated)',
    'open field': 'open field',
    garden: 'garden',
    'between houses': 'between houses',
    'under the roof': 'under the roof',
    indoors: 'indoors',
  },
  'aerial.outline': { square: 'square', round: 'round' },
  'aerial.winding': { box: 'box', spiral: 'spiral' },
  'load.make': { magnetic: 'magnetic', 'balanced armature': 'balanced armature' },
  'load.supply': { battery: 'battery', mains: 'mains' },
  'ground.kind': {
    sea: 'sea',
    'fresh water': 'fresh water',
    wet: 'wet',
    average: 'average',
    dry: 'dry',
    'very dry': 'very dry',
  },
  'station.programme': { speech: 'speech', music: 'music', mixed: 'mixed', tone: 'tone' },
  'listening.time': { day: 'day', night: 'night' },
  'place.environment': { city: 'city', residential: 'residential', rural: 'rural', 'quiet rural': 'quiet rural' },
  'ear.room': {
    night: 'quiet room at night',
    'quiet room': 'quiet room',
    'living room': 'living room',
    workshop: 'workshop',
    'out of doors': 'outdoors',
  },
};

/**
 * What an option is called where it is chosen.
 * @param field the field that is a choice
 * @param option as a file has it
 * @returns its name; the option itself where it is the builder's own, as the name of a coil
 */
export function optionName(field: FieldId | undefined, option: string): string {
  if (field === undefined || !Object.hasOwn(OPTIONS, field)) return option;
  const names: Readonly<Record<string, string>> = OPTIONS[field as keyof Options];
  return Object.hasOwn(names, option) ? names[option] : option;
}

/** Options with names, by field. */
export const namedOptions: Readonly<Partial<Record<FieldId, Readonly<Record<string, string>>>>> = OPTIONS;
