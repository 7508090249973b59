import type { ArrangementDescription } from '../../../engine/kinds/arrangements/arrangement-schema.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import type { Diagram } from './diagram.ts';
import { elementListDiagram } from './element-list.ts';
import { coupled } from './layouts/coupled.ts';
import { loop } from './layouts/loop.ts';
import { single } from './layouts/single.ts';
import { slider } from './layouts/slider.ts';
import { variometer } from './layouts/variometer.ts';

const LAYOUTS: ByKind<ArrangementDescription, Diagram, [SetDescription]> = {
  direct: (arrangement, set) => single(set, arrangement),
  'series capacitor': (arrangement, set) => single(set, arrangement),
  tapped: (arrangement, set) => single(set, arrangement),
  coupled: (arrangement, set) => coupled(set, arrangement),
  'two circuits': (arrangement, set) => coupled(set, arrangement),
  frame: (arrangement, set) => loop(set, arrangement),
  'ferrite rod': (arrangement, set) => loop(set, arrangement),
  slider: (arrangement, set) => slider(set, arrangement),
  variometer: (arrangement, set) => variometer(set, arrangement),
  elements: (arrangement, set) => elementListDiagram(set, arrangement),
};

/** A set's circuit laid out as the trade draws it: aerial at the left top, earth below, the signal from left to right. */
export const circuitDiagram = (set: SetDescription): Diagram => byKind(LAYOUTS, set.arrangement, set);
