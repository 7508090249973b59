import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { jsonSchema } from './json-schema.ts';

// `UPDATE_SCHEMA=1 npm test` writes it anew.
it('the committed JSON Schema is the one the reader uses', () => {
  const file = new URL('../../../schema/faintwave-set-1.schema.json', import.meta.url);
  const now = `${JSON.stringify(jsonSchema(), null, 2)}\n`;
  if (process.env.UPDATE_SCHEMA) writeFileSync(file, now);
  expect(readFileSync(file, 'utf8')).toBe(now);
});
