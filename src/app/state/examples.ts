const texts = import.meta.glob<string>('../../../examples/*.json', { query: '?raw', import: 'default', eager: true });

export interface Example {
  readonly file: string;
  readonly name: string;
  readonly text: string;
}

/** The examples that come with the page, by name. */
export const EXAMPLES: readonly Example[] = Object.entries(texts)
  .map(([path, text]) => ({ file: path.split('/').pop()!, name: String(JSON.parse(text).name), text }))
  .sort((a, b) => a.name.localeCompare(b.name));

/** What a first visitor sees. */
export const DEMO: Example = EXAMPLES.find((example) => example.file === 'medium-wave-galena.json') ?? EXAMPLES[0];
