/** Marks the blocks that hold files, and says which others the code in one asks for. */
export const FILE_MARK = 'data-file';
export const NEEDS_MARK = 'data-needs';

/** The address of a built file, asked for when it is wanted. @param {string} name */
export const addressInFile = (name) => `globalThis.addressInFile(${JSON.stringify(name)})`;

const ASKED = /globalThis\.addressInFile\(["'`]([^"'`]+)/g;

/** Names of the files that code asks for. @param {string} code */
export const filesAskedBy = (code) => [...new Set([...code.matchAll(ASKED)].map(([, name]) => name))];

/**
 * How long the addresses of scripts become, each with those of the files that it asks for within.
 * @param {readonly { name: string, source: string | Uint8Array }[]} files
 * @returns {Map<string, number>} characters, by name of the file
 */
export function addressLengths(files) {
  const sizes = new Map(files.map(({ name, source }) => [name, Buffer.byteLength(source)]));
  const lengths = new Map();
  /** @param {string} name @returns {number} */
  const lengthOf = (name) => {
    if (!lengths.has(name)) {
      const source = files.find((one) => one.name === name)?.source ?? '';
      const needs = name.endsWith('.js') ? filesAskedBy(String(source)) : [];
      const within = needs.reduce((sum, one) => sum + one.length + lengthOf(one) + 6, 0);
      lengths.set(name, Math.ceil((4 / 3) * (within + (sizes.get(name) ?? 0))) + 100);
    }
    return lengths.get(name);
  };
  for (const { name } of files) if (name.endsWith('.js')) lengthOf(name);
  return new Map([...lengths].filter(([name]) => name.endsWith('.js')));
}

/**
 * Runs in the page before its own script: gives the addresses of the files that the page carries. They are data addresses,
 * the only ones from which a page on a disk may start a worker or a sound worklet that is a module. A worker cannot see
 * the page, so it is given those that its code asks for; base64 can be put before base64 if the first is of whole triples.
 */
export const findInFile = `{
  const addresses = new Map();
  const addressOf = (name) => {
    const block = document.querySelector('[${FILE_MARK}="' + name + '"]');
    const needs = block.getAttribute('${NEEDS_MARK}');
    let text = block.textContent;
    if (needs) {
      const own = JSON.stringify(Object.fromEntries(needs.split(' ').map((one) => [one, globalThis.addressInFile(one)])));
      const begin = '{const own=' + own + ';globalThis.addressInFile=(name)=>own[name]};';
      text = btoa(begin.padEnd(3 * Math.ceil(begin.length / 3))) + text;
    }
    return 'data:' + block.type + ',' + text;
  };
  globalThis.addressInFile = (name) => {
    if (!addresses.has(name)) addresses.set(name, addressOf(name));
    return addresses.get(name);
  };
}`;
