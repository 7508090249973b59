import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { receive } from '../reception/path/receive.ts';
import { readText, readValue } from '../set/read.ts';
import { withValueAt } from '../set/write.ts';
import { levelOf } from './best.ts';
import { matching } from './matching.ts';

describe.each(['medium-wave-galena', 'two-tuned-circuits', 'frame-aerial', 'spider-coil-earpiece'])('%s', (name) => {
  const read = readText(readFileSync(`examples/${name}.json`, 'utf8'));
  if (!read.ok) throw new Error('the example does not read');
  const station = 0;
  const now = levelOf(read.set, station)!;

  it('what is written gives what it promises, and nothing beside it does better', () => {
    const found = matching(read.set, station);
    expect(found.length).toBeGreaterThan(0);
    for (const match of found) {
      if (!match.write) continue;
      const tried = readValue(withValueAt(read.written, match.write.path, match.write.to));
      expect(tried, match.what).toMatchObject({ ok: true });
      if (!tried.ok) continue;
      const gained = levelOf(tried.set, station)! - now;
      expect(gained, match.what).toBeGreaterThan(0.2);
      expect(Math.abs(gained - match.lostNow!), match.what).toBeLessThan(0.2);
    }
  });

  it('what is at hand never beats the best', () => {
    for (const match of matching(read.set, station, { taps: [3, 9, 20], ratios: [4, 20] }))
      for (const { lost } of match.atHand) expect(lost, match.what).toBeGreaterThanOrEqual(0);
  });
});

it('at night the level is what the night brings', () => {
  const read = readText(readFileSync('examples/medium-wave-galena.json', 'utf8'));
  if (!read.ok) throw new Error('the example does not read');
  const { set } = read;
  const [day, night] = (['day', 'night'] as const).map((time) => receive(set, { time }).stations);
  const station = day.findIndex((s, i) => Math.abs(s.soundPressureLevel - night[i].soundPressureLevel) > 10);
  expect(station).toBeGreaterThanOrEqual(0);
  for (const [time, said] of [['day', day[station]] as const, ['night', night[station]] as const])
    for (const { level, lostNow } of matching(set, station, { time }))
      if (lostNow !== undefined) expect(level - lostNow).toBeCloseTo(said.soundPressureLevel, 6);
});
