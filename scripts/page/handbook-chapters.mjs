/** Documents that the page shows, in the order of reading; `part` groups them in the list of contents. */
export const CHAPTERS = [
  ...chapters('sets', 'docs/handbook', ['1-first-set', '2-selective-set', '3-long-wave-set', '4-why-it-works']),
  ...chapters('page', 'docs', [
    'guide',
    'place',
    'boxes',
    'measuring',
    'faults',
    'log',
    'listening',
    'explain',
    'sheets',
  ]),
  ...chapters('script', 'docs', ['commands', 'library']),
  ...chapters('physics', 'docs/physics', [
    'coils',
    'capacitors',
    'aerials',
    'earths',
    'detectors',
    'loads',
    'arrangements',
    'ground-wave',
    'sky-wave',
    'noise',
    'hearing',
    'reception',
    'time-domain',
    'measuring',
    'uncertainty',
  ]),
  ...chapters('proof', 'docs', [
    'accuracy',
    'accessibility',
    'cross-checks',
    'fault-search',
    'find-search',
    'found-sets',
  ]),
];

/** @param {'sets' | 'page' | 'script' | 'physics' | 'proof'} part @param {string} folder @param {readonly string[]} names */
function chapters(part, folder, names) {
  return names.map((name) => ({ id: `${part}-${name}`, part, file: `${folder}/${name}.md` }));
}
