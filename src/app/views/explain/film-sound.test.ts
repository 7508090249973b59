import { afterEach, describe, expect, test, vi } from 'vitest';
import { soundCodec } from './film-sound.ts';

/** A browser whose encoders are these; any other is refused, one way or the other. */
function browserWith(...codecs: readonly string[]): void {
  vi.stubGlobal('AudioEncoder', {
    isConfigSupported: async ({ codec }: { codec: string }) => {
      if (codec === '') throw new TypeError('no codec');
      return { supported: codecs.includes(codec) };
    },
  });
}

afterEach(() => vi.unstubAllGlobals());

describe('the sound of a film', () => {
  test.each([
    [['opus', 'mp4a.40.2'], 'aac', 'opus'],
    [['opus'], 'opus', 'opus'],
    [['mp4a.40.2'], 'aac', undefined],
    [[], undefined, undefined],
  ] as const)('with encoders %j: MP4 has %s, WebM %s', async (codecs, mp4, webm) => {
    browserWith(...codecs);
    expect(await soundCodec('mp4')).toBe(mp4);
    expect(await soundCodec('webm')).toBe(webm);
  });

  test('is none where the browser has no encoders, or they fail', async () => {
    expect(await soundCodec('mp4')).toBeUndefined();
    vi.stubGlobal('AudioEncoder', { isConfigSupported: () => Promise.reject(new TypeError('broken')) });
    expect(await soundCodec('mp4')).toBeUndefined();
  });
});
