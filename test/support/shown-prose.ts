import { parseAst } from 'vite';
import { isNode, lineOf, type SourceNode as Node, type Prose } from './source-node.ts';

/** Attributes and properties whose text is shown or read aloud, one word or many. */
const SHOWN =
  /^(title|label|alt|placeholder|summary|caption|heading|help|hint|notice|aria-(label|valuetext|description|roledescription|placeholder))$/;
/** Attributes that people never see. */
const NOT_SHOWN =
  /^(class|id|key|d|style|transform|viewBox|preserveAspectRatio|accept|type|role|aria-(labelledby|describedby|controls))$/;
/** Calls whose texts are for the browser. */
const FOR_THE_BROWSER = /^(querySelector|querySelectorAll|closest|matches|matchMedia|getContext|Worker|font)$/;
/** What passes a text on as it is. */
const PASSES = new Set([
  'ConditionalExpression',
  'LogicalExpression',
  'TemplateLiteral',
  'JSXExpressionContainer',
  'ArrayExpression',
]);

const LETTER = /\p{L}/u;
/** Two words, or one word apart from what a template fills in. */
const WORDS = /\p{L}{2,}[,.;:!?…”)]*\s+[“(]?\p{L}/u;
const WORD_BESIDE_A_GAP = /\p{L}{2,}[,.;:]?\s$|^\s\p{L}{2,}/u;
const CAPITALISED = /^\p{Lu}\p{Ll}+[…:]?$/u;

const nameOf = (node: unknown): string => {
  if (!isNode(node)) return '';
  if (node.type === 'MemberExpression') return nameOf(node.property);
  return String(node.name ?? node.value ?? '');
};

/**
 * Texts in a TypeScript source that look like words for people: letters between tags, attributes that are shown, text of
 * two words or more, capitalised words.
 * @param isId whether a text is known as an id
 */
export function shownProse(source: string, isId: (text: string) => boolean = () => false): Prose[] {
  const found: Prose[] = [];
  const say = (node: Node, text: string) => {
    found.push({ line: lineOf(source, node), text: text.trim() });
  };
  const judge = (node: Node, text: string, parents: readonly Node[]) => {
    if (!LETTER.test(text)) return;
    const at = parents.findLastIndex(({ type }) => !PASSES.has(type));
    const holder = parents[at];
    const below = parents[at + 1] ?? node;
    switch (holder?.type) {
      case 'JSXAttribute': {
        const name = nameOf(holder.name);
        if (NOT_SHOWN.test(name)) return;
        if (SHOWN.test(name)) return say(node, text);
        break;
      }
      case 'Property':
        if (holder.key === below && holder.computed !== true) return;
        if (SHOWN.test(nameOf(holder.key))) return say(node, text);
        break;
      case 'JSXElement':
      case 'JSXFragment':
        return say(node, text);
      case 'BinaryExpression':
        if (/^(===|!==|in)$/.test(String(holder.operator))) return;
        break;
      case 'SwitchCase':
      case 'TSLiteralType':
      case 'TSPropertySignature':
      case 'TSModuleDeclaration':
      case 'ImportDeclaration':
      case 'ExportNamedDeclaration':
      case 'ExportAllDeclaration':
      case 'ImportExpression':
        return;
      case 'CallExpression':
      case 'NewExpression':
        if (FOR_THE_BROWSER.test(nameOf(holder.callee))) return;
        break;
    }
    if (CAPITALISED.test(text)) say(node, text);
    else if (WORDS.test(text) && !isId(text)) say(node, text);
    else if (node.type === 'TemplateElement' && WORD_BESIDE_A_GAP.test(text)) say(node, text);
  };
  const visit = (node: Node, parents: readonly Node[]): void => {
    if (node.type === 'JSXText') judge(node, String(node.value), parents);
    else if (node.type === 'Literal' && typeof node.value === 'string') judge(node, node.value, parents);
    else if (node.type === 'TemplateElement') judge(node, String((node.value as { cooked: string }).cooked), parents);
    const inside = [...parents, node];
    for (const value of Object.values(node)) {
      if (isNode(value)) visit(value, inside);
      else if (Array.isArray(value)) for (const item of value) if (isNode(item)) visit(item, inside);
    }
  };
  visit(parseAst(source, { lang: 'tsx' }) as unknown as Node, []);
  return found;
}
