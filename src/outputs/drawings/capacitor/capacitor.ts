import { tuningModel } from '../../../engine/kinds/models.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { group } from '../../scene/build.ts';
import type { Scene } from '../../scene/scene.ts';
import { drawing, type Room } from '../paper.ts';
import type { DrawnCapacitor } from './drawn.ts';
import { drawnBook, drawnFoil, drawnTubes } from './homemade.ts';
import { drawnFixed, drawnKnob, drawnVanes } from './vanes.ts';

export interface CapacitorDrawing extends Room {
  /** 0 open … 1 meshed; default 0.5. */
  readonly position?: number;
  /** Workbench to open, "tuning". */
  readonly part?: string;
}

/** The tuning capacitor, its moving part where the pointer has it. @throws RangeError when it cannot be as described. */
export function drawCapacitor(tuning: TuningDescription, options: CapacitorDrawing = {}): Scene {
  const position = Math.min(1, Math.max(0, options.position ?? 0.5));
  const model = tuningModel(tuning);
  const drawn = ((): DrawnCapacitor => {
    switch (tuning.kind) {
      case 'variable':
      case 'vanes':
        return drawnVanes(tuning, model, position, options);
      case 'measured':
        return drawnKnob(model.angleAt(position), model.swing, options);
      case 'foil':
        return drawnFoil(tuning, position, options);
      case 'tubes':
        return drawnTubes(tuning, position, options);
      case 'book':
        return drawnBook(tuning, position, options);
      case 'fixed':
        return drawnFixed(tuning.capacitance, options);
    }
  })();
  const at =
    tuning.kind === 'fixed'
      ? ''
      : ` Here at ${formatNumber(model.angleAt(position), 3)}° of ${formatNumber(model.swing, 3)}°: ${formatQuantity(model.capacitanceAt(position), 'capacitance')} with strays.`;
  const words = `${WORDS[tuning.kind]}, ${formatQuantity(model.min, 'capacitance')} to ${formatQuantity(model.max, 'capacitance')} with strays and trimmer.${tuning.kind === 'foil' || tuning.kind === 'tubes' ? ` Here ${Math.round(100 * position)} % pushed home: ${formatQuantity(model.capacitanceAt(position), 'capacitance')}.` : at}`;
  const items =
    options.part === undefined ? drawn.items : [group(drawn.items, { part: options.part, title: 'Tuning capacitor' })];
  return drawing(drawn.paper, 'Tuning capacitor', words, items);
}

const WORDS: Readonly<Record<TuningDescription['kind'], string>> = {
  variable: 'Variable capacitor, the shape of its vanes as its law wants it and their size assumed',
  vanes: 'Variable capacitor of vanes',
  measured: 'Variable capacitor known by measurement',
  foil: 'Capacitor of sliding foil sheets',
  tubes: 'Capacitor of one tube sliding in another',
  book: 'Book capacitor of two hinged leaves',
  fixed: 'Fixed capacitor',
};
