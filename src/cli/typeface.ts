import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** The tool's typeface as whole font files, for files that carry or draw it. */
export function typefaceFiles(): {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
  readonly italic: Uint8Array;
} {
  const at = createRequire(import.meta.url);
  const font = (name: string): Uint8Array => readFileSync(at.resolve(`source-sans/TTF/SourceSans3-${name}.ttf`));
  return { regular: font('Regular'), bold: font('Semibold'), italic: font('It') };
}
