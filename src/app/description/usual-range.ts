import { isRecord, type Path, valueAtPath } from '../../engine/index.ts';
import { TAPS, turnsToTap, writtenTurns } from './settle-parts.ts';

/** Where a slider runs: the schema's usual range, but taps end at the top of their coil. */
export function usualRange(
  written: unknown,
  path: Path,
  typical: readonly [number, number] | undefined,
): readonly [number, number] | undefined {
  const turns = turnsOfTap(written, path);
  return turns === undefined ? typical : [1, turns];
}

/** Turns that a tap can be on, of its coil; undefined where the path is no tap's. */
export function turnsOfTap(written: unknown, path: Path): number | undefined {
  const key = String(path[path.length - 1]);
  if (path[0] !== 'arrangement' || !TAPS.some((tap) => tap === key)) return undefined;
  const arrangement = valueAtPath(written, ['arrangement']);
  if (!isRecord(arrangement)) return undefined;
  const { coil, aerialCoil } = arrangement;
  const turns = writtenTurns(written, key === 'aerialTap' && aerialCoil !== undefined ? aerialCoil : coil);
  return turns === undefined ? undefined : turnsToTap(arrangement, key, turns);
}
