/* biome-ignore-all lint/suspicious/noControlCharactersInRegex: control characters are what is being removed */

/** C0 and C1 controls, delete, and the separators of lines and paragraphs: what steers a terminal or breaks a line. */
const CONTROLS = /[\u0000-\u001f\u007f-\u009f\u2028\u2029]/g;
/** The same without tab and line feed. */
const CONTROLS_IN_LINES = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u2028\u2029]/g;
/**
 * Characters nobody sees: those that turn the direction of what follows (Unicode Bidirectional Algorithm, UAX 9), and
 * that show nothing at all. The joiners U+200C and U+200D stay; scripts need them.
 */
const INVISIBLE =
  /[\u00ad\u061c\u180e\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|[\u{e0000}-\u{e007f}]/gu;

/**
 * Text for one line, from a file or a person, that can do nothing but be read: controls are spaces, the invisible is gone.
 * @param text from a file or a person
 * @returns one line without controls
 */
export const safeText = (text: string): string => text.replace(CONTROLS, ' ').replace(INVISIBLE, '');

/**
 * The same for text of several lines: line feeds and tabs stay.
 * @param text from a file or a person
 * @returns text without controls other than line feeds and tabs
 */
export const safeLines = (text: string): string =>
  text.replace(/\r\n/g, '\n').replace(CONTROLS_IN_LINES, ' ').replace(INVISIBLE, '');

/**
 * JSON text with the characters that could steer a terminal written as escapes: it reads as exactly the same value.
 * @param json JSON text
 * @returns JSON text of the same value
 */
export const safeJson = (json: string): string =>
  json.replace(new RegExp(`${CONTROLS_IN_LINES.source}|${INVISIBLE.source}`, 'gu'), (c) =>
    [...Array(c.length).keys()].map((i) => `\\u${c.charCodeAt(i).toString(16).padStart(4, '0')}`).join(''),
  );
