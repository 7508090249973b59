import type { Stage, StageId } from '../../engine/index.ts';
import { liveLevels } from '../state/live-levels.ts';

/** The span each stage's bar is drawn over: from hardly anything to as much as such sets ever see. */
const SPANS: Readonly<Record<StageId, readonly [number, number]>> = {
  field: [1e-5, 1],
  aerial: [1e-5, 10],
  'tuned circuit': [1e-5, 10],
  detector: [1e-5, 10],
  audio: [1e-7, 1],
  phones: [1e-15, 1e-3],
  ear: [0, 100],
};

/** Where a level lies on its bar, 0 to 1: by ratio, or for sound by decibels. */
function along(id: StageId, value: number): number {
  const [low, high] = SPANS[id];
  const at = id === 'ear' ? (value - low) / (high - low) : Math.log(value / low) / Math.log(high / low);
  return Number.isFinite(at) ? Math.min(1, Math.max(0, at)) : 0;
}

/** A thin bar of the level, with what it may well be, paler; while one listens, a mark where it is at this moment. */
export function LevelBar({ level }: { level?: Stage }) {
  const now = level && liveLevels.value[level.id];
  const at = level?.value === undefined ? 0 : along(level.id, level.value);
  const [low, high] = level?.range ? level.range.map((value) => along(level.id, value)) : [at, at];
  return (
    <svg class="level" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
      <rect class="level-ground" x="0" y="2" width="100" height="2" />
      <rect class="level-range" x={low * 100} y="1" width={Math.max(0, high - low) * 100} height="4" />
      <rect class="level-full" x="0" y="1.5" width={at * 100} height="3" />
      {level && now !== undefined && (
        <rect class="level-now" x={Math.max(0, along(level.id, now) * 100 - 0.8)} y="0" width="1.6" height="6" />
      )}
    </svg>
  );
}
