import { type Path, valueAtPath } from '../../engine/index.ts';
import { writtenTurns } from './settle.ts';

/** Where a slider runs: the schema's usual range, but taps end at the top of their coil. */
export function usualRange(
  written: unknown,
  path: Path,
  typical: readonly [number, number] | undefined,
): readonly [number, number] | undefined {
  if (path[0] !== 'arrangement') return typical;
  const key = String(path[path.length - 1]);
  if (key !== 'aerialTap' && key !== 'detectorTap' && key !== 'fewest') return typical;
  const aerialCoil = valueAtPath(written, ['arrangement', 'aerialCoil']);
  const coil =
    key === 'aerialTap' && aerialCoil !== undefined ? aerialCoil : valueAtPath(written, ['arrangement', 'coil']);
  const turns = writtenTurns(written, coil);
  return turns === undefined ? typical : [1, turns];
}
