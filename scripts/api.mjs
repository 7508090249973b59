// Writes the reference in docs/api from the docstrings of what engine and outputs export.
import { apiPages, writePages } from './support/api.mjs';

writePages(await apiPages());
