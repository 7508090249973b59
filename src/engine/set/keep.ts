import { fieldsOf, type SchemaNode } from '../fields/introspect.ts';
import type { Path } from '../kinds/adjustment.ts';

/** The parts of a description that can be kept. */
export const KEPT_PARTS = ['aerial', 'earth', 'coils', 'tuning', 'arrangement', 'detector', 'load'] as const;

/**
 * The place that an entry of `keep` names.
 * @param text such as "load", "coils[0]" or "arrangement.detectorTap"
 * @returns keys and places in lists; undefined for what is no place of a part
 */
export function keptPath(text: string): Path | undefined {
  if (!/^[A-Za-z]+(?:\[\d{1,3}\]|\.[A-Za-z]+)*$/.test(text)) return undefined;
  const path = [...text.matchAll(/\[(\d+)\]|[A-Za-z]+/g)].map(([key, index]) =>
    index === undefined ? key : Number(index),
  );
  return KEPT_PARTS.some((part) => part === path[0]) ? path : undefined;
}

/**
 * Whether a place is a place of a part as it is described, fitted or not.
 * @param schema of a description
 * @param set as read
 * @param path from `keptPath`
 * @returns true also for a field that was left out
 */
export function isPlace(schema: SchemaNode, set: unknown, path: Path): boolean {
  let node: SchemaNode | undefined = schema;
  let value: unknown = set;
  for (const key of path) {
    if (typeof key === 'number') {
      if (!Array.isArray(value) || key >= value.length) return false;
      node = itemOf(node);
    } else {
      const fields: readonly { readonly key: string; readonly schema: SchemaNode }[] = node
        ? fieldsOf(node, value)
        : [];
      node = fields.find((field) => field.key === key)?.schema;
      if (!node && key !== 'kind' && key !== 'shape') return false;
    }
    value = typeof value === 'object' && value !== null ? (value as Record<string | number, unknown>)[key] : undefined;
  }
  return true;
}

const itemOf = (node: SchemaNode | undefined): SchemaNode | undefined =>
  node && (node.wrapped ? itemOf(node.wrapped) : node.item);

/** Whether what is written at one place changes what stands at another: one of them lies within the other. */
export const overlaps = (a: Path, b: Path): boolean => {
  const length = Math.min(a.length, b.length);
  return a.slice(0, length).every((key, i) => String(key) === String(b[i]));
};
