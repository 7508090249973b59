import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { EXAMPLES } from './examples.ts';
import { saveFile } from './files.ts';
import { notices } from './notices.ts';
import { createOpenSets, type OpenSet } from './open-sets.ts';
import { createSetWorkers } from './set-workers.ts';

const description = (file: string): unknown => JSON.parse(EXAMPLES.find((one) => one.file === file)!.text);

/** A set whose workers never answer. */
function setA(): OpenSet {
  const workers = createSetWorkers(() => ({ onmessage: null, onerror: null, postMessage: () => undefined }));
  const first = { id: 'a', description: description('medium-wave-galena.json'), fileName: 'a.json' };
  return createOpenSets(workers, first).focused.value;
}

/** A disk, and the names that were suggested when it was asked where to save. */
function disk() {
  const texts = new Map<string, string>();
  const asked: string[] = [];
  const showSaveFilePicker = async ({ suggestedName: name }: { suggestedName: string }) => {
    asked.push(name);
    return {
      name,
      createWritable: async () => ({
        write: async (text: string) => void texts.set(name, text),
        close: async () => {},
      }),
    };
  };
  vi.stubGlobal('window', { showSaveFilePicker });
  return { texts, asked };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  notices.value = [];
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

it('what a step back brings is not saved over the file of what was there before it', async () => {
  const { texts, asked } = disk();
  const set = setA();
  set.replace(description('spider-coil-earpiece.json'), 'b.json', 'open b');
  await saveFile(set);
  await saveFile(set);
  expect(asked).toEqual(['b.json']);
  const b = texts.get('b.json');
  expect(b).toContain(JSON.stringify((description('spider-coil-earpiece.json') as { name: string }).name));
  set.undo();
  expect(set.fileName.value).toBe('a.json');
  await saveFile(set);
  expect(asked).toEqual(['b.json', 'a.json']);
  expect(texts.get('b.json')).toBe(b);
  expect(texts.get('a.json')).toBeDefined();
});
