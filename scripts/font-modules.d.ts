declare module 'fontkit' {
  export interface Font {
    readonly unitsPerEm: number;
    hasGlyphForCodePoint(point: number): boolean;
    glyphForCodePoint(point: number): { readonly advanceWidth: number };
  }
  export function create(file: Buffer): Font;
}
declare module 'fontverter' {
  export function convert(font: Buffer, format: 'woff2'): Promise<Buffer>;
}
declare module 'subset-font' {
  export default function subsetFont(
    font: Buffer,
    letters: string,
    options: { readonly targetFormat: 'truetype' },
  ): Promise<Buffer>;
}
