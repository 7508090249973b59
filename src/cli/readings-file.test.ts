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

test('calc fit tells tables of readings from recordings, and refuses with words what says neither', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'readings-'));
  const run = async (name: string, text: string) => {
    writeFileSync(join(folder, name), text);
    const io = memoryIo();
    await calc.run(['fit', join(folder, name)], io);
    return JSON.parse(io.dataPrinted);
  };
  try {
    const table = 'capacitance [pF];frequency [kHz]\n100;1022\n220;704\n330;579\n470;487\n';
    const byTable = await run('points.csv', `# kind: resonance\n${table}`);
    const points = [
      [100, 1022],
      [220, 704],
      [330, 579],
      [470, 487],
    ].map(([pF, kHz]) => ({ capacitance: `${pF} pF`, frequency: `${kHz} kHz` }));
    expect(byTable).toEqual(await run('points.json', JSON.stringify({ kind: 'resonance', points })));
    await expect(run('points.csv', table)).rejects.toThrow(/points\.csv is no recording .*“# kind: resonance”/);
    await expect(run('broken.csv', `# kind: resonance\n${table.replace('704', '7O4')}`)).rejects.toThrow(
      /line 4, points\[1\]\.frequency: /,
    );
    await expect(run('coil.s1p', '# MHz S RI R 50\n1 0.5 0.5\n')).rejects.toThrow(/"kind":"analyser-coil"/);
    const sweep = Array.from({ length: 30 }, (_, i) => {
      const [f, x] = [0.2 + 0.04 * i, (2 * Math.PI * 200 * (0.2 + 0.04 * i)) / 50];
      return `${f} ${(x * x - 1) / (x * x + 1)} ${(2 * x) / (x * x + 1)}`;
    });
    writeFileSync(join(folder, 'coil.s1p'), `# MHz S RI R 50\n${sweep.join('\n')}\n`);
    const named = await run('coil.json', JSON.stringify({ kind: 'analyser-coil', file: 'coil.s1p' }));
    expect(named.inductance.value / 200e-6).toBeCloseTo(1, 2);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
