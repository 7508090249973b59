import type { WrittenBox } from '../../../../engine/find/box-schema.ts';
import type { SetDescription, WrittenDescription } from '../../../../engine/set/description.ts';

type Arrangement = SetDescription['arrangement'];

/** Every kind of every part as a file has it: a kind without a name does not compile. */
interface Kinds {
  readonly aerial: WrittenDescription['aerial']['kind'];
  readonly earth: WrittenDescription['earth']['kind'];
  readonly coil: WrittenDescription['coils'][number]['shape'];
  readonly tuning: WrittenDescription['tuning']['kind'];
  readonly arrangement: WrittenDescription['arrangement']['kind'];
  readonly element: Extract<Arrangement, { kind: 'elements' }>['elements'][number]['kind'];
  readonly detector: WrittenDescription['detector']['kind'];
  readonly load: WrittenDescription['load']['kind'];
  readonly former: NonNullable<WrittenBox['formers']>[number]['former']['kind'];
  readonly want: NonNullable<WrittenDescription['wants']>[number]['kind'];
}

/** The parts that come in kinds. */
export type PartWithKinds = keyof Kinds;

/** What the kinds are called where one is chosen. */
const KIND_NAMES: { readonly [Part in PartWithKinds]: Readonly<Record<Kinds[Part], string>> } = {
  aerial: {
    'inverted-L': 'inverted L',
    vertical: 'vertical',
    T: 'T',
    horizontal: 'horizontal',
    sloping: 'sloping',
    bent: 'bent',
    frame: 'frame',
    'ferrite rod': 'ferrite rod',
    measured: 'measured',
    impedance: 'by measured impedance',
    touchstone: 'touchstone',
  },
  earth: {
    rod: 'rod',
    rods: 'rods',
    plate: 'plate',
    'buried wire': 'buried wire',
    radials: 'radials',
    counterpoise: 'counterpoise',
    measured: 'measured',
    'water pipe': 'water pipe',
  },
  coil: {
    solenoid: 'solenoid',
    'bank-wound': 'bank-wound',
    multilayer: 'multilayer',
    spiral: 'spiral',
    spider: 'spider',
    basket: 'basket',
    core: 'toroid or pot core',
    measured: 'measured',
  },
  tuning: {
    variable: 'bought, by its capacitance',
    vanes: 'by its vanes',
    measured: 'measured',
    foil: 'foil',
    plates: 'plates',
    tubes: 'tubes',
    book: 'book',
    fixed: 'fixed',
  },
  arrangement: {
    direct: 'direct',
    'series capacitor': 'series capacitor',
    tapped: 'tapped',
    coupled: 'coupled',
    'two circuits': 'two circuits',
    slider: 'slider',
    variometer: 'variometer',
    frame: 'frame',
    'ferrite rod': 'ferrite rod',
    elements: 'a list of elements',
  },
  element: {
    resistor: 'resistor',
    capacitor: 'capacitor',
    inductor: 'inductor',
    coil: 'coil',
    tuning: 'tuning',
    mutual: 'mutual',
    detector: 'detector',
  },
  detector: {
    galena: 'galena',
    mineral: 'mineral',
    germanium: 'germanium',
    schottky: 'schottky',
    silicon: 'silicon',
    exponential: 'by its own constants',
    valve: 'valve',
    measured: 'measured',
  },
  load: {
    phones: 'phones',
    'crystal earpiece': 'crystal earpiece',
    'moving-coil phones': 'moving-coil phones',
    amplifier: 'amplifier',
  },
  former: {
    tube: 'tube',
    plate: 'plate',
    rod: 'ferrite rod',
    frame: 'frame',
  },
  want: {
    loudest: 'a station as loud as possible',
    clear: 'a station clear of another',
    band: 'a band covered',
    'most stations': 'as many stations as possible',
    speech: 'clear speech',
    'fewest parts': 'as few parts as possible',
  },
};

/** What a kind is called where one is chosen; one that is not known, as it is written. */
export const kindName = (part: PartWithKinds, kind: string): string =>
  (KIND_NAMES[part] as Readonly<Record<string, string>>)[kind] ?? kind;

/** What the key that chooses a kind is called. */
export const kindLabels: Readonly<Record<string, string>> = { kind: 'Kind', shape: 'Shape' };
