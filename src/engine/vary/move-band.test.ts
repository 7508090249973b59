import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { moveWords } from '../../outputs/words/index.ts';
import { readText, readValue } from '../set/read.ts';
import { withValueAt } from '../set/write.ts';
import { moveBand } from './move-band.ts';

const text = readFileSync(new URL('../../../examples/long-wave-foil.json', import.meta.url), 'utf8');
const setOf = (change: object = {}) => {
  const read = readValue({ ...JSON.parse(text), ...change });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
};

// What the trade knows of such a move: common practice, no source.
describe('the long-wave example moved to medium wave', () => {
  const move = moveBand(setOf(), { to: 'medium wave' });
  const said = moveWords(move).join(' ');

  it('needs far fewer turns, taps in proportion, and then covers the band', () => {
    expect(move.before.turns).toBe(160);
    expect(move.after.turns!).toBeLessThan(50);
    expect(move.after.turns!).toBeGreaterThan(20);
    // Sixteen times the frequency squared, a sixteenth of the inductance, less what aerial and strays change.
    expect(move.before.inductance / move.after.inductance).toBeGreaterThan(10);
    expect(move.before.inductance / move.after.inductance).toBeLessThan(22);
    expect(move.after.lowest).toBeLessThan(526.5e3);
    expect(move.after.highest).toBeGreaterThan(1606.5e3);
  });

  it('says that the aerial reduces the tuning range, that selectivity falls and that strays matter, with figures', () => {
    expect(said).toMatch(/aerial’s own capacitance reduces the tuning range: .* adds \d+ pF of the \d+ pF/);
    expect(move.plainly.span).toBeLessThan(move.plainly.spanAlone);
    expect(said).toMatch(/Selectivity falls: bandwidth in the middle of the band \d+ kHz/);
    expect(move.after.bandwidthAt(900e3)).toBeGreaterThan(2 * move.before.bandwidthAt(200e3));
    expect(said).toMatch(/Strays shift the tuning more: .*\d+ %/);
    expect(said).toMatch(/Keep the leads .* short/);
    for (const sentence of moveWords(move)) expect(sentence).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('gives the changes for the description as written, which then reads as the changed set', () => {
    const written = move.changes.reduce<unknown>((d, { path, to }) => withValueAt(d, path, to), JSON.parse(text));
    const read = readText(JSON.stringify(written));
    expect(read.ok && read.set.coils).toEqual(move.moved.coils);
    expect(read.ok && read.set.arrangement).toEqual(move.moved.arrangement);
  });

  it('loosens the aerial where it would keep the band’s top out of reach', () => {
    const direct = moveBand(setOf({ arrangement: { kind: 'direct', coil: 'pile', detectorTap: 70 } }), {
      to: 'medium wave',
    });
    expect(direct.plainly.highest).toBeLessThan(1606.5e3);
    expect(direct.after.highest).toBeGreaterThan(direct.plainly.highest * 1.2);
    expect(direct.moved.arrangement.kind).toBe('series capacitor');
    expect(moveWords(direct).join(' ')).toMatch(/in the aerial lead the aerial adds only/);
  });

  it('leaves the coil of a wave trap as it is', () => {
    const { coils, arrangement } = JSON.parse(text);
    const trap = { shape: 'solenoid', name: 'trap', formerDiameter: '40 mm', wire: { size: '0.4 mm' }, turns: 60 };
    const trapped = moveBand(
      setOf({
        coils: [...coils, trap],
        arrangement: { ...arrangement, traps: [{ kind: 'parallel', coil: 'trap', capacitance: '200 pF' }] },
      }),
      { to: 'medium wave' },
    );
    expect(trapped.moved.coils[1]).toEqual(trapped.set.coils[1]);
    expect(trapped.changes.map(({ path }) => path.slice(0, 2))).not.toContainEqual(['coils', 1]);
  });

  it('refuses a set that is there already', () => {
    expect(() => moveBand(setOf(), { to: 'long wave' })).toThrow(/already/);
  });
});
