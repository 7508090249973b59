import { type OpeningPlace, openFile } from './files.ts';

/** What a browser hands to an installed page whose manifest takes files (WICG, Web App Launch Handler). */
interface LaunchQueue {
  setConsumer(take: (launch: { readonly files: readonly FileSystemFileHandle[] }) => void): void;
}

/** Opens what the device was asked to open with the page, as one more set. */
export function openLaunchedFiles(place: OpeningPlace): void {
  const { launchQueue } = globalThis as { launchQueue?: LaunchQueue };
  launchQueue?.setConsumer(async ({ files: [file] }) => {
    if (file) await openFile(place, await file.getFile());
  });
}
