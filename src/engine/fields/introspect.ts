import type { QuantityKind } from '../units/parse.ts';
import type { FieldId } from './field-ids.ts';

/** The parts of a valibot schema this folder looks at; enough to build editors and to spot misspelt keys. */
export interface SchemaNode {
  readonly type: string;
  readonly pipe?: readonly {
    readonly kind: string;
    readonly type: string;
    readonly metadata?: FieldMetadata;
    readonly requirement?: unknown;
  }[];
  readonly wrapped?: SchemaNode;
  readonly default?: unknown;
  readonly entries?: Readonly<Record<string, SchemaNode>>;
  readonly key?: string;
  readonly options?: readonly unknown[];
  readonly item?: SchemaNode;
  readonly items?: readonly SchemaNode[];
  readonly literal?: unknown;
}

export interface FieldMetadata {
  /** By which its label and explanation are found. */
  readonly field?: FieldId;
  readonly quantity?: QuantityKind;
  readonly number?: boolean;
  readonly whole?: boolean;
  readonly choice?: boolean;
  readonly text?: boolean;
  /** Text that may have several lines, such as notes. */
  readonly paragraphs?: boolean;
  /** Text of many lines, such as a file pasted in. */
  readonly lines?: boolean;
  readonly yes?: boolean;
  readonly bounds?: {
    readonly min?: number;
    readonly above?: number;
    readonly max?: number;
    readonly typical?: readonly [number, number];
  };
}

/** One field of a part, as an editor needs it. */
export interface Field {
  readonly key: string;
  readonly schema: SchemaNode;
  readonly optional: boolean;
  readonly fallback: unknown;
  readonly metadata: FieldMetadata;
}

/**
 * What a node is once options and pipes are taken off.
 * @param node any schema of a description
 * @returns the schema inside
 */
export function bare(node: SchemaNode): SchemaNode {
  return node.wrapped ? bare(node.wrapped) : node;
}

/** What is done to a value, in order; a pipe may begin with a pipe. */
const actionsOf = (node: SchemaNode): NonNullable<SchemaNode['pipe']> =>
  (node.pipe ?? []).flatMap((action) => [...actionsOf(action as unknown as SchemaNode), action]);

/**
 * What the schema says of a field for those who edit it: its id, kind of quantity, bounds, and the like.
 * @param node any schema of a description
 * @returns the metadata; empty where there are none
 */
export function metadataOf(node: SchemaNode): FieldMetadata {
  const own = Object.assign({}, ...actionsOf(node).map((action) => action.metadata ?? {}));
  return node.wrapped ? { ...metadataOf(node.wrapped), ...own } : own;
}

/** Fewest and most items of a list, or characters of a text, where the schema sets them. */
export function lengthsOf(node: SchemaNode): { readonly min?: number; readonly max?: number } {
  if (!node.pipe && node.wrapped) return lengthsOf(node.wrapped);
  const limit = (type: string) =>
    actionsOf(node).find((action) => action.type === type)?.requirement as number | undefined;
  return { min: limit('min_length'), max: limit('max_length') };
}

/**
 * The object schema that applies to a value: the option of a variant that its discriminator chooses.
 * @param node schema of a part
 * @param value the part as written
 * @returns the schema of its kind; undefined when its kind is unknown
 */
export function objectFor(node: SchemaNode, value: unknown): SchemaNode | undefined {
  const schema = bare(node);
  if (schema.type === 'loose_object') return schema;
  const options = schema.options as readonly SchemaNode[] | undefined;
  if (schema.type === 'variant' && options) {
    const kind = isRecord(value) ? value[schema.key!] : undefined;
    return options.find((option) => bare(objectFor(option, value)?.entries?.[schema.key!] ?? option).literal === kind);
  }
  if (schema.type === 'union' && options && isRecord(value))
    return options.find((option) => bare(option).type === 'loose_object');
  return undefined;
}

/**
 * The words a variant's discriminator may take, in the order a builder should see them.
 * @param node any schema of a description
 * @returns the key that tells the kinds apart, and the kinds; undefined for what has no kinds
 */
export function variantChoices(node: SchemaNode): { key: string; choices: string[] } | undefined {
  const schema = bare(node);
  if (schema.type !== 'variant') return undefined;
  const key = schema.key!;
  return {
    key,
    choices: (schema.options as SchemaNode[]).map((option) => String(bare(bare(option).entries![key]).literal)),
  };
}

/**
 * The fields of the part at hand.
 * @param node schema of a part
 * @param value the part as written, to choose its kind
 * @returns fields in the order of the schema; empty for what is no object
 */
export function fieldsOf(node: SchemaNode, value: unknown): Field[] {
  const object = objectFor(node, value);
  return Object.entries(object?.entries ?? {})
    .filter(([, schema]) => bare(schema).type !== 'literal')
    .map(([key, schema]) => ({
      key,
      schema,
      optional: schema.type === 'optional',
      fallback: schema.default,
      metadata: metadataOf(schema),
    }));
}

/** Keys the schema does not know, with their paths: kept, but perhaps misspelt. */
export function unknownKeys(
  node: SchemaNode,
  value: unknown,
  path = '',
): { path: string; key: string; known: string[] }[] {
  if (Array.isArray(value)) {
    const item = bare(node).item;
    return item ? value.flatMap((entry, i) => unknownKeys(item, entry, `${path}[${i}]`)) : [];
  }
  const object = isRecord(value) ? objectFor(node, value) : undefined;
  if (!object?.entries) return [];
  const known = Object.keys(object.entries);
  return Object.keys(value as object).flatMap((key) => {
    const at = path ? `${path}.${key}` : key;
    return Object.hasOwn(object.entries!, key)
      ? unknownKeys(object.entries![key], (value as Record<string, unknown>)[key], at)
      : [{ path: at, key, known }];
  });
}

/** A value whose lists are no longer than the schema allows, and which of them were cut. The value itself is left alone. */
export function withinLengths(
  node: SchemaNode,
  value: unknown,
  path = '',
): { value: unknown; cut: { path: string; length: number; most: number }[] } {
  const cut: { path: string; length: number; most: number }[] = [];
  const inside = (schema: SchemaNode | undefined, inner: unknown, at: string): unknown => {
    if (!schema || typeof inner !== 'object' || inner === null) return inner;
    const result = withinLengths(schema, inner, at);
    cut.push(...result.cut);
    return result.value;
  };
  if (Array.isArray(value)) {
    const { item } = bare(node);
    const { max = Number.POSITIVE_INFINITY } = lengthsOf(node);
    if (value.length > max) cut.push({ path, length: value.length, most: max });
    const list = value.length > max ? value.slice(0, max) : value;
    const items = item ? list.map((entry, i) => inside(item, entry, `${path}[${i}]`)) : list;
    return { value: cut.length > 0 ? items : value, cut };
  }
  const entries = isRecord(value) ? objectFor(node, value)?.entries : undefined;
  if (!entries) return { value, cut };
  const changed: Record<string, unknown> = {};
  for (const key of Object.keys(entries)) {
    if (!Object.hasOwn(value as object, key)) continue;
    const before = (value as Record<string, unknown>)[key];
    const after = inside(entries[key], before, path ? `${path}.${key}` : key);
    if (after !== before) changed[key] = after;
  }
  return { value: Object.keys(changed).length > 0 ? { ...(value as object), ...changed } : value, cut };
}

/**
 * Whether a value is an object with keys, neither null nor a list.
 * @param value anything
 * @returns true narrows it
 */
export const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
