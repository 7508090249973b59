import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { create } from 'fontkit';
import { describe, expect, test } from 'vitest';
import { itemBox, overlap, textBox } from './boxes.ts';
import { arc, circle, group, line, path, rect, text } from './build.ts';
import { placeLabels } from './labels.ts';
import { DAY, PRINT } from './palette.ts';
import type { Scene } from './scene.ts';
import { sceneToSvg } from './svg.ts';
import { shorten, textWidth, wrap } from './text-width.ts';

const scene = (items: Scene['items'], more: Partial<Scene> = {}): Scene => ({
  unit: 'px',
  width: 100,
  height: 50,
  title: 'A drawing',
  description: 'It shows nothing.',
  items,
  ...more,
});

describe('a scene as SVG', () => {
  test('text from a file cannot become markup', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (words) => {
        const svg = sceneToSvg(
          scene([text([1, 1], words, 10, { part: words, title: words })], { title: words, description: words }),
        );
        const tags = [...svg.matchAll(/<\/?([a-z]*)/gi)].map((m) => m[1]);
        expect(new Set(tags)).toEqual(new Set(['svg', 'title', 'desc', 'g', 'text']));
        expect(svg).not.toMatch(/&(?!amp;|lt;|gt;|quot;)/);
      }),
    );
  });

  test('a number that is none is refused', () => {
    expect(() => sceneToSvg(scene([line([0, 0], [Number.NaN, 1])]))).toThrow(RangeError);
  });

  test('colours are variables on a page and plain elsewhere', () => {
    const drawing = scene([line([0, 0], [1, 1], { stroke: 'copper' })]);
    expect(sceneToSvg(drawing)).toContain(`stroke="var(--copper, ${DAY.copper})"`);
    expect(sceneToSvg(drawing, { colours: 'print' })).not.toContain('var(');
  });

  test('true size carries its unit', () => {
    expect(sceneToSvg(scene([], { unit: 'mm', width: 210 }), { size: 'true' })).toContain('width="210mm"');
  });

  test('parts are buttons only where asked, and then the whole is no image', () => {
    const drawing = scene([group([rect(0, 0, 1, 1)], { part: 'coils.0', title: 'Coil "main"' })]);
    expect(sceneToSvg(drawing)).toMatch(/role="img"(?!.*tabindex)/);
    const live = sceneToSvg(drawing, { interactive: true });
    expect(live).toContain('role="group"');
    expect(live).toContain('data-part="coils.0" role="button" tabindex="0" aria-label="Coil &quot;main&quot;"');
  });

  test('a clip has an id of its own in each scene', () => {
    const clipped = (title: string) =>
      sceneToSvg(scene([group([circle([0, 0], 9)], { clip: { x: 0, y: 0, w: 5, h: 5 } })], { title }));
    const id = (svg: string) => /<clipPath id="([^"]+)"/.exec(svg)?.[1];
    expect(id(clipped('one'))).not.toBe(id(clipped('two')));
  });
});

test('text colours can be read on paper and card: contrast 4.5 at least (WCAG 2.2, 1.4.3)', () => {
  const luminance = (hex: string) => {
    const [r, g, b] = [1, 3, 5]
      .map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255)
      .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  for (const palette of [DAY, PRINT])
    for (const role of ['ink', 'soft', 'copper', 'accent', 'warning'] as const)
      for (const under of ['paper', 'card'] as const) {
        const [a, b] = [luminance(palette[role]), luminance(palette[under])].sort((x, y) => y - x);
        expect((a + 0.05) / (b + 0.05), `${role} on ${under}`).toBeGreaterThan(4.5);
      }
});

describe('boxes', () => {
  test('of an arc hold every point of it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 359, noNaN: true }),
        fc.double({ min: 1, max: 359, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (from, sweep, t) => {
          const box = itemBox(path(arc([3, 4], 10, from, from + sweep)));
          const a = ((from + sweep * t) * Math.PI) / 180;
          const [x, y] = [3 + 10 * Math.cos(a), 4 + 10 * Math.sin(a)];
          expect(x).toBeGreaterThan(box.x - 1e-6);
          expect(x).toBeLessThan(box.x + box.w + 1e-6);
          expect(y).toBeGreaterThan(box.y - 1e-6);
          expect(y).toBeLessThan(box.y + box.h + 1e-6);
        },
      ),
    );
  });
});

test('widths are those of the font (advances of Source Sans 3.52, read from its files by fontkit)', () => {
  for (const [file, bold] of [
    ['SourceSans3-Regular', false],
    ['SourceSans3-Semibold', true],
  ] as const) {
    const font = create(readFileSync(createRequire(import.meta.url).resolve(`source-sans/TTF/${file}.ttf`)));
    for (const words of [
      'The Lantern Service 909 kHz',
      '−3 dB 0.5 mV/m',
      'Ω µH ½ × 365 pF ± 2 % → ≈',
      'Ågren, Łódź, αβγ',
    ]) {
      const advance = [...words].reduce((sum, c) => sum + font.glyphForCodePoint(c.codePointAt(0)!).advanceWidth, 0);
      expect(textWidth(words, 100, bold), words).toBeCloseTo((100 * advance) / font.unitsPerEm, 0);
    }
  }
});

describe('labels', () => {
  test('placed ones never overlap', () => {
    const spot = fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 200 }));
    fc.assert(
      fc.property(fc.array(spot, { maxLength: 25 }), (spots) => {
        const { items } = placeLabels(
          spots.map(([x, y], i) => ({
            item: { text: `Station ${i}`, size: 12 },
            places: [{ at: [x, y] as const }, { at: [x, y + 15] as const, anchor: 'end' as const }],
          })),
          { x: 0, y: 0, w: 300, h: 200 },
        );
        items.forEach((a, i) => {
          for (const b of items.slice(i + 1)) expect(overlap(textBox(a), textBox(b))).toBe(false);
        });
      }),
    );
  });

  test('words are cut and broken to the room they have', () => {
    expect(textWidth(shorten('The Lantern Service', 12, 60), 12)).toBeLessThanOrEqual(60);
    expect(shorten('Quayside', 12, 200)).toBe('Quayside');
    for (const l of wrap('a rather long sentence about a coil', 10, 80))
      expect(textWidth(l, 10)).toBeLessThanOrEqual(80);
  });
});
