import { afterEach, expect, it, vi } from 'vitest';
import { createFaults, forgetFaults } from './fault-search.ts';

const local = new Map<string, string>();

afterEach(() => {
  local.clear();
  vi.unstubAllGlobals();
});

it('the answers of a set are there again when it is opened again, and go with it', () => {
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => local.get(key) ?? null,
    setItem: (key: string, value: string) => void local.set(key, value),
    removeItem: (key: string) => void local.delete(key),
  });
  const faults = createFaults('a');
  createFaults('b');
  expect(local.size).toBe(0);
  faults.faultAnswers.value = { 'sign hum': 'yes' };
  faults.dispose();
  expect([createFaults('a').faultAnswers.value, createFaults('b').faultAnswers.value]).toEqual([
    { 'sign hum': 'yes' },
    {},
  ]);
  forgetFaults('a');
  expect(createFaults('a').faultAnswers.value).toEqual({});
  for (const unreadable of ['{', '[1]', '{"sign hum":1}']) {
    local.set('faintwave.faults.a', unreadable);
    expect(createFaults('a').faultAnswers.value).toEqual({});
  }
});

it('without storage they last as long as the page', () => {
  const blocked = () => {
    throw new DOMException('blocked', 'SecurityError');
  };
  vi.stubGlobal('localStorage', { getItem: blocked, setItem: blocked, removeItem: blocked });
  const { faultAnswers } = createFaults('a');
  faultAnswers.value = { 'sign hum': 'yes' };
  faultAnswers.value = {};
  expect(faultAnswers.value).toEqual({});
});
