// Imports nothing, so that a Node too old for the rest still gets as far as a sentence it can print.

/** True when this Node can run the project; otherwise says which one is needed and sets a failing exit code. */
export function nodeIsNewEnough(version = process.versions.node) {
  const [major, minor] = version.split('.').map(Number);
  if ((major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22) return true;
  console.error(`Faintwave needs Node 20.19 or later, or 22.12 or later; this is Node ${version}.`);
  console.error('Get a current one from https://nodejs.org and run the same command again.');
  process.exitCode = 1;
  return false;
}
