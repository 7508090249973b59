const texts = import.meta.glob<string>('../../../examples/boxes/*.json', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** The boxes that come with the page, by name. */
export const EXAMPLE_BOXES: readonly { readonly file: string; readonly name: string; readonly text: string }[] =
  Object.entries(texts)
    .map(([path, text]) => ({ file: path.split('/').pop()!, name: String(JSON.parse(text).name), text }))
    .sort((a, b) => a.name.localeCompare(b.name));
