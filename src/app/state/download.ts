/** Hand a text to the person as a file, the way every browser can. */
export function download(name: string, text: string, type = 'application/json'): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // Some browsers read the address only after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
