import { usedTurns } from '../../../engine/kinds/arrangements/used-turns.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { group } from '../../scene/build.ts';
import type { Scene } from '../../scene/scene.ts';
import { coilDrawing } from '../../words/index.ts';
import { drawing, type PaperRoom } from '../paper.ts';
import { drawnBasket } from './basket.ts';
import { drawnCore, drawnMeasured } from './core.ts';
import type { DrawnCoil, Tap } from './drawn.ts';
import { drawnSection } from './section.ts';
import { drawnSolenoid } from './solenoid.ts';
import { drawnSpider } from './spider.ts';
import { drawnSpiral } from './spiral.ts';

export interface CoilDrawing extends PaperRoom {
  /** Counted from the earthed end. */
  readonly taps?: readonly Tap[];
  /** Workbench to open, "coils.0". */
  readonly part?: string;
}

/**
 * What a coil looks like, to scale, with its taps and measures.
 * @param coil as read, m
 * @param options taps (turns) and the room
 * @returns a scene, mm
 * @throws RangeError for a coil that cannot be wound.
 */
export function drawCoil(coil: CoilDescription, options: CoilDrawing = {}): Scene {
  const taps = (options.taps ?? []).filter((t) => t.turn > 0 && t.turn < turnsOf(coil));
  const drawn = byKind(SHAPES, coil, taps, options);
  const items =
    options.part === undefined ? drawn.items : [group(drawn.items, { part: options.part, title: coil.name })];
  return drawing(drawn.paper, coilDrawing.title(coil.name), coilDrawing.description(coil, taps), items);
}

const SHAPES: ByKind<CoilDescription, DrawnCoil, [taps: readonly Tap[], room: PaperRoom]> = {
  solenoid: drawnSolenoid,
  multilayer: drawnSection,
  'bank-wound': drawnSection,
  spiral: drawnSpiral,
  spider: drawnSpider,
  basket: drawnBasket,
  core: drawnCore,
  measured: (coil, _, room) => drawnMeasured(coil, room),
};

export const turnsOf = (coil: CoilDescription): number =>
  coil.shape === 'multilayer' ? coil.turnsPerLayer * coil.layers : coil.turns;

/** Where a set taps one of its coils, on all the bands of its switch: by turn, each tap once. */
export function tapsOf(
  set: Pick<SetDescription, 'arrangement' | 'bands' | 'coils' | 'detector'>,
  index: number,
): readonly Tap[] {
  const arrangements = [set.arrangement, ...(set.bands ?? []).flatMap(({ arrangement }) => arrangement ?? [])];
  const taps = arrangements.flatMap((arrangement) => tapsIn(arrangement, set, index));
  return taps
    .filter((tap, i) => taps.findIndex(({ name, turn }) => name === tap.name && turn === tap.turn) === i)
    .sort((p, q) => p.turn - q.turn);
}

function tapsIn(
  a: SetDescription['arrangement'],
  { coils, detector }: Pick<SetDescription, 'coils' | 'detector'>,
  index: number,
): Tap[] {
  const name = coils[index]?.name;
  const taps: Tap[] = [];
  const has = <K extends string>(key: K): number | undefined => (a as unknown as Record<K, number | undefined>)[key];
  if ('coil' in a && a.coil === name) {
    if (a.kind === 'tapped') taps.push({ name: 'aerial', turn: a.aerialTap });
    const detectorTap = has('detectorTap');
    if (detectorTap !== undefined && detector.wiring !== 'full-wave')
      taps.push({ name: 'detector', turn: detectorTap });
    const { used, rest } = usedTurns(a, turnsOf(coils[index]));
    if (rest !== undefined) taps.push({ name: 'in use', turn: used });
    if (detector.wiring === 'full-wave' && a.kind !== 'slider' && a.kind !== 'variometer')
      taps.push({ name: 'middle', turn: used / 2 });
  }
  if (a.kind === 'two circuits' && a.aerialCoil === name && a.aerialTap !== undefined)
    taps.push({ name: 'aerial', turn: a.aerialTap });
  return taps;
}
