import { describe, expect, test } from 'vitest';
import { glossary, glossaryInOrder } from './glossary.ts';

const ENTRIES = Object.values(glossary);
const plain = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}δ−%]+/gu, ' ')
    .trim();

/** The terms of the field that the page, the sheets and the commands use. */
const TERMS = [
  'available power',
  'effective height',
  'emf',
  'input resistance',
  'loading loss',
  'square law',
  'linear detection',
  'bandwidth',
  'selectivity',
  'interference',
  'masking',
  'masked',
  'range (90 %)',
  'tolerance',
  'treble loss',
  'diagonal clipping',
  'negative-peak clipping',
  'crest factor',
  'sky wave',
  'ground wave',
  'turns ratio',
  'coupling coefficient',
  'tap',
  'meshed',
  'reverse voltage',
  'stray capacitance',
  'hearing threshold',
  'dB',
  'dB SPL',
  'Q',
  'loaded Q',
  'unloaded Q',
  'tan δ',
  'ideality',
  'saturation current',
  'distortion',
  'direct voltage',
  'radiation resistance',
  'self-capacitance',
  'self-resonance',
  'depth of modulation',
  'sideband',
  'carrier',
  'envelope',
  'fading',
  'field strength',
];

describe('the glossary', () => {
  test('has each term of the field once, under one entry', () => {
    const names = ENTRIES.flatMap(({ term, also = [] }) => [term, ...also]).map(plain);
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
    expect(TERMS.filter((term) => !names.includes(plain(term)))).toEqual([]);
  });

  test.each(ENTRIES)(
    '$term: one or two plain sentences, and it does not lead to itself',
    ({ term, text, related = [] }) => {
      expect(text).toMatch(/^\p{Lu}.*\.$/u);
      expect(text.split(/[.?!](?:\s|$)/).filter(Boolean).length).toBeLessThanOrEqual(2);
      expect(text.length).toBeLessThan(200);
      for (const id of related) expect(glossary[id as keyof typeof glossary].term).not.toBe(term);
    },
  );

  test('is in the order of the alphabet', () => {
    const terms = glossaryInOrder().map(([, { term }]) => term.toLowerCase());
    expect(terms).toEqual([...terms].sort((a, b) => a.localeCompare(b, 'en')));
    expect(terms).toHaveLength(ENTRIES.length);
  });
});
