import * as v from 'valibot';
import {
  bare,
  type Field,
  fieldsOf,
  formatQuantity,
  isRecord,
  isSameField,
  metadataOf,
  namesCoil,
  type Path,
  type SchemaNode,
  STARTERS,
  valueAtPath,
  variantChoices,
  withValueAt,
} from '../../engine/index.ts';
import { editingWords } from '../../outputs/words/index.ts';
import { tidy } from './quantity-text.ts';
import { editorKind, labelOf, optionsOf, schemaAt } from './schema-at.ts';

export interface KindChange {
  readonly written: unknown;
  /** What the new kind has no place for, in words: "Series capacitor 100 pF". */
  readonly dropped: readonly string[];
}

/** The group a part belongs to, for its starters: "coils[1]" is a coil. */
export const groupOf = (path: Path): string => {
  const name = String([...path].reverse().find((key) => typeof key === 'string'));
  return (
    {
      coils: 'coil',
      aerialTuning: 'tuning',
      capacitor: 'tuning',
      elements: 'element',
      traps: 'trap',
      stations: 'station',
    }[name] ?? name
  );
};

/** Turns and their wire suit the size of their winding: a frame's are nothing to a rod, nor a rod's to a frame. */
const WINDING: ReadonlySet<string> = new Set(['turns', 'wire']);
const WINDING_OF_ITS_OWN: ReadonlySet<string> = new Set(['aerial/frame', 'aerial/ferrite rod']);

const isSame = ({ key, metadata: { field: a } }: Field, { key: other, metadata: { field: b } }: Field): boolean =>
  key === other && (a === b || (a !== undefined && b !== undefined && isSameField(a, b)));

/** Give a part another kind: what still makes sense stays as written, the rest is dropped and named. */
export function changeKind(written: unknown, path: Path, kind: string): KindChange {
  const node = schemaAt(written, path)!;
  const { key } = variantChoices(node)!;
  const before = valueAtPath(written, path);
  const old = isRecord(before) ? before : {};
  const oldFields = fieldsOf(node, old);
  const start = { [key]: kind };
  const fields = fieldsOf(node, start);
  const known = new Set(oldFields.map((field) => field.key));
  // The same key for another thing (a rod's length, a wire's) is not the same field: its id tells.
  const group = `${groupOf(path)}/${kind}`;
  const isWoundAnew = (key: string): boolean => WINDING_OF_ITS_OWN.has(group) && WINDING.has(key);
  const wasHere = (field: Field): boolean => oldFields.some((old) => isSame(old, field));
  const made: Record<string, unknown> = { ...start };
  for (const field of fields) {
    const kept = wasHere(field) && !isWoundAnew(field.key) ? old[field.key] : undefined;
    if (kept !== undefined && accepts(field.schema, kept)) made[field.key] = kept;
    else if (!field.optional) made[field.key] = starterOf(field, group, written);
  }
  // Keys nobody here knows are the builder's own: they stay.
  for (const [own, value] of Object.entries(old))
    if (own !== key && !known.has(own) && !Object.hasOwn(made, own)) made[own] = value;
  const dropped = oldFields
    .filter((field) => Object.hasOwn(old, field.key) && made[field.key] !== old[field.key])
    .map((field) => inWords(field, old[field.key]));
  return { written: withValueAt(written, path, made), dropped };
}

/** A new part of a kind, nothing to keep. */
export function newPart(written: unknown, path: Path, node: SchemaNode, kind?: string): unknown {
  const variant = variantChoices(node);
  const group = groupOf(path);
  if (variant) {
    const chosen = kind ?? variant.choices[0];
    const start = { [variant.key]: chosen };
    return fillIn(start, fieldsOf(node, start), `${group}/${chosen}`, written);
  }
  if (Object.hasOwn(STARTERS, group)) return fillIn({ ...STARTERS[group] }, fieldsOf(node, {}), group, written);
  return fillIn({}, fieldsOf(node, {}), group, written);
}

function fillIn(start: Record<string, unknown>, fields: readonly Field[], group: string, written: unknown): unknown {
  for (const field of fields)
    if (!field.optional && !Object.hasOwn(start, field.key)) start[field.key] = starterOf(field, group, written);
  return start;
}

/** A value for a field that was left out until now. */
export function startingValue(written: unknown, path: Path, field: Field): unknown {
  const part = path.slice(0, -1);
  const variant = variantChoices(schemaAt(written, part)!);
  const kind = variant ? valueAtPath(written, [...part, variant.key]) : undefined;
  const schema = field.schema.wrapped ?? field.schema;
  return starterOf({ ...field, schema }, kind === undefined ? groupOf(part) : `${groupOf(part)}/${kind}`, written);
}

const accepts = (node: SchemaNode, value: unknown): boolean =>
  v.safeParse(node as unknown as v.GenericSchema, value).success;

/** A value to begin with for a field that must have one. */
function starterOf(field: Field, group: string, written: unknown): unknown {
  const given = STARTERS[group]?.[field.key];
  if (given !== undefined) return given;
  // What was measured only a person can know.
  if (metadataOf(field.schema).field?.startsWith('measured.value')) return '';
  if (field.key === 'name') return group === 'station' ? editingWords.newStation : '';
  if (namesCoil(field.key)) return coilNames(written)[0] ?? 'main';
  if (Object.hasOwn(STARTERS, field.key)) return STARTERS[field.key];
  const metadata = metadataOf(field.schema);
  const [low, high] = metadata.bounds?.typical ?? [metadata.bounds?.min ?? 1, metadata.bounds?.max ?? 1];
  const middle = low > 0 ? Math.sqrt(low * high) : (low + high) / 2;
  switch (editorKind(field.schema)) {
    case 'quantity':
      return tidy(formatQuantity(Number(middle.toPrecision(2)), metadata.quantity!));
    case 'number':
      return metadata.whole ? Math.max(1, Math.round(middle)) : Number(middle.toPrecision(2));
    case 'choice':
      return optionsOf(field.schema)[0];
    case 'paragraphs':
      return '';
    case 'yes':
      return false;
    case 'list':
      return [];
    case 'part':
      return newPart(written, [field.key], field.schema);
    default:
      return bare(field.schema).type === 'string' ? field.key : '';
  }
}

function inWords(field: Field, value: unknown): string {
  const label = labelOf(field);
  if (typeof value === 'string' || typeof value === 'number') return editingWords.fieldWithValue(label, value);
  if (Array.isArray(value)) return editingWords.fieldWithCount(label, value.length);
  return label;
}

export const coilNames = (written: unknown): string[] => {
  const coils = valueAtPath(written, ['coils']);
  return Array.isArray(coils) ? coils.map((coil) => String(isRecord(coil) ? coil.name : '')) : [];
};
