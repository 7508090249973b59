/** Made of the documents when the page is built. */
declare module 'virtual:handbook' {
  import type { Chapter, ShippedPackage } from './handbook-text.ts';

  export const chapters: readonly Chapter[];
  /** Addresses of pictures, by their paths. */
  export const pictures: Readonly<Record<string, string>>;
  export const packages: readonly ShippedPackage[];
}
