import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { memoryIo } from '../../test/support/memory-io.ts';
import { writeWav } from '../outputs/audio/index.ts';
import { calc } from './commands/calc.ts';

test('calc fit reads a recording and a table of it, cut at the edge', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'ringing-'));
  try {
    const [f0, q, rate] = [3000, 25, 48_000];
    const volts = Array.from({ length: 4000 }, (_, i) => {
      const t = (i - 500) / rate;
      return t < 0 ? 0 : 0.8 * Math.exp((-Math.PI * f0 * t) / q) * Math.cos(2 * Math.PI * f0 * t);
    });
    writeFileSync(join(folder, 'ring.wav'), writeWav([Float32Array.from(volts)], { rate, bits: 24 }));
    writeFileSync(join(folder, 'ring.csv'), `s,V\n${volts.map((v, i) => `${i / rate},${v}`).join('\n')}\n`);
    for (const file of ['ring.wav', 'ring.csv']) {
      const io = memoryIo();
      expect(await calc.run(['fit', join(folder, file)], io)).toBe(0);
      const answer = JSON.parse(io.dataPrinted);
      expect(answer.frequency.value, file).toBeCloseTo(f0, 0);
      expect(answer.q.value, file).toBeCloseTo(q, 1);
    }
    writeFileSync(join(folder, 'short.wav'), writeWav([Float32Array.from(volts)], { rate }).slice(0, 30));
    await expect(calc.run(['fit', join(folder, 'short.wav')], memoryIo())).rejects.toThrow(/short\.wav: /);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
