import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { createMeasuring, forgetDrafts, type ReadingsDraft } from './measuring.ts';

const local = new Map<string, string>();

beforeEach(() =>
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => local.get(key) ?? null,
    setItem: (key: string, value: string) => void local.set(key, value),
    removeItem: (key: string) => void local.delete(key),
  }),
);
afterEach(() => {
  local.clear();
  vi.unstubAllGlobals();
});

const typed: ReadingsDraft = {
  source: 'coil.s1p',
  fields: { date: '2026-11-21', 'capacitor.law': 'semicircular' },
  rows: [{ position: '0.62', frequency: '603' }, {}],
  files: { reflection: { name: 'coil.s1p', text: '# HZ S RI R 50\n1000000 0.9 0.1\n' } },
};
const EMPTY: ReadingsDraft = { fields: { date: ' ' }, rows: [{}], files: {} };

it('readings that were typed are there again with their own set, and are gone with it', () => {
  const measuring = createMeasuring('a');
  measuring.drafts.value = { 'dial coil 0 ': typed, 'decay coil 0 ': EMPTY };
  measuring.dispose();
  expect(createMeasuring('a').drafts.value).toEqual({ 'dial coil 0 ': typed });
  expect(createMeasuring('b').drafts.value).toEqual({});
  forgetDrafts('a');
  expect(createMeasuring('a').drafts.value).toEqual({});
});

it('nothing stays behind when all of them are cleared', () => {
  const { drafts } = createMeasuring('a');
  drafts.value = { 'dial coil 0 ': typed };
  drafts.value = { 'dial coil 0 ': EMPTY };
  expect(local.size).toBe(0);
});

it.each(['{', 'null', '[1]', '{"dial":1}', '{"dial":{"fields":{"date":1},"rows":3,"files":{"a":"b"}}}'])(
  'what cannot be read is no readings: %s',
  (stored) => {
    local.set('faintwave.readings.a', stored);
    expect(createMeasuring('a').drafts.value).toEqual({});
  },
);

it('what the browser refuses to keep is said, and stays as long as the page', () => {
  const measuring = createMeasuring('a');
  vi.stubGlobal('localStorage', {
    setItem: () => {
      throw new DOMException('full', 'QuotaExceededError');
    },
  });
  measuring.drafts.value = { 'dial coil 0 ': typed };
  expect(measuring.areDraftsKept.value).toBe(false);
  expect(measuring.drafts.value).toEqual({ 'dial coil 0 ': typed });
});
