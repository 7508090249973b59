/** Marks the blocks that hold files, and says which others the code in one asks for. */
export const FILE_MARK = 'data-file';
export const NEEDS_MARK = 'data-needs';

/** The address of a built file, asked for when it is wanted. @param {string} name */
export const addressInFile = (name) => `globalThis.addressInFile(${JSON.stringify(name)})`;

const ASKED = /globalThis\.addressInFile\(["'`]([^"'`]+)/g;

/** Names of the files that code asks for. @param {string} code */
export const filesAskedBy = (code) => [...new Set([...code.matchAll(ASKED)].map(([, name]) => name))];

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
