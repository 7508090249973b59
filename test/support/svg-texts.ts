const ENTITIES: Readonly<Record<string, string>> = { quot: '"', amp: '&', lt: '<', gt: '>', apos: "'" };
/** What stands between the tags of an SVG, a line each: texts, titles, descriptions. */
export const textsIn = (svg: string): string =>
  [...svg.matchAll(/>([^<]+)</g)]
    .map(([, inner]) => inner.replace(/&(\w+);/g, (entity, name) => ENTITIES[name] ?? entity))
    .join('\n');
