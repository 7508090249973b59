// Writes the reference in docs/api from the docstrings of what engine and outputs export.
import { apiPages, undocumented, writePages } from './support/api.mjs';

const lacking = await undocumented();
if (lacking.length > 0) {
  console.error(`These docstrings are not complete:\n${lacking.join('\n')}`);
  process.exitCode = 1;
} else writePages(await apiPages());
