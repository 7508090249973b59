import type { SetDescription } from '../../../engine/set/description.ts';
import type { Diagram } from './diagram.ts';
import { elementListDiagram } from './element-list.ts';
import { coupled } from './layouts/coupled.ts';
import { loop } from './layouts/loop.ts';
import { single } from './layouts/single.ts';
import { slider } from './layouts/slider.ts';
import { variometer } from './layouts/variometer.ts';

/** A set's circuit laid out as the trade draws it: aerial at the left top, earth below, the signal from left to right. */
export function circuitDiagram(set: SetDescription): Diagram {
  const { arrangement } = set;
  switch (arrangement.kind) {
    case 'direct':
    case 'series capacitor':
    case 'tapped':
      return single(set, arrangement);
    case 'coupled':
    case 'two circuits':
      return coupled(set, arrangement);
    case 'frame':
    case 'ferrite rod':
      return loop(set, arrangement);
    case 'slider':
      return slider(set, arrangement);
    case 'variometer':
      return variometer(set, arrangement);
    case 'elements':
      return elementListDiagram(set, arrangement);
  }
}
