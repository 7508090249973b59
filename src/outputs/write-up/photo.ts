/** A picture that may be shown to others: of what the camera noted only how it was held. */
export interface Photo {
  readonly type: 'image/jpeg' | 'image/png';
  readonly bytes: Uint8Array;
}

/**
 * A photo without what the camera wrote into it: where and when it was taken, with what, by whom. How it was held stays,
 * so that it is not shown lying on its side.
 * @param bytes of a JPEG (ITU-T T.81) or PNG (W3C PNG) file
 * @returns undefined for any other file, and for one that is cut short
 */
export function barePhoto(bytes: Uint8Array): Photo | undefined {
  if (startsWith(bytes, [0xff, 0xd8, 0xff])) return withType('image/jpeg', bareJpeg(bytes));
  if (startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return withType('image/png', barePng(bytes));
  return undefined;
}

const withType = (type: Photo['type'], bytes: Uint8Array | undefined): Photo | undefined => bytes && { type, bytes };
const startsWith = (bytes: Uint8Array, head: readonly number[]): boolean => head.every((b, i) => bytes[i] === b);
const letters = (bytes: Uint8Array, from: number, count: number): string =>
  String.fromCharCode(...bytes.subarray(from, from + count));

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

const START_OF_SCAN = 0xda;
const END_OF_IMAGE = 0xd9;
/** Markers without a length: restarts, and one for private use. */
const isAlone = (marker: number): boolean => (marker >= 0xd0 && marker <= 0xd7) || marker === 0x01;
const COMMENT = 0xfe;
const APP = { first: 0xe0, exif: 0xe1, colours: 0xe2, adobe: 0xee, last: 0xef } as const;
const EXIF = 'Exif\0\0';

function bareJpeg(bytes: Uint8Array): Uint8Array | undefined {
  const pieces = [bytes.subarray(0, 2)];
  let orientation = 1;
  for (let at = 2; at + 4 <= bytes.length; ) {
    if (bytes[at] !== 0xff) return undefined;
    const marker = bytes[at + 1];
    if (marker === START_OF_SCAN) {
      const scans = scansFrom(bytes, at);
      if (!scans) return undefined;
      const exif = orientation > 1 ? [exifOf(orientation)] : [];
      return joined([pieces[0], ...exif, ...pieces.slice(1), ...scans]);
    }
    const end = at + 2 + ((bytes[at + 2] << 8) | bytes[at + 3]);
    if (end > bytes.length || end < at + 4) return undefined;
    const segment = bytes.subarray(at, end);
    if (marker === APP.exif && letters(segment, 4, 6) === EXIF) orientation = orientationOf(segment.subarray(10));
    if (isDrawn(marker, segment)) pieces.push(segment);
    at = end;
  }
  return undefined;
}

/** Whether a segment is needed to draw the picture in its colours. */
function isDrawn(marker: number, segment: Uint8Array): boolean {
  const isProfile = marker === APP.colours && letters(segment, 4, 11) === 'ICC_PROFILE';
  const isNote = (marker >= APP.first && marker <= APP.last) || marker === COMMENT;
  return !isNote || marker === APP.first || marker === APP.adobe || isProfile;
}

/**
 * The scans of a picture up to its end (T.81, B.1.1.5 and B.2.1). Cameras put a second picture behind it, or a film, with
 * notes of their own.
 */
function scansFrom(bytes: Uint8Array, start: number): Uint8Array[] | undefined {
  const pieces: Uint8Array[] = [];
  let from = start;
  for (let at = start; at + 2 <= bytes.length; ) {
    const marker = bytes[at + 1];
    if (bytes[at] !== 0xff || marker === 0xff) at++;
    else if (marker === 0 || isAlone(marker)) at += 2;
    else if (marker === END_OF_IMAGE) return [...pieces, bytes.subarray(from, at + 2)];
    else {
      if (at + 4 > bytes.length) return undefined;
      const end = at + 2 + ((bytes[at + 2] << 8) | bytes[at + 3]);
      if (end > bytes.length || end < at + 4) return undefined;
      if (!isDrawn(marker, bytes.subarray(at, end))) {
        pieces.push(bytes.subarray(from, at));
        from = end;
      }
      at = end;
    }
  }
  return undefined;
}

const ORIENTATION = 0x0112;

/** How the camera was held, 1 to 8 (Exif 2.3, section 4.6.4); 1 where that is not said. */
function orientationOf(tiff: Uint8Array): number {
  if (tiff.length < 14) return 1;
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  const little = tiff[0] === 0x49;
  const directory = view.getUint32(4, little);
  if (directory + 2 > tiff.length) return 1;
  const count = view.getUint16(directory, little);
  for (let i = 0; i < count && directory + 14 + 12 * i <= tiff.length; i++) {
    const entry = directory + 2 + 12 * i;
    if (view.getUint16(entry, little) !== ORIENTATION) continue;
    const value = view.getUint16(entry + 8, little);
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}

/** A segment that says nothing but how the camera was held. */
function exifOf(orientation: number): Uint8Array {
  const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0];
  const length = 2 + EXIF.length + tiff.length;
  return Uint8Array.from([
    0xff,
    APP.exif,
    length >> 8,
    length & 255,
    ...[...EXIF].map((c) => c.charCodeAt(0)),
    ...tiff,
  ]);
}

/** What a picture is drawn from, and its colours; notes, times and positions are in others. */
const DRAWN = new Set(['IHDR', 'PLTE', 'tRNS', 'gAMA', 'cHRM', 'sRGB', 'iCCP', 'pHYs', 'IDAT', 'IEND']);

function barePng(bytes: Uint8Array): Uint8Array | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const pieces = [bytes.subarray(0, 8)];
  for (let at = 8; at + 12 <= bytes.length; ) {
    const end = at + 12 + view.getUint32(at);
    if (end > bytes.length) return undefined;
    const type = letters(bytes, at + 4, 4);
    if (DRAWN.has(type)) pieces.push(bytes.subarray(at, end));
    if (type === 'IEND') return joined(pieces);
    at = end;
  }
  return undefined;
}
