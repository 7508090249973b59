import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseQuantity, readValue, typedTurns, valueAtPath, variantChoices, withValueAt } from '../../engine/index.ts';
import { problemSentence } from '../../outputs/words/index.ts';
import { changeKind } from './change-kind.ts';
import { addItem, removeItem, renameCoil } from './lists.ts';
import { rewrite } from './quantity-text.ts';
import { schemaAt } from './schema-at.ts';
import { settle } from './settle-parts.ts';
import { quantityScale, sliderScale } from './slider-scale.ts';

const folder = new URL('../../../examples/', import.meta.url);
const examples = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as unknown);
const galena = JSON.parse(readFileSync(new URL('medium-wave-galena.json', folder), 'utf8')) as unknown;
const problems = (written: unknown) => {
  const read = readValue(written);
  return read.ok ? [] : read.problems.map(problemSentence);
};
const PARTS = ['aerial', 'earth', 'tuning', 'arrangement', 'detector', 'load'] as const;

describe('giving a part another kind', () => {
  it('leaves a set that can be read, whatever the kind before and after', () => {
    for (const example of examples) {
      for (const part of PARTS) {
        const kinds = variantChoices(schemaAt(example, [part])!)!.choices;
        for (const first of kinds) {
          const leading = part === 'aerial' || part === 'arrangement' ? part : 'other';
          const once = settle(changeKind(example, [part], first).written, leading).written;
          expect(problems(once), `${part}: ${first}`).toEqual([]);
          for (const second of kinds) {
            const twice = settle(changeKind(once, [part], second).written, leading).written;
            expect(problems(twice), `${part}: ${first}, then ${second}`).toEqual([]);
          }
        }
      }
      for (const shape of variantChoices(schemaAt(example, ['coils', 0])!)!.choices) {
        const changed = settle(changeKind(example, ['coils', 0], shape).written, 'coils').written;
        expect(problems(changed), `coil: ${shape}`).toEqual([]);
      }
    }
  });

  it('keeps what still makes sense, names what it dropped, and leaves unknown keys alone', () => {
    const own = withValueAt(galena, ['arrangement', 'pencilled'], 'try 30 turns');
    const { written, dropped } = changeKind(own, ['arrangement'], 'direct');
    expect(valueAtPath(written, ['arrangement'])).toEqual({
      kind: 'direct',
      coil: 'main',
      detectorTap: 18,
      pencilled: 'try 30 turns',
    });
    expect(dropped).toEqual(['Aerial tap 11']);
  });

  it('winds a rod anew: the turns and wire of a frame are nothing to it, nor the other way', () => {
    const frame = changeKind(galena, ['aerial'], 'frame').written;
    const rod = changeKind(frame, ['aerial'], 'ferrite rod');
    expect(valueAtPath(rod.written, ['aerial', 'turns'])).toBe(55);
    expect(valueAtPath(rod.written, ['aerial', 'wire', 'size'])).toBe('0.3 mm');
    expect(rod.dropped).toContain('Turns 16');
    const back = changeKind(rod.written, ['aerial'], 'frame').written;
    expect(valueAtPath(back, ['aerial', 'turns'])).toBe(16);
  });

  it('brings the arrangement along with a frame aerial, and winds a second coil where one is needed', () => {
    const frame = settle(changeKind(galena, ['aerial'], 'frame').written, 'aerial');
    expect(valueAtPath(frame.written, ['arrangement', 'kind'])).toBe('frame');
    expect(frame.also.join()).toMatch(/^The arrangement is now “frame”, .*Aerial tap 11/);
    const coupled = settle(changeKind(galena, ['arrangement'], 'coupled').written, 'arrangement');
    expect(valueAtPath(coupled.written, ['coils'])).toHaveLength(2);
    expect(coupled.also).toEqual(['A coil “aerial” was added.']);
    const two = settle(changeKind(galena, ['arrangement'], 'two circuits').written, 'arrangement');
    const [main, aerial] = valueAtPath(two.written, ['coils']) as Record<string, unknown>[];
    expect(aerial).toEqual({ ...main, name: 'aerial' });
    expect(two.also).toEqual(['A coil “aerial” like “main” was added.']);
  });

  it('lets taps come down with a shortened coil', () => {
    const short = settle(withValueAt(galena, ['coils', 0, 'turns'], 15), 'coils');
    expect(valueAtPath(short.written, ['arrangement', 'detectorTap'])).toBe(15);
    expect(problems(short.written)).toEqual([]);
  });

  it('lets taps come down with the turns in use', () => {
    const part = settle(withValueAt(galena, ['arrangement', 'usedTurns'], 15), 'arrangement');
    expect(valueAtPath(part.written, ['arrangement', 'detectorTap'])).toBe(15);
    expect(part.also.join()).toContain('The detector tap moved down to turn 15, the last turn in use.');
    expect(problems(part.written)).toEqual([]);
  });
});

describe('lists', () => {
  it('adds and removes stations, coils and traps', () => {
    for (const path of [['place', 'stations'], ['coils'], ['arrangement', 'traps']]) {
      const more = addItem(addItem(galena, path), path);
      // Only the person who adds a station knows its field strength or power: it is asked for, not invented.
      const asked = path[0] === 'place' ? [8, 9].map((i) => `place.stations[${i}]: expected a field strength`) : [];
      expect(
        problems(more).map((text) => text.split(', or')[0]),
        path.join('.'),
      ).toEqual(asked);
      const list = valueAtPath(more, path) as unknown[];
      expect(valueAtPath(removeItem(more, path, list.length - 1), path)).toHaveLength(list.length - 1);
    }
  });

  it('renames a coil everywhere', () => {
    const renamed = renameCoil(galena, 0, 'big one');
    expect(valueAtPath(renamed, ['arrangement', 'coil'])).toBe('big one');
    expect(problems(renamed)).toEqual([]);
  });
});

describe('quantities as a builder writes them', () => {
  it('keeps the unit as typed', () => {
    expect(rewrite('63 mm', 0.0705, 'length')).toBe('70.5 mm');
    expect(rewrite('2 1/2 in', 0.0508, 'length')).toBe('2 in');
    expect(rewrite('26 SWG', 0.0124 * 0.0254, 'length')).toBe('30 SWG');
    expect(rewrite('0.0005 µF', 365e-12, 'capacitance')).toBe('0.000365 µF');
    expect(rewrite('27 °C', 293.15, 'temperature')).toBe('20 °C');
    expect(rewrite('66 dBµV/m', 1e-2, 'field strength')).toBe('80 dBµV/m');
    expect(rewrite(undefined, 365e-12, 'capacitance')).toBe('365 pF');
    expect(rewrite('180°', 90, 'angle')).toBe('90°');
    expect(rewrite('2 × 365 pF', 8e-10, 'capacitance')).toBe('800 pF');
    expect(rewrite('#26', 0.127e-3 * 92 ** (6 / 39), 'length')).toBe('30 AWG');
    expect(rewrite('51°12′N', -33.5, 'latitude')).toBe('-33.5°');
    expect(typedTurns('12 1/2')).toBe(12.5);
    expect(typedTurns('five')).toBeUndefined();
  });

  it('reads back what it writes, within its three digits, over every step of a slider', () => {
    for (const [text, kind, range] of [
      ['63 mm', 'length', [0.02, 0.15]],
      ['500 pF', 'capacitance', [1e-10, 1e-9]],
      ['80 Ω·m', 'resistivity', [5, 2000]],
      ['26 SWG', 'length', [1e-4, 2e-3]],
      ['-3 dB', 'level', [-3, 6]],
    ] as const) {
      const scale = quantityScale(text, kind, range);
      expect(scale.steps).toBeGreaterThan(10);
      for (let step = 0; step <= scale.steps; step++) {
        const value = scale.valueAt(step);
        expect(scale.stepOf(value), `${text} at step ${step}`).toBe(step);
        const back = parseQuantity(rewrite(text, value, kind), kind);
        expect(back.ok && Math.abs(back.value - value) <= Math.abs(value) * 6e-3, `${text} ${value}`).toBe(true);
      }
    }
    expect(sliderScale([5, 200], { whole: true }).valueAt(3)).toBe(
      Math.round(sliderScale([5, 200], { whole: true }).valueAt(3)),
    );
  });
});
