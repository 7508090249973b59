import { type Path, valueAtPath } from '../../engine/index.ts';
import { TAPS, writtenTurns } from './settle-parts.ts';

/** Where a slider runs: the schema's usual range, but taps end at the top of their coil. */
export function usualRange(
  written: unknown,
  path: Path,
  typical: readonly [number, number] | undefined,
): readonly [number, number] | undefined {
  const turns = turnsOfTap(written, path);
  return turns === undefined ? typical : [1, turns];
}

/** Turns of the coil that a tap is on; undefined where the path is no tap's. */
export function turnsOfTap(written: unknown, path: Path): number | undefined {
  const key = String(path[path.length - 1]);
  if (path[0] !== 'arrangement' || !TAPS.some((tap) => tap === key)) return undefined;
  const aerialCoil = valueAtPath(written, ['arrangement', 'aerialCoil']);
  const coil =
    key === 'aerialTap' && aerialCoil !== undefined ? aerialCoil : valueAtPath(written, ['arrangement', 'coil']);
  return writtenTurns(written, coil);
}
