/** The little of gifenc that animated pictures use; the package brings no types. */
declare module 'gifenc/dist/gifenc.esm.js' {
  export type Rgb = [red: number, green: number, blue: number];
  export function quantize(pixels: Uint8Array, most: number): Rgb[];
  export function nearestColorIndex(colours: readonly Rgb[], colour: Rgb): number;
  export function GIFEncoder(): {
    writeFrame(
      indices: Uint8Array,
      width: number,
      height: number,
      options: {
        /** Of the first frame: the table of all. */
        palette?: readonly Rgb[];
        /** Of the first frame: 0 for ever. */
        repeat?: number;
        /** ms */
        delay: number;
        transparent?: boolean;
        transparentIndex?: number;
        /** 1: what is there stays. */
        dispose?: number;
      },
    ): void;
    finish(): void;
    bytes(): Uint8Array;
  };
}
