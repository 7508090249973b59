import { safeText } from './safe-text.ts';

/** The start of a value's JSON, short enough for a sentence. Takes no longer for a large value. @param value not undefined. */
export const brief = (value: unknown): string => {
  const text = jsonStart(value, 60);
  return safeText(text.length > 60 ? `${text.slice(0, 57)}…` : text);
};

/** The first characters of a value's JSON: at least so many, if it has them. */
function jsonStart(value: unknown, length: number): string {
  if (typeof value === 'string') return JSON.stringify(value.slice(0, length + 1));
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? String(value);
  const isList = Array.isArray(value);
  let text = isList ? '[' : '{';
  for (const key in value) {
    if (text.length > length) return text;
    if (text.length > 1) text += ',';
    if (!isList) text += `${JSON.stringify(key.slice(0, length))}:`;
    text += jsonStart((value as Record<string, unknown>)[key], length - text.length);
  }
  return text + (isList ? ']' : '}');
}
