import type { Change } from '../../engine/index.ts';

/** What to look for of a part that is changed as a whole. */
const INSIDE: Readonly<Record<string, string>> = {
  'detector.kind': 'kind',
  'earth.kind': 'kind',
  'load.transformer.ratio': 'ratio',
};

/** The field in which a change is made: "arrangement.aerialTap", "coils[0].wire.size". */
export function fieldOf({ path, adjustment, to }: Change): string {
  const at = path.map((key, i) => (typeof key === 'number' ? `[${key}]` : i === 0 ? key : `.${key}`)).join('');
  if (path.at(-1) === 'wire') return `${at}.size`;
  if (Array.isArray(to)) return `${at}[${to.length - 1}]`;
  const inside = typeof to === 'object' ? INSIDE[adjustment] : undefined;
  return inside ? `${at}.${inside}` : at;
}
