import { expect, it } from 'vitest';
import { problemSentence } from '../../outputs/words/index.ts';
import { textOfFile } from './text-of-file.ts';

const utf16 = (text: string) => new Uint8Array(Uint16Array.from([...text].map((c) => c.charCodeAt(0))).buffer);

it('reads UTF-8 and marked UTF-16 alike, and refuses other encodings with their line and how to save them', async () => {
  const text = '! Ω measured at 1 m\n# MHz Z RI R 1\n1 10 -500\n';
  expect(await textOfFile(new Blob([text]))).toEqual({ text });
  expect(await textOfFile(new Blob([utf16(`\ufeff${text}`)]))).toEqual({ text });
  const latin = await textOfFile(new Blob([Uint8Array.from([...'a\nb \u00b5'].map((c) => c.charCodeAt(0)))]));
  expect(latin.text).toBeUndefined();
  if (latin.text === undefined)
    expect(problemSentence(latin.problem)).toMatch(/Latin-1 \(byte B5 in line 2\).*save it again as UTF-8/);
});

it('says so when a file cannot be read any more', async () => {
  const gone = { arrayBuffer: () => Promise.reject(new Error('gone')) } as unknown as Blob;
  expect(await textOfFile(gone)).toMatchObject({ problem: { expected: { code: 'readable-file' } } });
});
