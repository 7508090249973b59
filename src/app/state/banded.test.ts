import { signal } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type BandsReceived, readText, turnSwitch } from '../../engine/index.ts';
import type { When } from '../description/when.ts';
import { createBanded, followBands, forgetBand } from './banded.ts';
import { createDocument } from './document.ts';
import { EXAMPLES } from './examples.ts';
import type { ValidSet } from './set-reading.ts';

const { text } = EXAMPLES.find(({ file }) => file === 'two-band.json')!;
const [MEDIUM, LONG] = [0, 1];
/** Stations of the example by their place in its list. */
const [FENSIDE, FERRY, MARRAM] = [0, 1, 2];

/** A band switch whose bands overlap: both cover Fenside Radio (648 kHz), only one Marram Point (171 kHz). */
function switched(chosen?: number) {
  const read = readText(text);
  if (!read.ok) throw new Error('the example does not read');
  const { set } = read;
  const lastValidSet = signal<ValidSet | undefined>({ set } as ValidSet);
  const stationIndex = signal<number | undefined>(chosen);
  const document = createDocument('a', JSON.parse(text), 'a.json');
  const banded = createBanded(document, 'a');
  const received = (name: string, lowest: number, highest: number) => ({ name, lowest, highest });
  let heard: ((received: BandsReceived) => void) | undefined;
  const view = {
    time: signal<When>('day'),
    stationIndex,
    chooseStation: (index: number | undefined) => {
      stationIndex.value = index;
    },
  };
  const askBands = ((onReply: (question: unknown, reply: unknown) => void) => {
    heard = (answer) => onReply({}, { answer });
    return { ask: () => undefined, close: () => undefined };
  }) as unknown as Parameters<typeof followBands>[3]['askBands'];
  const followed = followBands({ lastValidSet }, banded, view, { askBands }, signal(true));
  return {
    banded,
    document,
    followed,
    stationIndex,
    lastValidSet,
    set,
    answer() {
      vi.runOnlyPendingTimers();
      heard?.({
        bands: [received('medium wave', 600e3, 1700e3), received('long wave', 150e3, 700e3)],
        bestOf: [MEDIUM, MEDIUM, LONG, LONG, MEDIUM, MEDIUM],
        best: [0, 1, 2, 3, 4, 5],
      } as unknown as BandsReceived);
    },
  };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('the band switch and the chosen station', () => {
  it('the dial turns the switch only to a station that the band does not cover, the list to the best band', () => {
    const { banded, followed, answer } = switched();
    answer();
    followed.turnTo(LONG);
    followed.chooseStation(FENSIDE);
    expect(banded.band.value).toBe(LONG);
    followed.chooseStation(FERRY);
    expect(banded.band.value).toBe(MEDIUM);
    followed.turnTo(LONG);
    followed.chooseOnBestBand(FENSIDE);
    expect(banded.band.value).toBe(MEDIUM);
  });

  it('a station stays chosen on a band that covers it', () => {
    const { followed, stationIndex, answer } = switched();
    answer();
    followed.chooseStation(FENSIDE);
    followed.turnTo(LONG);
    expect(stationIndex.value).toBe(FENSIDE);
    followed.chooseStation(FERRY);
    followed.turnTo(LONG);
    expect(stationIndex.value).toBeUndefined();
  });

  it('a station chosen before the bands are known turns the switch once they are, and only then', () => {
    const { banded, followed, stationIndex, answer } = switched(MARRAM);
    expect(banded.band.value).toBe(MEDIUM);
    answer();
    expect([banded.band.value, stationIndex.value]).toEqual([LONG, MARRAM]);
    banded.turnTo(MEDIUM);
    answer();
    expect(banded.band.value).toBe(MEDIUM);
    expect(followed.bandsReceived.value).toBeDefined();
  });

  it('nothing is known of bands once there are none, also where an answer is late', () => {
    const { followed, lastValidSet, set, answer } = switched();
    answer();
    lastValidSet.value = { set: { ...set, bands: undefined } } as ValidSet;
    expect(followed.bandsReceived.value).toBeUndefined();
    answer();
    expect(followed.bandsReceived.value).toBeUndefined();
  });
});

it('the band that is looked at stays when one before it in the list is removed', () => {
  const { banded, document } = switched();
  const three = JSON.parse(text);
  const [medium, long] = three.bands;
  document.change(() => ({ ...three, bands: [medium, { ...long, name: 'middle' }, long] }), { label: 'three' });
  banded.turnTo(2);
  banded.removeBand(1, 'without');
  expect(banded.band.value).toBe(1);
  const whole = document.written.value as { bands: { name: string }[] };
  expect(whole.bands.map(({ name }) => name)).toEqual(['medium wave', 'long wave']);
  expect(banded.written.value).toEqual(turnSwitch(whole, 1));
});

it('the band that is looked at is there again when the set is opened again, until the set is gone for good', () => {
  const local = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => local.get(key) ?? null,
    setItem: (key: string, value: string) => void local.set(key, value),
    removeItem: (key: string) => void local.delete(key),
  });
  const open = () => createBanded(createDocument('a', JSON.parse(text), 'a.json'), 'a');
  const first = open();
  const standing = first.band.peek()!;
  first.turnTo(1 - standing);
  first.dispose();
  const again = open();
  expect(again.band.peek()).toBe(1 - standing);
  again.turnTo(standing);
  again.turnTo(1 - standing);
  again.dispose();
  expect(open().band.peek()).toBe(1 - standing);
  forgetBand('a');
  expect(open().band.peek()).toBe(standing);
  local.set('faintwave.band.a', '"long"');
  expect(open().band.peek()).toBe(standing);
  vi.unstubAllGlobals();
});
