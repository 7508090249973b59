import { describe, expect, it } from 'vitest';
import { type Heard, heard } from './heard.ts';
import type { RoomName } from './room.ts';

const at = (level: number, room: RoomName, bandwidth = 4500): Heard =>
  heard({ soundPressureLevelAt: () => level, room, bandwidth });

/** What is heard just below and just above the level at which a word begins. */
function beginning(word: Heard['loudness'], room: RoomName): readonly [below: Heard, above: Heard] {
  const order: readonly Heard['loudness'][] = ['not heard', 'faint', 'quiet', 'comfortable', 'loud'];
  let [low, high] = [-60, 140];
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (order.indexOf(at(middle, room).loudness) >= order.indexOf(word)) high = middle;
    else low = middle;
  }
  return [at(low, room), at(high, room)];
}

describe('the level at which each verdict begins', () => {
  // dB of the loud moments of speech over the threshold in silence, and over the noise of the room.
  it.each([
    ['faint', 0, 0],
    ['quiet', 15, 10],
    ['comfortable', 35, 22],
  ] as const)('%s: %s dB above the threshold in silence and %s dB above what the room masks', (word, silent, noisy) => {
    for (const room of ['night', 'quiet room', 'living room', 'workshop', 'out of doors'] as const) {
      const [below, above] = beginning(word, room);
      expect(above.loudness).toBe(word);
      expect(below.loudness).not.toBe(word);
      const [overSilence, overNoise] = [above.marginInSilence - silent, above.margin - noisy];
      expect(Math.min(overSilence, overNoise), room).toBeCloseTo(0, 4);
    }
  });

  it('loud: 67 dB above the threshold in silence, or 80 dB(A)', () => {
    for (const room of ['night', 'workshop'] as const) {
      const [below, above] = beginning('loud', room);
      expect([below.loudness, above.loudness]).toEqual(['comfortable', 'loud']);
      expect(Math.max(above.marginInSilence - 67, above.splA - 80)).toBeCloseTo(0, 4);
    }
  });

  it('harmful: warned of from 85 dB(A), not below', () => {
    const level = 85 - at(0, 'night').splA;
    expect(at(level - 0.01, 'night').warnings).toEqual([]);
    expect(at(level + 0.01, 'night').warnings.length).toBe(1);
  });
});
