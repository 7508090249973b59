import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import { tuningModel } from '../../../engine/kinds/models.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import type { VariableCapacitor } from '../../../engine/parts/capacitor/model.ts';
import { group } from '../../scene/build.ts';
import type { Scene } from '../../scene/scene.ts';
import { capacitorDrawing } from '../../words/index.ts';
import { drawing, type PaperRoom } from '../paper.ts';
import type { DrawnCapacitor } from './drawn.ts';
import { drawnBook, drawnFoil, drawnTubes } from './homemade.ts';
import { drawnFixed, drawnKnob, drawnVanes } from './vanes.ts';

export interface CapacitorDrawing extends PaperRoom {
  /** 0 open … 1 meshed; default 0.5. */
  readonly position?: number;
  /** Workbench to open, "tuning". */
  readonly part?: string;
}

/**
 * The tuning capacitor, its moving part where the pointer has it.
 * @param tuning as read
 * @param options where the pointer stands (0 open to 1 meshed), and the room
 * @returns a scene, mm
 * @throws RangeError when it cannot be as described.
 */
export function drawCapacitor(tuning: TuningDescription, options: CapacitorDrawing = {}): Scene {
  const position = Math.min(1, Math.max(0, options.position ?? 0.5));
  const model = tuningModel(tuning);
  const drawn = byKind(KINDS, tuning, { model, position, options });
  const { min, max, swing } = model;
  const description = capacitorDrawing.description(tuning, {
    min,
    max,
    swing,
    position,
    capacitance: model.capacitanceAt(position),
    angle: model.angleAt(position),
  });
  const items =
    options.part === undefined
      ? drawn.items
      : [group(drawn.items, { part: options.part, title: capacitorDrawing.title })];
  return drawing(drawn.paper, capacitorDrawing.title, description, items);
}

interface Here {
  readonly model: VariableCapacitor;
  readonly position: number;
  readonly options: CapacitorDrawing;
}

const KINDS: ByKind<TuningDescription, DrawnCapacitor, [Here]> = {
  variable: (tuning, { model, position, options }) => drawnVanes(tuning, model, position, options),
  vanes: (tuning, { model, position, options }) => drawnVanes(tuning, model, position, options),
  measured: (_, { model, position, options }) => drawnKnob(model.angleAt(position), model.swing, options),
  foil: (tuning, { position, options }) => drawnFoil(tuning, position, options),
  tubes: (tuning, { position, options }) => drawnTubes(tuning, position, options),
  book: (tuning, { position, options }) => drawnBook(tuning, position, options),
  fixed: ({ capacitance }, { options }) => drawnFixed(capacitance, options),
};
