import { signal } from '@preact/signals';
import type { StageId } from '../../engine/index.ts';

/** What stands at some stages of the path at this moment, while one listens, in the stages' own units. */
export const liveLevels = signal<Partial<Record<StageId, number>>>({});

/** Once a second is movement enough for those who asked for little. */
const CALM_MS = 1000;
let shown = 0;

/** From the traces of the last few milliseconds: carrier at the detector and audio behind it, V; sound, dB SPL. */
export function showLive(trace: { envelope: Float32Array; detected: Float32Array; level: number }): void {
  const now = performance.now();
  if (matchMedia('(prefers-reduced-motion: reduce)').matches && now - shown < CALM_MS) return;
  shown = now;
  let carrier = 0;
  for (const value of trace.envelope) carrier += value;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of trace.detected) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  liveLevels.value = { detector: carrier / trace.envelope.length, audio: (high - low) / 2, ear: trace.level };
}

export function showNothingLive(): void {
  liveLevels.value = {};
}
