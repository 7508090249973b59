/** Hand something to the person as a file, the way every browser can. */
export function downloadFile(name: string, file: Blob): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // Some browsers read the address only after the click has returned, and a long film takes them a while.
  setTimeout(() => URL.revokeObjectURL(address), 30_000);
}

export const download = (name: string, text: string, type = 'application/json'): void =>
  downloadFile(name, new Blob([text], { type }));

/** A title as the beginning of a file's name that every system takes. @param otherwise where nothing of it is left. */
export const fileStem = (title: string, otherwise: string): string =>
  title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60) || otherwise;
