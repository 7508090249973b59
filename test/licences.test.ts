import { expect, test } from 'vitest';
import { licencesText, shippedPackages } from '../scripts/support/licences.mjs';

/** Identifiers of the SPDX list: licences that allow shipping the code with one's own. */
const ALLOWED = ['0BSD', 'Apache-2.0', 'BSD-2-Clause', 'BSD-3-Clause', 'ISC', 'MIT', 'MPL-2.0', 'OFL-1.1'];

test('all that is shipped of others is under a licence that allows it, and says so', () => {
  const packages = shippedPackages();
  for (const { name, licence, text } of packages) {
    if (licence === 'see text') expect(text, name).toMatch(/^Redistribution and use|Permission is hereby granted/m);
    else expect(ALLOWED, `${name}: ${licence}`).toContain(licence);
  }
  const names = packages.map(({ name }) => name);
  expect(names).toEqual(expect.arrayContaining(['preact', 'pdfkit', 'valibot', 'source-sans', 'world-atlas']));
  // Those that only build and test are not shipped.
  expect(names).not.toContain('vite');
  for (const name of names) expect(licencesText()).toContain(`\n${name} `);
});
