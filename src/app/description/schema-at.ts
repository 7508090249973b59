import {
  bare,
  boxDescription,
  description,
  type Field,
  metadataOf,
  objectFor,
  type Path,
  placeText,
  type SchemaNode,
  valueAtPath,
} from '../../engine/index.ts';
import { fieldHelp, fieldLabel, kindLabels } from '../../outputs/words/index.ts';

const SET = description as unknown as SchemaNode;
const BOX = boxDescription as unknown as SchemaNode;

/** A box says by its format that it is one; all else is a set. */
const rootOf = (written: unknown): SchemaNode =>
  String(valueAtPath(written, ['format'])).startsWith('faintwave-box/') ? BOX : SET;

/** The schema that applies at a path of a written description, or undefined where nothing is known. */
export function schemaAt(written: unknown, path: Path): SchemaNode | undefined {
  let node: SchemaNode | undefined = rootOf(written);
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
export const pathText = placeText;

/** What a field is called; one that the schema does not know, by its key. */
export const labelOf = ({ key, metadata }: Pick<Field, 'key' | 'metadata'>): string =>
  metadata.field ? fieldLabel(metadata.field) : key;

/** What a field is, where its label does not say it all. */
export const helpOf = ({ metadata }: Field): string | undefined => metadata.field && fieldHelp(metadata.field);

/** What the field at a path is called; the key that chooses a kind has a label of its own. */
export const labelAt = (written: unknown, path: Path): string => {
  const node = schemaAt(written, path);
  const key = String(path[path.length - 1]);
  if (node && bare(node).type === 'literal' && Object.hasOwn(kindLabels, key)) return kindLabels[key];
  return labelOf({ key, metadata: node ? metadataOf(node) : {} });
};

/** What a field is edited with. */
export type EditorKind =
  | 'quantity'
  | 'number'
  | 'choice'
  | 'yes'
  | 'text'
  | 'lines'
  | 'paragraphs'
  | 'list'
  | 'part'
  | 'choice-or-part';

export function editorKind(node: SchemaNode): EditorKind {
  const metadata = metadataOf(node);
  if (metadata.quantity) return 'quantity';
  if (metadata.number) return 'number';
  if (metadata.choice) return 'choice';
  if (metadata.yes) return 'yes';
  if (metadata.lines) return 'lines';
  if (metadata.paragraphs) return 'paragraphs';
  const inside = bare(node);
  if (inside.type === 'array') return 'list';
  if (inside.type === 'union') return 'choice-or-part';
  if (inside.type === 'loose_object' || inside.type === 'variant') return 'part';
  return 'text';
}

/** The words a choice may take. */
export const optionsOf = (node: SchemaNode): string[] => (bare(node).options ?? []).map(String);
