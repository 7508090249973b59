/** Made of the documents when the page is built. */
declare module 'virtual:handbook' {
  import type { Chapter } from './handbook-text.ts';

  /** A package of others that is shipped with the page. */
  interface ShippedPackage {
    readonly name: string;
    readonly version: string;
    readonly licence: string;
    /** Of its licence; empty where the package holds none. */
    readonly text: string;
  }

  export const chapters: readonly Chapter[];
  /** Addresses of pictures, by their paths. */
  export const pictures: Readonly<Record<string, string>>;
  export const packages: readonly ShippedPackage[];
}
