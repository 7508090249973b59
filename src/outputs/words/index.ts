/** Every sentence and label that a person sees or hears comes from here: facts in, sentences out. */
export * from './en/index.ts';
export { jsonText, warningTexts } from './json.ts';
export { comparedOnBands, namedOnBand } from './named-on-band.ts';
export { writtenDial, writtenReception } from './reception-json.ts';
export { publishedBoxSchemaText, publishedSchemaText } from './schema-json.ts';
