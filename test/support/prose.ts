import { parseSync } from 'vite';
import { isNode, lineOf, type SourceNode as Node, type Prose } from './source-node.ts';

/**
 * Three words and more; or two that begin with a capital letter, end as a sentence does, or have something filled in.
 * Two plain words in small letters are an id, such as a kind of the file format.
 */
function isProse(text: string): boolean {
  const words = text.replace(/\{\}/g, ' ').match(/\p{L}[\p{L}’'-]+/gu) ?? [];
  if (!/\p{L}[,;:.]? +[\p{L}{]|\} +\p{L}/u.test(text)) return false;
  if (words.length >= 3) return true;
  return words.length === 2 && /^\p{Lu}|[.:;,]|\{\}/u.test(text);
}

/** Messages for programmers: errors made or thrown. */
const isError = (node: Node): boolean =>
  node.type === 'ThrowStatement' ||
  (node.type === 'CallExpression' && (node.callee as Node).type === 'Super') ||
  (node.type === 'NewExpression' && /^(?:Range|Type)?Error$/.test(String((node.callee as Node).name)));

/** No text of a program: addresses of modules, and types. */
const isNoText = ({ type }: Node): boolean =>
  /^(?:Import|Export(?:All|Named)?)Declaration$/.test(type) || /^TS.*Type/.test(type);

function textOf(node: Node): string | undefined {
  if (node.type === 'Literal') return typeof node.value === 'string' ? node.value : undefined;
  if (node.type !== 'TemplateLiteral') return undefined;
  return (node.quasis as { value: { cooked: string } }[]).map(({ value }) => value.cooked).join('{}');
}

const nameOf = (node: unknown): string => (isNode(node) ? String(node.name ?? node.value ?? '') : '');

/**
 * Texts of a TypeScript source that read as prose, outside types, imports and errors; what is filled in stands as {}.
 * @param but names of properties whose values, and functions whose arguments, are left out.
 */
export function proseIn(source: string, file: string, but: ReadonlySet<string> = new Set()): Prose[] {
  const prose: Prose[] = [];
  const visit = (node: Node): void => {
    if (isError(node) || (isNoText(node) && !isNode(node.declaration))) return;
    if (node.type === 'Property' && but.has(nameOf(node.key))) return;
    if (node.type === 'CallExpression' && but.has(nameOf(node.callee))) return;
    const text = textOf(node);
    if (text !== undefined && isProse(text)) prose.push({ line: lineOf(source, node), text });
    for (const [key, child] of Object.entries(node))
      for (const one of Array.isArray(child) ? child : [child])
        if (isNode(one) && !(key === 'key' && node.computed !== true)) visit(one);
  };
  visit(parseSync(file, source).program as unknown as Node);
  return prose;
}

/** Names of properties that hold what a person reads. */
const LABELS = new Set(['label', 'title', 'text', 'sentence', 'words', 'heading', 'caption', 'description']);

/** Texts given to a property, or taken as its default, that by its name is read by a person: however short they are. */
export function labelsIn(source: string, file: string): Prose[] {
  const labels: Prose[] = [];
  const texts = (node: Node): void => {
    const text = textOf(node);
    if (text !== undefined && /\p{L}/u.test(text)) labels.push({ line: lineOf(source, node), text });
    else if (node.type === 'ConditionalExpression')
      for (const branch of [node.consequent, node.alternate]) texts(branch as Node);
  };
  const visit = (node: Node): void => {
    if (isError(node) || (isNoText(node) && !isNode(node.declaration))) return;
    if (node.type === 'Property' && LABELS.has(nameOf(node.key)) && isNode(node.value)) {
      const value = node.value as Node;
      texts(value.type === 'AssignmentPattern' ? (value.right as Node) : value);
    }
    for (const child of Object.values(node))
      for (const one of Array.isArray(child) ? child : [child]) if (isNode(one)) visit(one);
  };
  visit(parseSync(file, source).program as unknown as Node);
  return labels;
}
