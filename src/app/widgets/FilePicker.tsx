import type { Ref } from 'preact';

interface Props {
  readonly picker: Ref<HTMLInputElement>;
  readonly id?: string;
  readonly accept: string;
  readonly label: string;
  /** Several can be chosen at once. */
  readonly multiple?: boolean;
  /** Is given each of them. */
  readonly onFile: (file: File) => void;
}

/** The browser's choice of a file, opened by another control: `picker.current?.click()`. */
export function FilePicker({ picker, id, accept, label, multiple, onFile }: Props) {
  return (
    <input
      ref={picker}
      id={id}
      class="visually-hidden"
      type="file"
      accept={accept}
      multiple={multiple}
      tabIndex={-1}
      aria-label={label}
      onChange={(event) => {
        const files = [...(event.currentTarget.files ?? [])];
        // The same file may be chosen again after it was mended.
        event.currentTarget.value = '';
        for (const file of files) onFile(file);
      }}
    />
  );
}
