import { afterEach, expect, test, vi } from 'vitest';
import { fromMicrophone } from './hear.ts';

afterEach(() => vi.unstubAllGlobals());

/** A browser with a microphone that is heard until its track is stopped. */
function withMicrophone() {
  const track = { isOpen: true, stop: () => (track.isOpen = false) };
  class Recorder {
    state = 'inactive';
    mimeType = 'audio/webm';
    ondataavailable?: (event: { data: Blob }) => void;
    onstop?: () => void;
    start() {
      this.state = 'recording';
    }
    stop() {
      this.state = 'inactive';
      this.ondataavailable?.({ data: new Blob(['heard']) });
      this.onstop?.();
    }
  }
  vi.stubGlobal('MediaRecorder', Recorder);
  vi.stubGlobal('navigator', { mediaDevices: { getUserMedia: async () => ({ getTracks: () => [track] }) } });
  return track;
}

test('the microphone is open until it is stopped, and what was heard is kept', async () => {
  const track = withMicrophone();
  const microphone = await fromMicrophone(60, new AbortController().signal);
  expect(track.isOpen).toBe(true);
  microphone.stop();
  expect(await (await microphone.done).text()).toBe('heard');
  expect(track.isOpen).toBe(false);
});

test('it is closed when the view is left, also while the browser still asks', async () => {
  const track = withMicrophone();
  const leaving = new AbortController();
  await fromMicrophone(60, leaving.signal);
  leaving.abort();
  expect(track.isOpen).toBe(false);

  track.isOpen = true;
  await fromMicrophone(60, leaving.signal);
  expect(track.isOpen).toBe(false);
});
