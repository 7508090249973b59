import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { capital, formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { group } from '../../scene/build.ts';
import type { Scene } from '../../scene/scene.ts';
import { drawing, type Room } from '../paper.ts';
import { drawnBasket } from './basket.ts';
import { drawnCore, drawnMeasured } from './core.ts';
import type { DrawnCoil, Tap } from './drawn.ts';
import { drawnSection } from './section.ts';
import { drawnSolenoid } from './solenoid.ts';
import { drawnSpider } from './spider.ts';
import { drawnSpiral } from './spiral.ts';

export interface CoilDrawing extends Room {
  /** Counted from the earthed end. */
  readonly taps?: readonly Tap[];
  /** Workbench to open, "coils.0". */
  readonly part?: string;
}

/** What a coil looks like, to scale, with its taps and measures. @throws RangeError for a coil that cannot be wound. */
export function drawCoil(coil: CoilDescription, options: CoilDrawing = {}): Scene {
  const taps = (options.taps ?? []).filter((t) => t.turn > 0 && t.turn < turnsOf(coil));
  const drawn = drawnCoil(coil, taps, options);
  const items =
    options.part === undefined ? drawn.items : [group(drawn.items, { part: options.part, title: coil.name })];
  return drawing(drawn.paper, `Coil “${coil.name}”`, coilWords(coil, taps), items);
}

function drawnCoil(coil: CoilDescription, taps: readonly Tap[], room: Room): DrawnCoil {
  switch (coil.shape) {
    case 'solenoid':
      return drawnSolenoid(coil, taps, room);
    case 'multilayer':
    case 'bank-wound':
      return drawnSection(coil, taps, room);
    case 'spiral':
      return drawnSpiral(coil, taps, room);
    case 'spider':
      return drawnSpider(coil, taps, room);
    case 'basket':
      return drawnBasket(coil, taps, room);
    case 'core':
      return drawnCore(coil, taps, room);
    case 'measured':
      return drawnMeasured(coil, room);
  }
}

export const turnsOf = (coil: CoilDescription): number =>
  coil.shape === 'multilayer' ? coil.turnsPerLayer * coil.layers : coil.turns;

/** A coil in one sentence or two. */
export function coilWords(coil: CoilDescription, taps: readonly Tap[] = []): string {
  const turns = `${formatNumber(turnsOf(coil), 4)} turns`;
  const mm = (x: number): string => formatQuantity(x, 'length', 3);
  const wire =
    coil.shape === 'measured'
      ? ''
      : ` of ${mm(coil.wire.size)} ${coil.wire.covering === 'bare' ? 'bare' : `${coil.wire.covering}-covered`} wire`;
  const tapped =
    taps.length > 0 ? ` Taps: ${taps.map((t) => `${t.name} at ${formatNumber(t.turn, 3)}`).join(', ')}.` : '';
  const what = (): string => {
    switch (coil.shape) {
      case 'solenoid':
        return `${turns}${wire} in one layer on a ${mm(coil.formerDiameter)} former${coil.pitch ? `, ${mm(coil.pitch)} from turn to turn` : ', wound close'}`;
      case 'multilayer':
        return `${turns}${wire} in ${coil.layers} layers of ${formatNumber(coil.turnsPerLayer, 4)} on a ${mm(coil.formerDiameter)} former`;
      case 'bank-wound':
        return `${turns}${wire} in ${coil.layers} banks on a ${mm(coil.formerDiameter)} former`;
      case 'spiral':
        return `flat spiral of ${turns}${wire} from ${mm(coil.innerDiameter)} outward`;
      case 'spider':
        return `${turns}${wire} woven through ${coil.slots} slots, ${coil.over === 1 ? 'every vane' : 'two vanes'} at a time, from ${mm(coil.innerDiameter)} outward`;
      case 'basket':
        return `${turns}${wire} woven round ${coil.pegs} pegs on a ${mm(coil.pegCircle)} circle, ${coil.over} at a time`;
      case 'core':
        return `${turns}${wire} on a ${coil.form}`;
      case 'measured':
        return `measured coil of ${formatQuantity(coil.inductance, 'inductance')}, Q ${formatNumber(coil.q, 3)} at ${formatNumber(coil.at / 1e3, 4)} kHz`;
    }
  };
  const words = what();
  return `${capital(words)}.${tapped}`;
}

/** Where a set's arrangement taps one of its coils. */
export function tapsOf(set: Pick<SetDescription, 'arrangement' | 'coils' | 'detector'>, index: number): Tap[] {
  const a = set.arrangement;
  const name = set.coils[index]?.name;
  const taps: Tap[] = [];
  const has = <K extends string>(key: K): number | undefined => (a as unknown as Record<K, number | undefined>)[key];
  if ('coil' in a && a.coil === name) {
    if (a.kind === 'tapped') taps.push({ name: 'aerial', turn: a.aerialTap });
    const detectorTap = has('detectorTap');
    if (detectorTap !== undefined && set.detector.wiring !== 'full-wave')
      taps.push({ name: 'detector', turn: detectorTap });
    if (set.detector.wiring === 'full-wave' && a.kind !== 'slider' && a.kind !== 'variometer')
      taps.push({ name: 'middle', turn: turnsOf(set.coils[index]) / 2 });
  }
  if (a.kind === 'two circuits' && a.aerialCoil === name && a.aerialTap !== undefined)
    taps.push({ name: 'aerial', turn: a.aerialTap });
  return taps.sort((p, q) => p.turn - q.turn);
}
