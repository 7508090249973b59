import { badFile, type OpeningPlace } from './files.ts';
import { openGivenFiles } from './given-files.ts';

/** What a browser hands to an installed page whose manifest takes files (WICG, Web App Launch Handler). */
interface LaunchQueue {
  setConsumer(take: (launch: { readonly files: readonly FileSystemFileHandle[] }) => void): void;
}

/** Opens what the device was asked to open with the page: each set as one more, of which the last gets the focus, and in Measure what an instrument wrote. */
export function openLaunchedFiles(place: OpeningPlace): void {
  const { launchQueue } = globalThis as { launchQueue?: LaunchQueue };
  launchQueue?.setConsumer(async ({ files }) => {
    const readable: File[] = [];
    for (const handle of files) {
      try {
        readable.push(await handle.getFile());
      } catch (error) {
        const hint = { code: 'system-message', message: (error as Error).message } as const;
        badFile.value = { name: handle.name, problems: [{ path: '', expected: { code: 'readable-file' }, hint }] };
      }
    }
    await openGivenFiles(place, readable);
  });
}
