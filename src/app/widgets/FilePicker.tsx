import type { Ref } from 'preact';

/** The browser's choice of a file, opened by another control: `picker.current?.click()`. */
export function FilePicker({
  picker,
  id,
  accept,
  label,
  onFile,
}: {
  readonly picker: Ref<HTMLInputElement>;
  readonly id?: string;
  readonly accept: string;
  readonly label: string;
  readonly onFile: (file: File) => void;
}) {
  return (
    <input
      ref={picker}
      id={id}
      class="visually-hidden"
      type="file"
      accept={accept}
      tabIndex={-1}
      aria-label={label}
      onChange={(event) => {
        const file = event.currentTarget.files?.[0];
        // The same file may be chosen again after it was mended.
        event.currentTarget.value = '';
        if (file) onFile(file);
      }}
    />
  );
}
