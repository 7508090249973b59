/** A node of the syntax tree of a source, as Vite's parsers give it. */
export interface SourceNode {
  readonly type: string;
  readonly start: number;
  readonly [key: string]: unknown;
}

export const isNode = (value: unknown): value is SourceNode =>
  typeof value === 'object' && value !== null && typeof (value as SourceNode).type === 'string';

/** A text of a source that a person may come to read. */
export interface Prose {
  readonly line: number;
  readonly text: string;
}

/** Line of a node, from 1. */
export const lineOf = (source: string, { start }: SourceNode): number => source.slice(0, start).split('\n').length;
