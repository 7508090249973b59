import { bare, type Field, metadataOf, objectFor, type SchemaNode } from '../../engine/fields/introspect.ts';
import { description } from '../../engine/set/description.ts';
import { type Path, valueAtPath } from '../../engine/set/write.ts';
import { capital } from '../../engine/units/format.ts';

const ROOT = description as unknown as SchemaNode;

/** The schema that applies at a path of a written description, or undefined where nothing is known. */
export function schemaAt(written: unknown, path: Path): SchemaNode | undefined {
  let node: SchemaNode | undefined = ROOT;
  for (const [depth, key] of path.entries()) {
    if (!node) return undefined;
    const inside = bare(node);
    if (inside.type === 'array') node = inside.item;
    else if (inside.type === 'tuple') node = inside.items?.[Number(key)];
    else node = objectFor(node, valueAtPath(written, path.slice(0, depth)))?.entries?.[String(key)];
  }
  return node;
}

/** "coils[0].turns", as problems name places. */
export const pathText = (path: Path): string =>
  path.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : `${text}${text ? '.' : ''}${key}`),
    '',
  );

/** "aerialTuning" → "Aerial tuning", for parts the schema gives no label. */
export const wordsOf = (key: string): string =>
  capital(key.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`));

export const labelOf = (field: Field): string => field.metadata.label || wordsOf(field.key);

export const labelAt = (written: unknown, path: Path): string => {
  const node = schemaAt(written, path);
  return (node && metadataOf(node).label) || wordsOf(String(path[path.length - 1]));
};

/** What a field is edited with. */
export type EditorKind =
  | 'quantity'
  | 'number'
  | 'choice'
  | 'yes'
  | 'text'
  | 'lines'
  | 'list'
  | 'part'
  | 'choice or part';

export function editorKind(node: SchemaNode): EditorKind {
  const metadata = metadataOf(node);
  if (metadata.quantity) return 'quantity';
  if (metadata.number) return 'number';
  if (metadata.choice) return 'choice';
  if (metadata.yes) return 'yes';
  if (metadata.lines) return 'lines';
  const inside = bare(node);
  if (inside.type === 'array') return 'list';
  if (inside.type === 'union') return 'choice or part';
  if (inside.type === 'loose_object' || inside.type === 'variant') return 'part';
  return 'text';
}

/** The words a choice may take. */
export const optionsOf = (node: SchemaNode): string[] => (bare(node).options ?? []).map(String);
